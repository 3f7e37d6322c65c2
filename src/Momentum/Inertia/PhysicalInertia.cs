using System.Globalization;

namespace Momentum.Inertia;

/// <summary>
/// What a mass distribution's inertia must satisfy, about any point and along any axes: no principal moment negative, and
/// none larger than the sum of the other two (∫(y² + z²) dm, ∫(x² + z²) dm and ∫(x² + y²) dm with dm ≥ 0).
/// </summary>
internal static class PhysicalInertia
{
    /// <summary>
    /// How far the inequalities may be missed, as a part of the largest moment. A lamina and a rod meet them with
    /// equality, so rounding breaks them half of the time: unit conversion and transfers of thousands of parts add some
    /// 1e-13. A billionth is far above that and far below what any measurement can tell.
    /// </summary>
    internal const double Tolerance = 1e-9;

    /// <summary>Why the inertia is not physical, or null if it is.</summary>
    /// <param name="s">Tensor elements, kg·m².</param>
    /// <param name="noise">Rounding already in the elements, kg·m², where it may exceed <see cref="Tolerance"/>.</param>
    internal static string? Refusal(Tensor s, double noise = 0)
    {
        if (!double.IsFinite(s.LargestElement))
        {
            return "its elements are more than a double precision number holds; check the units";
        }

        double largest = Math.Max(Math.Max(s.Xx, s.Yy), s.Zz);
        double allowed = Math.Max(Tolerance * largest, noise);
        return
            Negative("xx", s.Xx, allowed) ?? Negative("yy", s.Yy, allowed) ?? Negative("zz", s.Zz, allowed) ??
            (largest <= allowed ? "all moments are zero, which only a point mass has, and only about its own place" : null) ??
            TooLarge("zz", s.Zz, "xx", s.Xx, "yy", s.Yy, allowed) ??
            TooLarge("yy", s.Yy, "xx", s.Xx, "zz", s.Zz, allowed) ??
            TooLarge("xx", s.Xx, "yy", s.Yy, "zz", s.Zz, allowed) ??
            Principal(s, allowed);
    }

    /// <summary>
    /// The inertia of a body nearest to elements that no body may have: of the second moments, ∫ r rᵀ dm = ½ tr(I) 1 − I,
    /// the negative principal ones are set to zero, which leaves a lamina or a rod. Elements that a body can have stay as they are.
    /// </summary>
    /// <remarks>
    /// Nearest in the sum of the squares of the second moments' elements (N. J. Higham, Computing a nearest symmetric positive
    /// semidefinite matrix, Linear Algebra and its Applications 103, 1988, from memory). A negative second moment −e along a
    /// unit vector v is raised to zero by adding e to the moments about all axes across v: so the moment about the axis of a
    /// thin disc stays as it was drawn, and those about its diameters follow.
    /// </remarks>
    internal static Tensor Nearest(Tensor s)
    {
        double half = 0.5 * (s.Xx + s.Yy + s.Zz);
        var second = SymmetricEigen.Of(new Tensor(half - s.Xx, half - s.Yy, half - s.Zz, -s.Xy, -s.Xz, -s.Yz));
        return Raised(Raised(Raised(s, second.Value0, second.Vector0), second.Value1, second.Vector1), second.Value2, second.Vector2);
    }

    private static Tensor Raised(Tensor s, double moment, Vec v) => moment >= 0
        ? s
        : s + (new Tensor(1 - (v.X * v.X), 1 - (v.Y * v.Y), 1 - (v.Z * v.Z), -v.X * v.Y, -v.X * v.Z, -v.Y * v.Z) * -moment);

    private static string? Negative(string name, double value, double allowed) => value < -allowed
        ? string.Create(CultureInfo.InvariantCulture, $"{name} is {value:G9} kg·m², and a moment of inertia is never negative. Likely a product was given in its place, or more was subtracted than there is")
        : null;

    private static string? TooLarge(string name, double value, string first, double a, string second, double b, double allowed) =>
        value > a + b + allowed
            ? string.Create(CultureInfo.InvariantCulture, $"{name} = {value:G9} kg·m² is larger than {first} + {second} = {a + b:G9} kg·m² by {value - a - b:G3} kg·m² ({100 * (value - a - b) / value:G3} %), which no mass distribution has. Likely mixed units, moments about different points, or a slip in one of the three")
            : null;

    private static string? Principal(Tensor s, double allowed)
    {
        SymmetricEigen eigen = SymmetricEigen.Of(s);
        double a = eigen.Value0;
        double b = eigen.Value1;
        double c = eigen.Value2;
        string moments = string.Create(CultureInfo.InvariantCulture, $"the principal moments come out as {a:G9}, {b:G9} and {c:G9} kg·m²");
        if (a < -allowed)
        {
            return $"{moments}, and the smallest is negative: the products are too large for the moments. {ProductCause(s, allowed)}";
        }

        return c > a + b + allowed
            ? string.Create(CultureInfo.InvariantCulture, $"{moments}, and the largest exceeds the sum of the other two by {c - a - b:G3} kg·m² ({100 * (c - a - b) / c:G3} %), which no mass distribution has. {ProductCause(s, allowed)}")
            : null;
    }

    // The signs matter to the principal moments only through xy·xz·yz: with one product zero, reversing all is a mirror image.
    private static string ProductCause(Tensor s, double allowed)
    {
        SymmetricEigen reversed = SymmetricEigen.Of(s.WithReversedProducts);
        return reversed.Value0 >= -allowed && reversed.Value2 <= reversed.Value0 + reversed.Value1 + allowed
            ? "With the products' signs reversed the tensor is physical: they are likely stated in the other sign convention"
            : "Likely mixed units, products of another point or other axes than the moments, or a slip in a product";
    }
}
