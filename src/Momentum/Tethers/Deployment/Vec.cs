using System.Runtime.CompilerServices;
using Momentum.Quantities;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// Three SI numbers inside the equations of motion, where forces, moments and velocities meet in one expression and the
/// quantity of each is stated beside it. It never leaves this folder: the doors are typed.
/// </summary>
internal readonly struct Vec(double x, double y, double z)
{
    public readonly double X = x;
    public readonly double Y = y;
    public readonly double Z = z;

    public double Square => (X * X) + (Y * Y) + (Z * Z);

    public double Length => Math.Sqrt(Square);

    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator -(Vec a) => new(-a.X, -a.Y, -a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator *(double s, Vec a) => new(s * a.X, s * a.Y, s * a.Z);

    public static Vec Read(ReadOnlySpan<double> source) => new(source[0], source[1], source[2]);

    public static Vec Of<TQuantity, TFrame>(Vector<TQuantity, TFrame> vector)
        where TQuantity : struct
        where TFrame : struct, IFrame
        => new(vector.SiX, vector.SiY, vector.SiZ);

    public Vector<TQuantity, TFrame> As<TQuantity, TFrame>()
        where TQuantity : struct
        where TFrame : struct, IFrame
        => Vector<TQuantity, TFrame>.FromSi(X, Y, Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Dot(Vec b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec Cross(Vec b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Write(Span<double> destination)
    {
        destination[0] = X;
        destination[1] = Y;
        destination[2] = Z;
    }
}
