using System.Runtime.CompilerServices;

namespace Momentum.Inertia;

/// <summary>
/// Six numbers of a symmetric 3×3 matrix: the arithmetic beneath the inertia types, which give it a frame, a reference
/// point and checks. Not a public type because bare it has none of these.
/// </summary>
internal readonly struct SymmetricMatrix
{
    internal readonly double Xx;
    internal readonly double Yy;
    internal readonly double Zz;
    internal readonly double Xy;
    internal readonly double Xz;
    internal readonly double Yz;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal SymmetricMatrix(double xx, double yy, double zz, double xy, double xz, double yz)
    {
        Xx = xx;
        Yy = yy;
        Zz = zz;
        Xy = xy;
        Xz = xz;
        Yz = yz;
    }

    internal double LargestElement => Math.Max(
        Math.Max(Math.Max(Math.Abs(Xx), Math.Abs(Yy)), Math.Abs(Zz)),
        Math.Max(Math.Max(Math.Abs(Xy), Math.Abs(Xz)), Math.Abs(Yz)));

    // From zero, so that a product of zero does not turn into a minus zero that shows in texts.
    internal SymmetricMatrix WithReversedProducts => new(Xx, Yy, Zz, 0 - Xy, 0 - Xz, 0 - Yz);

    /// <summary>Inertia of a point mass at a displacement (x, y, z) from the reference: m (r² 1 − r rᵀ).</summary>
    internal static SymmetricMatrix OfPointMass(double mass, double x, double y, double z) => new(
        mass * ((y * y) + (z * z)),
        mass * ((x * x) + (z * z)),
        mass * ((x * x) + (y * y)),
        -mass * x * y,
        -mass * x * z,
        -mass * y * z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static SymmetricMatrix operator +(SymmetricMatrix a, SymmetricMatrix b) =>
        new(a.Xx + b.Xx, a.Yy + b.Yy, a.Zz + b.Zz, a.Xy + b.Xy, a.Xz + b.Xz, a.Yz + b.Yz);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static SymmetricMatrix operator -(SymmetricMatrix a, SymmetricMatrix b) =>
        new(a.Xx - b.Xx, a.Yy - b.Yy, a.Zz - b.Zz, a.Xy - b.Xy, a.Xz - b.Xz, a.Yz - b.Yz);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static SymmetricMatrix operator *(SymmetricMatrix a, double factor) =>
        new(a.Xx * factor, a.Yy * factor, a.Zz * factor, a.Xy * factor, a.Xz * factor, a.Yz * factor);

    /// <summary>The matrix times a column.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal (double X, double Y, double Z) Times(double x, double y, double z) => (
        (Xx * x) + (Xy * y) + (Xz * z),
        (Xy * x) + (Yy * y) + (Yz * z),
        (Xz * x) + (Yz * y) + (Zz * z));

    /// <summary>The same tensor along turned axes: R S Rᵀ, with the direction cosines R row by row.</summary>
    internal SymmetricMatrix Turned(ReadOnlySpan<double> r)
    {
        (double ax, double ay, double az) = Times(r[0], r[1], r[2]);
        (double bx, double by, double bz) = Times(r[3], r[4], r[5]);
        (double cx, double cy, double cz) = Times(r[6], r[7], r[8]);
        return new(
            (r[0] * ax) + (r[1] * ay) + (r[2] * az),
            (r[3] * bx) + (r[4] * by) + (r[5] * bz),
            (r[6] * cx) + (r[7] * cy) + (r[8] * cz),
            (r[3] * ax) + (r[4] * ay) + (r[5] * az),
            (r[6] * ax) + (r[7] * ay) + (r[8] * az),
            (r[6] * bx) + (r[7] * by) + (r[8] * bz));
    }

    /// <summary>Whether all six are the same numbers.</summary>
    internal bool Same(SymmetricMatrix other) =>
        Xx == other.Xx && Yy == other.Yy && Zz == other.Zz && Xy == other.Xy && Xz == other.Xz && Yz == other.Yz;

    /// <summary>Whether all six are equal in the sense of <see cref="double.Equals(double)"/>.</summary>
    internal bool EqualTo(SymmetricMatrix other) =>
        Xx.Equals(other.Xx) && Yy.Equals(other.Yy) && Zz.Equals(other.Zz) &&
        Xy.Equals(other.Xy) && Xz.Equals(other.Xz) && Yz.Equals(other.Yz);

    internal int Hash() => HashCode.Combine(Xx, Yy, Zz, Xy, Xz, Yz);

    internal string Text(string? format, IFormatProvider provider) =>
        $"xx {Xx.ToString(format, provider)}, yy {Yy.ToString(format, provider)}, zz {Zz.ToString(format, provider)}, " +
        $"xy {Xy.ToString(format, provider)}, xz {Xz.ToString(format, provider)}, yz {Yz.ToString(format, provider)}";
}
