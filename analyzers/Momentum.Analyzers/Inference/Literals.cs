using System.Collections.Immutable;

namespace Momentum.Analyzers.Inference;

/// <summary>What a bare number in a product may mean: a pure number, or a conversion of unit.</summary>
internal static class Literals
{
    // People write conversion factors to three digits and more: 57.3, 9.81, 0.0175 (0.27 % off).
    private const double Tolerance = 3e-3;
    private const double Exact = 1e-9;
    private const int LargestSimple = 12;

    private static readonly ImmutableArray<double> _angular = ImmutableArray.Create(1, Math.PI, 1 / Math.PI, Math.PI * Math.PI, 1 / (Math.PI * Math.PI));

    private static readonly ImmutableArray<double> _structural = ImmutableArray.Create(1, 2, 3, 4, 6, 8, 12, 2.0 / 3, 0.75, 0.4, 0.3, 0.15, 0.6, 1.5);

    // Numbers nobody writes except to convert: turns, degrees, minutes, inches, feet, pounds, slugs, gravity, knots, km/h.
    private static readonly ImmutableArray<double> _conversions = ImmutableArray.Create(
        Math.PI / 180, Math.PI / 30, Math.PI / 60, Math.PI / 200, 2 * Math.PI / 3600,
        0.0254, 25.4, 2.54, 0.3048, 304.8, 30.48, 0.9144, 1609.344, 1852, 0.45359237, 453.59237, 4.4482216152605, 9.80665, 980.665,
        14.593902937, 1.3558179483, 0.1129848290, 6894.757293, 32.17404856, 0.514444444, 1.0 / 3.6, 0.44704, 28.349523125, 745.69987);

    /// <summary>A factor that any physics formula has: a ratio of small whole numbers, perhaps with π; or a margin near 1.</summary>
    internal static bool IsPure(double factor)
    {
        double size = Math.Abs(factor);
        if (size is > 0.5 and < 2)
        {
            return true;
        }

        foreach (double angular in _angular)
        {
            for (int below = 1; below <= LargestSimple; below++)
            {
                double above = size / angular * below;
                if (above <= LargestSimple + 0.5 && Near(above, Math.Max(1, Math.Round(above)), Exact))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>
    /// A factor of geometry or calculus: ½, ⅓, ⅔, π, 2π, ⁴⁄₃π. Not a decimal, nor a whole number from 2 up, which may stand for
    /// a property of something or for a value of its own: for two seconds, three metres.
    /// </summary>
    internal static bool IsStructural(double factor)
    {
        double size = Math.Abs(factor);
        foreach (double angular in _angular)
        {
            double plain = size / angular;
            foreach (double whole in _structural)
            {
                if ((angular != 1 || whole < 2) && Near(plain, whole, Exact) || Near(plain, 1 / whole, Exact))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>A well-known conversion factor or the inverse of one.</summary>
    internal static bool IsConversion(double factor)
    {
        double size = Math.Abs(factor);
        foreach (double conversion in _conversions)
        {
            if (Near(size, conversion, Tolerance) || Near(size, 1 / conversion, Tolerance))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether some of the factors multiply to the ratio that would convert the unit, and the rest are pure.</summary>
    internal static bool Convert(ImmutableArray<double> factors, double ratio)
    {
        int subsets = 1 << factors.Length;
        for (int subset = 1; subset < subsets; subset++)
        {
            double product = 1;
            bool restIsPure = true;
            double rest = 1;
            for (int i = 0; i < factors.Length; i++)
            {
                if ((subset & (1 << i)) != 0)
                {
                    product *= factors[i];
                }
                else
                {
                    rest *= factors[i];
                    restIsPure &= IsPure(factors[i]);
                }
            }

            // A constant that was folded elsewhere holds conversion and pure factor in one.
            if (restIsPure && (Near(Math.Abs(product), ratio, Tolerance) || (subset == subsets - 1 && IsPure(Math.Abs(product) / ratio) && !IsPure(product))))
            {
                return true;
            }
        }

        return false;
    }

    internal static double Product(ImmutableArray<double> factors) => factors.Aggregate(1.0, (product, factor) => product * factor);

    internal static bool Near(double value, double other, double tolerance = Tolerance) => Math.Abs(value - other) <= tolerance * Math.Abs(other);
}
