namespace Momentum.Tool.Answers;

/// <summary>The share of cases in which a requirement must hold.</summary>
internal static class RequiredShare
{
    /// <summary>What stands for three standard deviations.</summary>
    public const double Value = 0.997;

    /// <summary>The least limit that holds in the share of cases, by halving; null if at any limit it holds in fewer.</summary>
    /// <param name="largest">Where it holds in all cases that have the figure, SI.</param>
    /// <param name="shareBelow">The share of all cases below a limit; a case without the figure is below none.</param>
    public static double? Bound(double largest, Func<double, double> shareBelow)
    {
        // What is zero in all cases is below any limit, and no limit may be zero.
        const double Least = 1e-30;
        double high = Math.Max(largest * (1 + 1e-12), Least);
        if (shareBelow(high) < Value)
        {
            return null;
        }

        if (largest == 0)
        {
            return 0;
        }

        double low = 0;
        for (int i = 0; i < 60 && high - low > 1e-15 * largest; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = shareBelow(middle) < Value ? (middle, high) : (low, middle);
        }

        return high;
    }
}
