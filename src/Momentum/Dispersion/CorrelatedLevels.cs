using MathNet.Numerics.Distributions;

namespace Momentum.Dispersion;

/// <summary>Makes the levels of inputs that were drawn independently move together, without changing what each is distributed like.</summary>
/// <remarks>
/// A Gaussian copula (R. B. Nelsen, An Introduction to Copulas, from memory): the levels become standard normal numbers, these
/// are mixed so that any two have the stated coefficient of correlation, and become levels again. Between two normal inputs
/// the coefficient is their own; between others it differs from it a little. Any number n of inputs has one coefficient, from
/// −1 / (n − 1) to 1.
/// </remarks>
public static class CorrelatedLevels
{
    /// <summary>Refuses a coefficient that no such group has.</summary>
    /// <param name="coefficient">The coefficient of correlation of any two.</param>
    /// <param name="count">How many inputs are in the group, two or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two inputs, or a coefficient that the group cannot have.</exception>
    public static void Require(double coefficient, int count)
    {
        if (count < 2)
        {
            throw new ArgumentOutOfRangeException(nameof(count), count, "A correlated group has two inputs or more.");
        }

        if (!(coefficient >= -1.0 / (count - 1) && coefficient <= 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(coefficient), coefficient, FormattableString.Invariant($"The coefficient of correlation of {count} inputs is from {-1.0 / (count - 1):g4} to 1."));
        }
    }

    /// <summary>Mixes the levels in place.</summary>
    /// <param name="levels">Independent levels between 0 and 1.</param>
    /// <param name="coefficient">The coefficient of correlation of any two.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two levels, or a coefficient that the group cannot have.</exception>
    public static void Mix(Span<double> levels, double coefficient)
    {
        Require(coefficient, levels.Length);

        // The symmetric root of the matrix that has 1 on its diagonal and the coefficient elsewhere: a + b for each with
        // itself and b for each with the others, from its eigenvalues 1 − c, and 1 + (n − 1) c along (1, 1, …, 1).
        double a = Math.Sqrt(1 - coefficient);
        double b = (Math.Sqrt(Math.Max(0, 1 + ((levels.Length - 1) * coefficient))) - a) / levels.Length;
        double sum = 0;
        for (int i = 0; i < levels.Length; i++)
        {
            levels[i] = Normal.InvCDF(0, 1, levels[i]);
            sum += levels[i];
        }

        for (int i = 0; i < levels.Length; i++)
        {
            // Never the ends, where a normal input would be infinite.
            levels[i] = Math.Clamp(Normal.CDF(0, 1, (a * levels[i]) + (b * sum)), double.Epsilon, 1 - (0.5 * Math.ScaleB(1, -52)));
        }
    }
}
