using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>The largest tension of a cord, and where in the motion it occurs.</summary>
/// <remarks><c>default</c> is no tension, at release. Equality is by all members.</remarks>
/// <param name="Tension">Tension of each cord; with massive cords the largest anywhere along it.</param>
/// <param name="Time">Time since release of the weights.</param>
/// <param name="Phase">Unwinding or hinging.</param>
/// <param name="UnwoundLength">Free length of each cord then.</param>
/// <param name="CordAngle">Cord angle from tangent then; zero while unwinding.</param>
public readonly record struct PeakTension(Force Tension, Duration Time, CordPhase Phase, Length UnwoundLength, Angle CordAngle)
    : IEqualityOperators<PeakTension, PeakTension, bool>
{
    /// <summary>The tension, when and where, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Tension} at {Time}, {Phase}, {UnwoundLength} unwound, cord angle {CordAngle}");
}
