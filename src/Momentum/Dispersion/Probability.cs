using System.Globalization;
using System.Numerics;
using MathNet.Numerics.Distributions;

namespace Momentum.Dispersion;

/// <summary>A probability estimated from independent cases, with its confidence interval.</summary>
/// <param name="Estimate">Share of the cases, 0 to 1.</param>
/// <param name="Lower">Lower end of the two-sided interval.</param>
/// <param name="Upper">Upper end of the two-sided interval.</param>
/// <param name="Confidence">Confidence of the interval, such as 0.95.</param>
/// <remarks>
/// The interval is that of Clopper and Pearson (Biometrika 26, 1934, from memory): at each end the chance of a count at
/// least as far away is half of what the confidence leaves; it never promises more than it should. <c>default</c> is an
/// impossible event known with no confidence. Equality is by all members.
/// </remarks>
public readonly record struct Probability(double Estimate, double Lower, double Upper, double Confidence)
    : IEqualityOperators<Probability, Probability, bool>
{
    internal static Probability Of(int successes, int cases, double confidence)
    {
        if (!(confidence is > 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence), confidence, "The confidence must be between 0 and 1, such as 0.95.");
        }

        double tail = 0.5 * (1 - confidence);
        int failures = cases - successes;
        double lower = successes == 0 ? 0 : failures == 0 ? Math.Pow(tail, 1.0 / cases) : Beta.InvCDF(successes, failures + 1, tail);
        double upper = failures == 0 ? 1 : successes == 0 ? 1 - Math.Pow(tail, 1.0 / cases) : Beta.InvCDF(successes + 1, failures, 1 - tail);
        return new Probability((double)successes / cases, lower, upper, confidence);
    }

    /// <summary>The estimate with its interval in per cent, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{100 * Estimate:g6} % ({100 * Lower:g6} % to {100 * Upper:g6} % at {100 * Confidence:g4} % confidence)");
}
