using System.Runtime.CompilerServices;
using Momentum.Numerics;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>The values that one result took over an ensemble, and their statistics.</summary>
/// <typeparam name="TQuantity">The quantity of the values.</typeparam>
/// <remarks>
/// The values are kept, sorted: quantiles are exact, and merging two samples gives to the last bit what one run of all their
/// cases would have given, in whatever order they are merged. Immutable, so safe to share between threads.
/// </remarks>
public sealed class Sample<TQuantity>
    where TQuantity : struct, IQuantity
{
    private readonly double[] _sorted;
    private readonly double _mean;
    private readonly double _deviation;

    /// <summary>Takes over an array of SI numbers, which it sorts.</summary>
    internal Sample(double[] values)
    {
        Array.Sort(values);
        _sorted = values;

        // Over sorted values the sums do not depend on the order in which they came.
        CompensatedSum sum = default;
        foreach (double value in values)
        {
            sum.Add(value);
        }

        _mean = sum.Value / values.Length;
        CompensatedSum squares = default;
        foreach (double value in values)
        {
            squares.Add((value - _mean) * (value - _mean));
        }

        _deviation = values.Length > 1 ? Math.Sqrt(squares.Value / (values.Length - 1)) : 0;
    }

    /// <summary>Number of values.</summary>
    public int Count => _sorted.Length;

    /// <summary>Mean.</summary>
    public TQuantity Mean => Of(_mean);

    /// <summary>Standard deviation, with n - 1.</summary>
    /// <exception cref="InvalidOperationException">There is only one value, which has no deviation.</exception>
    public TQuantity StandardDeviation => Count > 1
        ? Of(_deviation)
        : throw new InvalidOperationException("One value has no standard deviation; run two cases or more.");

    /// <summary>Smallest value.</summary>
    public TQuantity Minimum => Of(_sorted[0]);

    /// <summary>Largest value.</summary>
    public TQuantity Maximum => Of(_sorted[^1]);

    internal double SiMean => _mean;

    internal double SiDeviation => _deviation;

    /// <summary>The value that a share of the cases stays below; linear between neighbours.</summary>
    /// <param name="share">0 to 1; 0.00135, 0.5 and 0.99865 are the median and what stands for 3 sigma on either side.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is not from 0 to 1.</exception>
    public TQuantity Quantile(double share)
    {
        if (!(share is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "The share of cases must be from 0 to 1, such as 0.99865.");
        }

        double place = share * (_sorted.Length - 1);
        int below = Math.Min((int)place, _sorted.Length - 1);
        int above = Math.Min(below + 1, _sorted.Length - 1);
        return Of(_sorted[below] + ((place - below) * (_sorted[above] - _sorted[below])));
    }

    /// <summary>Counts in bins of equal width from the smallest to the largest value.</summary>
    /// <param name="bins">How many, 1 to 10,000.</param>
    /// <returns>The bins; a single one if all values are the same.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number of bins is out of range.</exception>
    public IReadOnlyList<HistogramBin<TQuantity>> Histogram(int bins)
    {
        if (bins is < 1 or > 10_000)
        {
            throw new ArgumentOutOfRangeException(nameof(bins), bins, "A histogram has 1 to 10,000 bins.");
        }

        double low = _sorted[0];
        double width = (_sorted[^1] - low) / bins;
        if (!(width > 0))
        {
            return [new HistogramBin<TQuantity>(Minimum, Maximum, _sorted.Length)];
        }

        var result = new HistogramBin<TQuantity>[bins];
        int next = 0;
        for (int bin = 0; bin < bins; bin++)
        {
            double to = bin == bins - 1 ? _sorted[^1] : low + ((bin + 1) * width);
            int first = next;
            while (next < _sorted.Length && (_sorted[next] < to || bin == bins - 1))
            {
                next++;
            }

            result[bin] = new HistogramBin<TQuantity>(
                Of(low + (bin * width)), Of(to), next - first);
        }

        return result;
    }

    // An angle and a ratio are no vector's quantity, so the table of those has them not.
    private static TQuantity Of(double si) => typeof(TQuantity) == typeof(Angle) ? Unsafe.BitCast<Angle, TQuantity>(Angle.FromRadians(si))
        : typeof(TQuantity) == typeof(Ratio) ? Unsafe.BitCast<Ratio, TQuantity>(Ratio.FromDecimalFractions(si))
        : Quantities.Si<TQuantity>.Quantity(si);

    /// <summary>How many values lie strictly between two SI numbers.</summary>
    internal int CountBetween(double low, double high)
    {
        int count = 0;
        foreach (double value in _sorted)
        {
            count += value > low && value < high ? 1 : 0;
        }

        return count;
    }

    /// <summary>Both samples as one.</summary>
    internal Sample<TQuantity> Merge(Sample<TQuantity> other) => new([.. _sorted, .. other._sorted]);
}
