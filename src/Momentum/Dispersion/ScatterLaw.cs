using System.Globalization;
using System.Numerics;

namespace Momentum.Dispersion;

/// <summary>
/// How a number scatters about its nominal value: the offset that a probability level stands for. All widths and offsets are
/// in one unit, that of the number.
/// </summary>
/// <remarks>Immutable; equality is by shape, widths, samples and limits.</remarks>
public sealed class ScatterLaw : IEquatable<ScatterLaw>, IEqualityOperators<ScatterLaw, ScatterLaw, bool>
{
    private readonly double[] _samples;

    // Levels of the standard normal distribution at the limits.
    private readonly double _from;
    private readonly double _to;

    private ScatterLaw(ScatterShape shape, double below, double above, double[] samples, double least, double most)
    {
        Shape = shape;
        Below = below;
        Above = above;
        _samples = samples;
        Least = least;
        Most = most;
        if (shape == ScatterShape.Normal)
        {
            _from = Limit(least, below);
            _to = Limit(most, above);
        }

        (Mean, StandardDeviation) = shape switch
        {
            ScatterShape.Normal => OfNormal(),
            ScatterShape.Uniform => (0.5 * (above - below), (above + below) / Math.Sqrt(12)),
            ScatterShape.Samples => OfSamples(samples),
            _ => (0, 0),
        };

        static double Limit(double offset, double width) => width == 0 ? Math.Sign(offset) * 40 : Math.Clamp(offset / width, -40, 40);
    }

    /// <summary>No scatter: every offset is zero.</summary>
    public static ScatterLaw None { get; } = new(ScatterShape.None, 0, 0, [], 0, 0);

    /// <summary>None, normal, uniform or measured samples.</summary>
    public ScatterShape Shape { get; }

    /// <summary>One standard deviation below the nominal value if normal, the limit below if uniform.</summary>
    public double Below { get; }

    /// <summary>One standard deviation above the nominal value if normal, the limit above if uniform.</summary>
    public double Above { get; }

    /// <summary>No offset is less.</summary>
    public double Least { get; }

    /// <summary>No offset is more.</summary>
    public double Most { get; }

    /// <summary>Mean offset.</summary>
    public double Mean { get; }

    /// <summary>Standard deviation of the offset, limits and all.</summary>
    public double StandardDeviation { get; }

    /// <summary>Normal on either side of the nominal value, which half of the draws stay below.</summary>
    /// <param name="below">One standard deviation below, zero or positive.</param>
    /// <param name="above">One standard deviation above, zero or positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A width is negative or not finite.</exception>
    public static ScatterLaw Normal(double below, double above) => Checked(below, nameof(below)) + Checked(above, nameof(above)) == 0
        ? None
        : new(ScatterShape.Normal, below, above, [], double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Evenly distributed between limits.</summary>
    /// <param name="below">The limit below the nominal value, zero or positive.</param>
    /// <param name="above">The limit above it, zero or positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit is negative or not finite.</exception>
    public static ScatterLaw Uniform(double below, double above) => Checked(below, nameof(below)) + Checked(above, nameof(above)) == 0
        ? None
        : new(ScatterShape.Uniform, below, above, [], -below, above);

    /// <summary>One of measured offsets, each with equal chance.</summary>
    /// <param name="offsets">The offsets, at least two.</param>
    /// <exception cref="ArgumentException">There are fewer than two, or one is not finite.</exception>
    public static ScatterLaw Samples(IReadOnlyList<double> offsets)
    {
        ArgumentNullException.ThrowIfNull(offsets);
        double[] sorted = [.. offsets];
        Array.Sort(sorted);
        return sorted.Length >= 2 && sorted.All(double.IsFinite)
            ? new(ScatterShape.Samples, -sorted[0], sorted[^1], sorted, sorted[0], sorted[^1])
            : throw new ArgumentException("Samples are two or more finite numbers.", nameof(offsets));
    }

    /// <summary>The same law without what lies beyond limits that the number cannot pass: a normal law's tails are cut off there.</summary>
    /// <param name="least">The least offset.</param>
    /// <param name="most">The largest offset.</param>
    /// <exception cref="ArgumentException">
    /// The limits are out of order or do not hold the nominal value; or the law is uniform or of samples and passes a limit, which contradicts it.
    /// </exception>
    public ScatterLaw Within(double least, double most)
    {
        if (!(least <= 0 && most >= 0))
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Limits of {least:g6} to {most:g6} do not hold the nominal value."), nameof(least));
        }

        if (Shape != ScatterShape.Normal)
        {
            // Rounding of a limit that is written to the last digit.
            double slack = 1e-12 * (Below + Above);
            return Least >= least - slack && Most <= most + slack
                ? this
                : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"Offsets of {Least:g6} to {Most:g6} pass the limits {least:g6} to {most:g6}."), nameof(least));
        }

        return new(Shape, Below, Above, [], Math.Max(least, Least), Math.Min(most, Most));
    }

    /// <summary>The offset that a probability level stands for.</summary>
    /// <param name="level">Between 0 and 1.</param>
    public double At(double level) => Shape switch
    {
        ScatterShape.Normal => OfNormal(level),
        ScatterShape.Uniform => -Below + (level * (Below + Above)),
        ScatterShape.Samples => _samples[Math.Min((int)(level * _samples.Length), _samples.Length - 1)],
        _ => 0,
    };

    /// <summary>The share of the draws that the limits cut off a normal law, 0 to 1.</summary>
    public double CutOff => Shape == ScatterShape.Normal ? 1 - Cdf(_to) + Cdf(_from) : 0;

    /// <inheritdoc/>
    public bool Equals(ScatterLaw? other) =>
        other is not null && Shape == other.Shape && Below == other.Below && Above == other.Above && Least == other.Least && Most == other.Most &&
        _samples.AsSpan().SequenceEqual(other._samples);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ScatterLaw);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Shape, Below, Above, Least, Most, _samples.Length);

    /// <summary>Whether both are the same law.</summary>
    public static bool operator ==(ScatterLaw? left, ScatterLaw? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether the laws differ.</summary>
    public static bool operator !=(ScatterLaw? left, ScatterLaw? right) => !(left == right);

    private static double Cdf(double z) => MathNet.Numerics.Distributions.Normal.CDF(0, 1, z);

    private static double Density(double z) => MathNet.Numerics.Distributions.Normal.PDF(0, 1, z);

    private double OfNormal(double level)
    {
        double from = Cdf(_from);
        double z = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, from + (level * (Cdf(_to) - from)));
        return Math.Clamp((z < 0 ? Below : Above) * z, Least, Most);
    }

    /// <summary>By the moments of the standard normal law over the part below and the part above the nominal value.</summary>
    private (double Mean, double Deviation) OfNormal()
    {
        double all = Cdf(_to) - Cdf(_from);
        double first = ((Below * (Density(_from) - Density(0))) + (Above * (Density(0) - Density(_to)))) / all;
        double second = ((Below * Below * (0.5 - Cdf(_from) + (_from * Density(_from)))) + (Above * Above * (Cdf(_to) - 0.5 - (_to * Density(_to))))) / all;
        return (first, Math.Sqrt(Math.Max(0, second - (first * first))));
    }

    private static (double Mean, double Deviation) OfSamples(double[] samples)
    {
        double mean = samples.Average();
        return (mean, Math.Sqrt(samples.Sum(s => (s - mean) * (s - mean)) / samples.Length));
    }

    private static double Checked(double width, string name) => width is >= 0 and <= 1e150
        ? width
        : throw new ArgumentOutOfRangeException(name, width, $"The width {name} must be zero or positive, up to 1e150.");
}
