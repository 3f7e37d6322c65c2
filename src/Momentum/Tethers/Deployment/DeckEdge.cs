using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>The round edge of a deck that a cord swinging out of the drum's plane may touch. Equality is by both members. <c>default</c> is no edge, for its radius is zero.</summary>
/// <param name="Radius">From the drums' axis; at least the radius of every drum.</param>
/// <param name="Height">Along the spin axis, from the body origin; not that of a drum.</param>
public readonly record struct DeckEdge(Length Radius, Length Height)
    : IEqualityOperators<DeckEdge, DeckEdge, bool>
{
    /// <summary>Radius and height, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"radius {Radius}, height {Height}");
}
