using System.Runtime.CompilerServices;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>What the inertia types share at their public doors: stated figures into checked SI numbers.</summary>
internal static class Checks
{
    internal static Tensor Elements(
        MassMomentOfInertia xx,
        MassMomentOfInertia yy,
        MassMomentOfInertia zz,
        MassMomentOfInertia xy,
        MassMomentOfInertia xz,
        MassMomentOfInertia yz,
        ProductSign products)
    {
        Tensor stated = new(Si(xx), Si(yy), Si(zz), Si(xy), Si(xz), Si(yz));
        return products switch
        {
            ProductSign.TensorElement => stated,
            ProductSign.PositiveIntegral => stated.WithReversedProducts,
            _ => throw new ArgumentOutOfRangeException(
                nameof(products), products, "products must be ProductSign.TensorElement (xy is −∫ x y dm) or ProductSign.PositiveIntegral (xy is +∫ x y dm)."),
        };
    }

    internal static double AboutAxis<TFrame>(Tensor si, Direction<TFrame> axis)
        where TFrame : struct, IFrame
    {
        Direction<TFrame>.Require(axis);
        return axis.Si.Dot(si * axis.Si);
    }

    /// <summary>A point whose coordinates are numbers, which those of an overflowed displacement are not.</summary>
    internal static Position<TFrame> Finite<TFrame>(Position<TFrame> point, [CallerArgumentExpression(nameof(point))] string name = "")
        where TFrame : struct, IFrame => double.IsFinite(point.FromOrigin.SiMagnitude)
        ? point
        : throw new ArgumentOutOfRangeException(name, point, $"{name} must have finite coordinates.");

    /// <summary>A number above zero.</summary>
    internal static double Positive(double value, string name, string unit) => value > 0 && double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(name, value, $"{name} must be a finite number of {unit} above zero.");

    private static double Si(MassMomentOfInertia value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        Quantities.Finite.Require(value.ToSi(), name);
}
