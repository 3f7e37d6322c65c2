using System.Runtime.CompilerServices;

namespace Momentum;

/// <summary>
/// Three SI numbers inside a computation, where forces, moments and velocities meet in one expression: quantity, frame and
/// reference point of each are in the name of the variable. It never leaves the library: the doors are typed.
/// </summary>
internal readonly record struct Vec(double X, double Y, double Z)
{
    public double Square
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => (X * X) + (Y * Y) + (Z * Z);
    }

    public double Length
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => Math.Sqrt(Square);
    }

    public double LargestMagnitude => Math.Max(Math.Abs(X), Math.Max(Math.Abs(Y), Math.Abs(Z)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator +(Vec a, Vec b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator -(Vec a, Vec b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator -(Vec a) => new(-a.X, -a.Y, -a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator *(double s, Vec a) => new(s * a.X, s * a.Y, s * a.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator *(Vec a, double s) => s * a;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vec operator /(Vec a, double s) => new(a.X / s, a.Y / s, a.Z / s);

    public static Vec Read(ReadOnlySpan<double> source) => new(source[0], source[1], source[2]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Write(Span<double> destination)
    {
        destination[0] = X;
        destination[1] = Y;
        destination[2] = Z;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double Dot(Vec b) => (X * b.X) + (Y * b.Y) + (Z * b.Z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec Cross(Vec b) => new((Y * b.Z) - (Z * b.Y), (Z * b.X) - (X * b.Z), (X * b.Y) - (Y * b.X));

    // Combined better than a record does it: points of a grid share their low bits.
    public override int GetHashCode() => HashCode.Combine(X, Y, Z);

    /// <summary>Angle to another, 0 to π rad, precise at both ends.</summary>
    public double AngleTo(Vec b) => Math.Atan2(Cross(b).Length, Dot(b));
}
