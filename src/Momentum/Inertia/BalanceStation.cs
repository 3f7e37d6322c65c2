using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>Where a correction mass may go: at a height along the spin axis and a radius from it, at any bearing.</summary>
/// <remarks><c>default</c> is no station, for its radius is zero. Equality is by both lengths.</remarks>
/// <param name="Height">Distance along the spin axis from the point that the axis was stated through; either sign.</param>
/// <param name="Radius">Distance from the spin axis, above zero.</param>
public readonly record struct BalanceStation(Length Height, Length Radius) : IEqualityOperators<BalanceStation, BalanceStation, bool>
{
    /// <summary>Height and radius, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"height {Height}, radius {Radius}");
}
