using UnitsNet;

namespace Momentum.Cases.Quantities;

/// <summary>A quantity as the engineer stated it: its nominal value, its tolerance, and the text.</summary>
/// <param name="Value">The nominal value, in its SI unit and by exact factors.</param>
/// <param name="Tolerance">How it scatters, offsets in its SI unit.</param>
/// <param name="Text">The text of the case file; empty for one that was drawn.</param>
internal sealed record Stated<TQuantity>(TQuantity Value, Tolerance Tolerance, string Text) : IStated
    where TQuantity : struct, IQuantity;
