using System.Runtime.CompilerServices;

namespace Momentum.Tethers.Deployment;

/// <summary>A symmetric tensor of inertia (or its inverse) in body axes, tensor elements, SI.</summary>
internal readonly struct Tensor(double xx, double yy, double zz, double xy, double xz, double yz)
{
    public readonly double Xx = xx;
    public readonly double Yy = yy;
    public readonly double Zz = zz;
    public readonly double Xy = xy;
    public readonly double Xz = xz;
    public readonly double Yz = yz;

    public static Tensor operator +(Tensor a, Tensor b) =>
        new(a.Xx + b.Xx, a.Yy + b.Yy, a.Zz + b.Zz, a.Xy + b.Xy, a.Xz + b.Xz, a.Yz + b.Yz);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator *(Tensor t, Vec v) => new(
        (t.Xx * v.X) + (t.Xy * v.Y) + (t.Xz * v.Z),
        (t.Xy * v.X) + (t.Yy * v.Y) + (t.Yz * v.Z),
        (t.Xz * v.X) + (t.Yz * v.Y) + (t.Zz * v.Z));

    /// <summary>A point mass seen from a point at distance <paramref name="r"/>.</summary>
    public static Tensor OfPoint(double mass, Vec r) => new(
        mass * ((r.Y * r.Y) + (r.Z * r.Z)),
        mass * ((r.X * r.X) + (r.Z * r.Z)),
        mass * ((r.X * r.X) + (r.Y * r.Y)),
        -mass * r.X * r.Y,
        -mass * r.X * r.Z,
        -mass * r.Y * r.Z);

    public Tensor Inverse()
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
}
