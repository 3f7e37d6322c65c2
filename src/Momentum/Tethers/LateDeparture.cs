using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>What becomes of a de-spin whose last weight lets go late.</summary>
/// <remarks>
/// Until its let-go the last weight stays on its cord and pulls the hub, which is free to move, to its side: linear
/// momentum, angular momentum about the system's centre of mass, and energy are conserved. Planar; the hub's centre of mass
/// is taken as the centre of the hub. <c>default</c> is no delay and no spin. Equality is by all members.
/// </remarks>
/// <param name="Delay">How long after the others the last cord let go.</param>
/// <param name="FinalSpin">Spin of the hub afterwards; negative if reversed.</param>
/// <param name="CordAngle">Cord angle of the last cord at its let-go; zero while it still unwinds.</param>
/// <param name="HubDrift">Speed that the hub's centre of mass is left with.</param>
/// <param name="Closure">Largest departure of angular momentum and energy over the delay, relative.</param>
public readonly record struct LateDeparture(Duration Delay, RotationalSpeed FinalSpin, Angle CordAngle, Speed HubDrift, double Closure)
    : IEqualityOperators<LateDeparture, LateDeparture, bool>
{
    /// <summary>Delay, final spin, cord angle and drift, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Delay} late: final spin {FinalSpin}, cord angle {CordAngle}, hub drifts at {HubDrift}, closure {Closure:g3}");
}
