using System.Globalization;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>Makes the scatter of a value about its nominal one.</summary>
public static class Scatter
{
    /// <summary>Normally distributed about the nominal value.</summary>
    /// <param name="sigma">One standard deviation, zero or positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is negative or not finite.</exception>
    public static Scatter<TQuantity> Normal<TQuantity>(TQuantity sigma)
        where TQuantity : struct, IQuantity => new(ScatterShape.Normal, Checked(sigma, nameof(sigma)));

    /// <summary>Evenly distributed between limits on either side of the nominal value.</summary>
    /// <param name="limit">The limit to either side, zero or positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">The limit is negative or not finite.</exception>
    public static Scatter<TQuantity> Uniform<TQuantity>(TQuantity limit)
        where TQuantity : struct, IQuantity => new(ScatterShape.Uniform, Checked(limit, nameof(limit)));

    private static TQuantity Checked<TQuantity>(TQuantity width, string name)
        where TQuantity : struct, IQuantity => (double)width.Value is >= 0 and < double.PositiveInfinity
            ? width
            : throw new ArgumentOutOfRangeException(
                name,
                width.ToString("g17", CultureInfo.InvariantCulture),
                $"{name} must be zero or positive, and finite: it is the width of a scatter, in the unit of the value.");
}
