using UnitsNet;

namespace Momentum.Cases.Quantities;

/// <summary>A requirement on one quantity: it must stay below, or above, the bound, or within a band.</summary>
/// <param name="IsUpper">True for "less than", false for "more than".</param>
/// <param name="IncludesBound">True if the bound itself is good enough.</param>
/// <param name="Bound">The bound, in its SI unit; of a band the upper end.</param>
/// <param name="Text">The text of the case file.</param>
internal sealed record Limit<TQuantity>(bool IsUpper, bool IncludesBound, TQuantity Bound, string Text)
    where TQuantity : struct, IQuantity
{
    /// <summary>The lower end of a band; null if the requirement is none.</summary>
    public TQuantity? Least { get; init; }
}
