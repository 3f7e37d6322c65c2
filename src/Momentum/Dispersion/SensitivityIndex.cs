using System.Globalization;
using System.Numerics;
using MathNet.Numerics.Distributions;

namespace Momentum.Dispersion;

/// <summary>How much of a result's variance one uncertain input has, alone and with all that it does together with others.</summary>
/// <param name="FirstOrder">Share of the variance that the input has alone; those of all inputs and what they do together make one.</param>
/// <param name="FirstOrderError">Half of the width of its interval.</param>
/// <param name="Total">Share that is left if all other inputs were known: its own and every interaction it takes part in. Those of all inputs do not add up to one.</param>
/// <param name="TotalError">Half of the width of its interval.</param>
/// <param name="Confidence">Confidence of both intervals, such as 0.95.</param>
/// <remarks>
/// <para>The indices of I. M. Sobol (Mathematics and Computers in Simulation 55, 2001), by the estimators of A. Saltelli et al.
/// (Computer Physics Communications 181, 2010) for the first order and of M. J. W. Jansen (Computer Physics Communications
/// 117, 1999) for the total; all from memory. A result of several components, such as a rate across an axis, counts by the sum of
/// their variances (M. Lamboni, H. Monod, D. Makowski, Reliability Engineering and System Safety 96, 2011, from memory).</para>
/// <para>The intervals are those of a ratio of means of many cases (the delta method), and hold for some hundred cases and
/// more. <c>default</c> is an input without effect, known with no confidence. Equality is by all members.</para>
/// </remarks>
public readonly record struct SensitivityIndex(double FirstOrder, double FirstOrderError, double Total, double TotalError, double Confidence)
    : IEqualityOperators<SensitivityIndex, SensitivityIndex, bool>
{
    private const int FewestCases = 16;

    /// <summary>The indices of one input, from cases in which it was exchanged.</summary>
    /// <param name="first">Components of the result in each case of a first set of draws, case after case.</param>
    /// <param name="second">The same of a second set, drawn independently of the first.</param>
    /// <param name="exchanged">The same of the first set with this input alone taken from the second.</param>
    /// <param name="components">How many components a result has.</param>
    /// <param name="confidence">Confidence of the intervals, between 0 and 1.</param>
    /// <exception cref="ArgumentException">The three are not of one length, a whole number of results of 16 cases or more, or not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1.</exception>
    public static SensitivityIndex Of(ReadOnlySpan<double> first, ReadOnlySpan<double> second, ReadOnlySpan<double> exchanged, int components = 1, double confidence = 0.95)
    {
        if (components < 1 || first.Length != second.Length || first.Length != exchanged.Length || first.Length % components != 0 || first.Length / components < FewestCases)
        {
            throw new ArgumentException(
                $"The three sets must hold the same number of results, {FewestCases} or more, of {components} components each; they hold {first.Length}, {second.Length} and {exchanged.Length} numbers.",
                nameof(exchanged));
        }

        if (!(confidence is > 0 and < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "The confidence must be between 0 and 1, such as 0.95.");
        }

        int cases = first.Length / components;
        Span<double> mean = components <= 64 ? stackalloc double[components] : new double[components];
        for (int i = 0; i < first.Length; i++)
        {
            mean[i % components] += (first[i] + second[i]) / (2.0 * cases);
        }

        double[] alone = new double[cases];
        double[] total = new double[cases];
        double[] variance = new double[cases];
        for (int i = 0; i < first.Length; i++)
        {
            int one = i / components;
            double centre = mean[i % components];
            double a = first[i] - centre;
            double b = second[i] - centre;
            double e = exchanged[i] - centre;
            alone[one] += b * (e - a);
            total[one] += 0.5 * (a - e) * (a - e);
            variance[one] += 0.5 * ((a * a) + (b * b));
        }

        double all = variance.Average();
        if (!double.IsFinite(all))
        {
            throw new ArgumentException("A result is not finite.", nameof(first));
        }

        if (all == 0)
        {
            return new SensitivityIndex(0, 0, 0, 0, confidence);
        }

        double width = Normal.InvCDF(0, 1, 0.5 + (0.5 * confidence));
        return new SensitivityIndex(alone.Average() / all, width * ErrorOf(alone), total.Average() / all, width * ErrorOf(total), confidence);

        // Standard error of the ratio of two means over the same cases.
        double ErrorOf(double[] part)
        {
            double ratio = part.Average() / all;
            double squares = 0;
            for (int i = 0; i < part.Length; i++)
            {
                double departure = part[i] - (ratio * variance[i]);
                squares += departure * departure;
            }

            return Math.Sqrt(squares / part.Length / (part.Length - 1)) / all;
        }
    }

    /// <summary>Both shares with their intervals, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"alone {100 * FirstOrder:g3} % ± {100 * FirstOrderError:g2} %, with its interactions {100 * Total:g3} % ± {100 * TotalError:g2} %");
}
