using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>The scatter of a value about its nominal one.</summary>
/// <typeparam name="TQuantity">The quantity of the value.</typeparam>
/// <remarks><c>default</c> is no scatter. Equality is by shape and width, the width with its unit. Immutable.</remarks>
public readonly record struct Scatter<TQuantity> : IEqualityOperators<Scatter<TQuantity>, Scatter<TQuantity>, bool>
    where TQuantity : struct, IQuantity
{
    internal Scatter(ScatterShape shape, TQuantity width)
    {
        Shape = shape;
        Width = width;
    }

    /// <summary>Normal, uniform, or none.</summary>
    public ScatterShape Shape { get; }

    /// <summary>One standard deviation if normal, the limit to either side if uniform.</summary>
    public TQuantity Width { get; }

    /// <summary>Shape and width, in the invariant culture.</summary>
    public override string ToString() => Shape switch
    {
        ScatterShape.Normal => string.Create(CultureInfo.InvariantCulture, $"normal, 1 sigma {Width}"),
        ScatterShape.Uniform => string.Create(CultureInfo.InvariantCulture, $"uniform, limits {Width} either side"),
        _ => "none",
    };
}
