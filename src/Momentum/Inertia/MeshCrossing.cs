using System.Globalization;
using System.Numerics;
using Momentum.Frames;

namespace Momentum.Inertia;

/// <summary>A place where the surface of a mesh cuts through itself, or around which it encloses some space twice.</summary>
/// <remarks>Facets are counted from 1, as a file lists them. <c>default</c> is no place. Equality is exact, by all members.</remarks>
/// <param name="First">The facet that comes first in the file.</param>
/// <param name="Second">The other; the same one, if its whole shell lies within another.</param>
/// <param name="At">Where, in the mesh's own axes.</param>
public readonly record struct MeshCrossing(int First, int Second, Position<Part> At) : IEqualityOperators<MeshCrossing, MeshCrossing, bool>
{
    /// <summary>The two facets and the place, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"facets {First} and {Second} at {At}");
}
