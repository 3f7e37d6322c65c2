using UnitsNet;

namespace Momentum.Cases.Quantities;

/// <summary>A quantity as the engineer stated it: its nominal value, its tolerance, and the text.</summary>
/// <param name="Value">The nominal value, in its SI unit and by exact factors.</param>
/// <param name="Spread">The tolerance, an absolute amount of the same quantity; zero for <see cref="SpreadKind.None"/>.</param>
/// <param name="SpreadKind">What the tolerance means.</param>
/// <param name="Text">The text of the case file.</param>
internal sealed record Stated<TQuantity>(TQuantity Value, TQuantity Spread, SpreadKind SpreadKind, string Text)
    where TQuantity : struct, IQuantity;
