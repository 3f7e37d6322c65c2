using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The share of cases in which a requirement must hold.</summary>
internal static class RequiredShare
{
    /// <summary>What stands for three standard deviations.</summary>
    public const double Value = 0.997;

    /// <summary>The least limit that holds in the share of cases, by halving; null if at any limit it holds in fewer.</summary>
    /// <typeparam name="TQuantity">What is limited.</typeparam>
    /// <param name="largest">Where it holds in all cases that have the figure, SI.</param>
    /// <param name="quantity">The quantity of an SI number.</param>
    /// <param name="below">The probability of a case below a limit; one without the figure is below none.</param>
    public static TQuantity? Bound<TQuantity>(double largest, Func<double, TQuantity> quantity, Func<TQuantity, Probability> below)
        where TQuantity : struct, IQuantity
    {
        // What is zero in all cases is below any limit, and no limit may be zero.
        const double Least = 1e-30;
        double high = Math.Max(largest * (1 + 1e-12), Least);
        if (ShareBelow(high) < Value)
        {
            return null;
        }

        if (largest == 0)
        {
            return quantity(0);
        }

        double low = 0;
        for (int i = 0; i < 60 && high - low > 1e-15 * largest; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = ShareBelow(middle) < Value ? (middle, high) : (low, middle);
        }

        return quantity(high);

        double ShareBelow(double limit) => below(quantity(limit)).Estimate;
    }
}
