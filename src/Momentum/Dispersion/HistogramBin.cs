using System.Globalization;
using System.Numerics;

namespace Momentum.Dispersion;

/// <summary>One bin of a histogram.</summary>
/// <typeparam name="TQuantity">The quantity of the values.</typeparam>
/// <param name="From">Lower edge, belongs to the bin.</param>
/// <param name="To">Upper edge, belongs to the next bin, or to this one if it is the last.</param>
/// <param name="Count">How many values lie in it.</param>
/// <remarks><c>default</c> is an empty bin at zero. Equality is by all members.</remarks>
public readonly record struct HistogramBin<TQuantity>(TQuantity From, TQuantity To, int Count)
    : IEqualityOperators<HistogramBin<TQuantity>, HistogramBin<TQuantity>, bool>
    where TQuantity : struct
{
    /// <summary>Edges and count, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{From} to {To}: {Count}");
}
