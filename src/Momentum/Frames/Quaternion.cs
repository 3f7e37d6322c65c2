using System.Runtime.CompilerServices;

namespace Momentum.Frames;

/// <summary>
/// A quaternion in Hamilton's convention for the inside of computations, scalar part last. As a rotation from A to B it
/// turns components along A into components along B; the product a · b applies b first.
/// </summary>
internal readonly record struct Quaternion(double X, double Y, double Z, double W)
{
    public static readonly Quaternion Identity = new(0.0, 0.0, 0.0, 1.0);

    public double SquaredLength
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get { return (X * X) + (Y * Y) + (Z * Z) + (W * W); }
    }

    public static Quaternion Read(ReadOnlySpan<double> source) => new(source[0], source[1], source[2], source[3]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quaternion operator *(Quaternion a, Quaternion b)
    {
        return new Quaternion(
            (a.W * b.X) + (a.X * b.W) + (a.Y * b.Z) - (a.Z * b.Y),
            (a.W * b.Y) + (a.Y * b.W) + (a.Z * b.X) - (a.X * b.Z),
            (a.W * b.Z) + (a.Z * b.W) + (a.X * b.Y) - (a.Y * b.X),
            (a.W * b.W) - (a.X * b.X) - (a.Y * b.Y) - (a.Z * b.Z));
    }

    /// <summary>
    /// From the matrix that turns components: its rows are the axes of the frame it leads to, by components in the one it
    /// comes from. Not of unit length.
    /// </summary>
    /// <remarks>
    /// S. W. Shepperd, J. Guidance and Control 1(3), 1978 (from memory, not read): built on the largest of the four, so that
    /// no digits are lost.
    /// </remarks>
    public static Quaternion FromRows(Vec row1, Vec row2, Vec row3)
    {
        double trace = row1.X + row2.Y + row3.Z;
        return trace >= row1.X && trace >= row2.Y && trace >= row3.Z ? new(row3.Y - row2.Z, row1.Z - row3.X, row2.X - row1.Y, 1.0 + trace)
            : row1.X >= row2.Y && row1.X >= row3.Z ? new(1.0 + row1.X - row2.Y - row3.Z, row1.Y + row2.X, row1.Z + row3.X, row3.Y - row2.Z)
            : row2.Y >= row3.Z ? new(row1.Y + row2.X, 1.0 + row2.Y - row1.X - row3.Z, row2.Z + row3.Y, row1.Z - row3.X)
            : new(row1.Z + row3.X, row2.Z + row3.Y, 1.0 + row3.Z - row1.X - row2.Y, row2.X - row1.Y);
    }

    /// <summary>How the rotation of a body changes with time that turns with this angular velocity, along its own axes: q (ω/2).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Quaternion Rate(Vec angularVelocity)
    {
        return this * new Quaternion(0.5 * angularVelocity.X, 0.5 * angularVelocity.Y, 0.5 * angularVelocity.Z, 0.0);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Quaternion Conjugate()
    {
        return new Quaternion(-X, -Y, -Z, W);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Quaternion Normalised()
    {
        double factor = 1.0 / Math.Sqrt(SquaredLength);
        return new Quaternion(X * factor, Y * factor, Z * factor, W * factor);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Write(Span<double> destination)
    {
        destination[0] = X;
        destination[1] = Y;
        destination[2] = Z;
        destination[3] = W;
    }

    /// <summary>The components, turned; exact only if the quaternion is of unit length.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vec Turn(Vec v)
    {
        Vec u = new(X, Y, Z);
        Vec t = u.Cross(v) * 2.0;
        return v + (t * W) + u.Cross(t);
    }
}
