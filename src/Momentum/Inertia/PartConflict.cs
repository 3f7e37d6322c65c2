using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>Space of an assembly that is counted wrong. Equality is by all members.</summary>
/// <typeparam name="TFrame">The assembly's frame.</typeparam>
/// <param name="Kind">What is wrong.</param>
/// <param name="Part">The part, or the hole.</param>
/// <param name="Other">The part it overlaps with; null for a hole.</param>
/// <param name="At">A place in that space.</param>
/// <param name="Volume">About how much space it is.</param>
public sealed record PartConflict<TFrame>(PartConflictKind Kind, string Part, string? Other, Position<TFrame> At, Volume Volume)
    where TFrame : struct, IFrame
{
    /// <summary>The parts, place and volume, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Part} {(Other is null ? "takes away where there is no material" : $"and {Other} overlap")} at {At}, in about {Volume.CubicMeters:g2} m³");
}
