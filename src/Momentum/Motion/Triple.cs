using System.Runtime.CompilerServices;

namespace Momentum.Motion;

/// <summary>Three SI numbers for the inside of computations, where frame and quantity are in the name of the variable.</summary>
internal readonly record struct Triple(double X, double Y, double Z)
{
    public double SquaredLength
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get { return (X * X) + (Y * Y) + (Z * Z); }
    }

    public double Length
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get { return Math.Sqrt(SquaredLength); }
    }

    public double LargestMagnitude
    {
        get { return Math.Max(Math.Abs(X), Math.Max(Math.Abs(Y), Math.Abs(Z))); }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple operator +(Triple a, Triple b)
    {
        return new Triple(a.X + b.X, a.Y + b.Y, a.Z + b.Z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple operator -(Triple a, Triple b)
    {
        return new Triple(a.X - b.X, a.Y - b.Y, a.Z - b.Z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple operator -(Triple a)
    {
        return new Triple(-a.X, -a.Y, -a.Z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple operator *(Triple a, double factor)
    {
        return new Triple(a.X * factor, a.Y * factor, a.Z * factor);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Dot(Triple a, Triple b)
    {
        return (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Triple Cross(Triple a, Triple b)
    {
        return new Triple((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));
    }
}
