using System.Runtime.CompilerServices;

namespace Momentum;

/// <summary>
/// Six SI numbers of a symmetric 3×3 matrix, such as the elements of an inertia tensor: the arithmetic beneath the inertia
/// types, which give it a frame, a reference point and checks. Not a public type because bare it has none of these.
/// </summary>
internal readonly struct Tensor
{
    internal readonly double Xx;
    internal readonly double Yy;
    internal readonly double Zz;
    internal readonly double Xy;
    internal readonly double Xz;
    internal readonly double Yz;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Tensor(double xx, double yy, double zz, double xy, double xz, double yz)
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
    internal Tensor WithReversedProducts => new(Xx, Yy, Zz, 0 - Xy, 0 - Xz, 0 - Yz);

    /// <summary>Inertia of a point mass (kg) at a displacement r (m) from the reference: m (r² 1 − r rᵀ).</summary>
    internal static Tensor OfPoint(double mass, Vec r) => new(
        mass * ((r.Y * r.Y) + (r.Z * r.Z)),
        mass * ((r.X * r.X) + (r.Z * r.Z)),
        mass * ((r.X * r.X) + (r.Y * r.Y)),
        -mass * r.X * r.Y,
        -mass * r.X * r.Z,
        -mass * r.Y * r.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Tensor operator +(Tensor a, Tensor b) =>
        new(a.Xx + b.Xx, a.Yy + b.Yy, a.Zz + b.Zz, a.Xy + b.Xy, a.Xz + b.Xz, a.Yz + b.Yz);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Tensor operator -(Tensor a, Tensor b) =>
        new(a.Xx - b.Xx, a.Yy - b.Yy, a.Zz - b.Zz, a.Xy - b.Xy, a.Xz - b.Xz, a.Yz - b.Yz);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Tensor operator *(Tensor a, double factor) =>
        new(a.Xx * factor, a.Yy * factor, a.Zz * factor, a.Xy * factor, a.Xz * factor, a.Yz * factor);

    public static Tensor operator /(Tensor a, double divisor) =>
        new(a.Xx / divisor, a.Yy / divisor, a.Zz / divisor, a.Xy / divisor, a.Xz / divisor, a.Yz / divisor);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator *(Tensor t, Vec v) => new(
        (t.Xx * v.X) + (t.Xy * v.Y) + (t.Xz * v.Z),
        (t.Xy * v.X) + (t.Yy * v.Y) + (t.Yz * v.Z),
        (t.Xz * v.X) + (t.Yz * v.Y) + (t.Zz * v.Z));

    /// <summary>The inverse, by cofactors; not finite where the matrix is singular.</summary>
    internal Tensor Inverse()
    {
        double xx = (Yy * Zz) - (Yz * Yz);
        double xy = (Xz * Yz) - (Xy * Zz);
        double xz = (Xy * Yz) - (Xz * Yy);
        double s = 1 / ((Xx * xx) + (Xy * xy) + (Xz * xz));
        return new(
            s * xx,
            s * ((Xx * Zz) - (Xz * Xz)),
            s * ((Xx * Yy) - (Xy * Xy)),
            s * xy,
            s * xz,
            s * ((Xy * Xz) - (Xx * Yz)));
    }

    /// <summary>The same tensor along turned axes: R S Rᵀ, with the direction cosines R row by row.</summary>
    internal Tensor Turned(ReadOnlySpan<double> cosines)
    {
        Vec first = Vec.Read(cosines);
        Vec second = Vec.Read(cosines[3..]);
        Vec third = Vec.Read(cosines[6..]);
        Vec a = this * first;
        Vec b = this * second;
        Vec c = this * third;
        return new(first.Dot(a), second.Dot(b), third.Dot(c), second.Dot(a), third.Dot(a), third.Dot(b));
    }

    /// <summary>Whether all six are the same numbers.</summary>
    internal bool Same(Tensor other) =>
        Xx == other.Xx && Yy == other.Yy && Zz == other.Zz && Xy == other.Xy && Xz == other.Xz && Yz == other.Yz;

    /// <summary>Whether all six are equal in the sense of <see cref="double.Equals(double)"/>.</summary>
    internal bool EqualTo(Tensor other) =>
        Xx.Equals(other.Xx) && Yy.Equals(other.Yy) && Zz.Equals(other.Zz) &&
        Xy.Equals(other.Xy) && Xz.Equals(other.Xz) && Yz.Equals(other.Yz);

    internal int Hash() => HashCode.Combine(Xx, Yy, Zz, Xy, Xz, Yz);

    internal string Text(string? format, IFormatProvider provider) =>
        $"xx {Xx.ToString(format, provider)}, yy {Yy.ToString(format, provider)}, zz {Zz.ToString(format, provider)}, " +
        $"xy {Xy.ToString(format, provider)}, xz {Xz.ToString(format, provider)}, yz {Yz.ToString(format, provider)}";
}
