using Momentum.Dispersion;

namespace Momentum.Cases.Quantities;

/// <summary>How a stated value scatters about itself, in offsets in its SI unit.</summary>
/// <param name="Shared">What all weights or cords have alike, and whatever there is only one of.</param>
/// <param name="Each">What each weight or cord has of its own, besides.</param>
internal sealed record Tolerance(ScatterLaw Shared, ScatterLaw Each)
{
    /// <summary>Stated without a tolerance: taken as exact.</summary>
    public static Tolerance None { get; } = new(ScatterLaw.None, ScatterLaw.None);

    public bool IsNone => Shared.Shape == ScatterShape.None && Each.Shape == ScatterShape.None;

    /// <summary>The same within the range that the value must keep to; null with the reason if the tolerance contradicts it.</summary>
    /// <param name="least">The least offset allowed.</param>
    /// <param name="most">The largest offset allowed.</param>
    public Tolerance? Within(double least, double most)
    {
        try
        {
            return new Tolerance(Shared.Within(least, most), Each.Within(least, most));
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
