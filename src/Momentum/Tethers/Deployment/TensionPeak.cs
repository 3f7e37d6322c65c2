using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>The largest tension of one cord. Equality is by all members. <c>default</c> is no tension, at the start.</summary>
/// <param name="Cord">Index of the cord, from 0.</param>
/// <param name="Tension">The tension where the cord meets the hub.</param>
/// <param name="Time">When.</param>
public readonly record struct TensionPeak(int Cord, Force Tension, Duration Time)
    : IEqualityOperators<TensionPeak, TensionPeak, bool>
{
    /// <summary>The tension and when, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"cord {Cord}: {Tension} at {Time}");
}
