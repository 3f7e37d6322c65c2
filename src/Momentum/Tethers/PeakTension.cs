using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>The largest tension of a cord, and where in the motion it occurs.</summary>
/// <remarks><c>default</c> is no tension, at release. Equality is by all members.</remarks>
/// <param name="Cord">Index of the cord, from 0; in the plane all cords are alike, and it is 0.</param>
/// <param name="Tension">
/// The tension: in the plane the largest anywhere along a cord with mass, in space that where the cord meets the hub.
/// </param>
/// <param name="Time">Time since release of the weights.</param>
/// <param name="Phase">The cord's phase then.</param>
/// <param name="FreeLength">Free length of the cord then, with its stretch.</param>
/// <param name="CordAngle">Cord angle from tangent then; zero while unwinding.</param>
public readonly record struct PeakTension(int Cord, Force Tension, Duration Time, CordPhase Phase, Length FreeLength, Angle CordAngle)
    : IEqualityOperators<PeakTension, PeakTension, bool>
{
    /// <summary>The tension, when and where, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"cord {Cord}: {Tension} at {Time}, {Phase}, {FreeLength} free, cord angle {CordAngle}");
}
