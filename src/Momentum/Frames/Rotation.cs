using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Frames;

/// <summary>
/// How the axes of one frame stand in another: turns components along <typeparamref name="TFrom"/> axes into components
/// of the same vector along <typeparamref name="TTo"/> axes.
/// </summary>
/// <typeparam name="TFrom">The frame whose components go in.</typeparam>
/// <typeparam name="TTo">The frame whose components come out.</typeparam>
/// <remarks>
/// <para>A body's attitude is a <c>Rotation&lt;Body, Inertial&gt;</c>. A unit quaternion in Hamilton's convention, scalar
/// part w; components transform as v' = v + 2w(u × v) + 2u × (u × v) with u its vector part. Composition reads in the
/// order of travel and compiles only where the frames meet: <c>a.Then(b)</c> applies a first.</para>
/// <para>Equality is exact, of the four numbers, so a quaternion and its negative, which turn alike, are different;
/// compare with <see cref="EqualsWithin"/>. <c>default</c> is the identity: both frames have the same axes. Immutable,
/// so safe to share between threads.</para>
/// </remarks>
public readonly struct Rotation<TFrom, TTo> :
    IEquatable<Rotation<TFrom, TTo>>,
    IFormattable,
    IEqualityOperators<Rotation<TFrom, TTo>, Rotation<TFrom, TTo>, bool>
    where TFrom : struct, IFrame
    where TTo : struct, IFrame
{
    private readonly double _x;
    private readonly double _y;
    private readonly double _z;

    // The scalar part less one, so that default is the identity and not the zero quaternion, which is no rotation.
    private readonly double _wLessOne;

    private Rotation(double x, double y, double z, double w)
    {
        _x = x;
        _y = y;
        _z = z;
        _wLessOne = w - 1;
    }

    internal Quaternion Bare => new(_x, _y, _z, W);

    /// <summary>Both frames have the same axes.</summary>
    public static Rotation<TFrom, TTo> Identity => default;

    /// <summary>First component of the quaternion's vector part.</summary>
    public double X => _x;

    /// <summary>Second component of the quaternion's vector part.</summary>
    public double Y => _y;

    /// <summary>Third component of the quaternion's vector part.</summary>
    public double Z => _z;

    /// <summary>The quaternion's scalar part.</summary>
    public double W => 1 + _wLessOne;

    /// <summary>The angle of the turn, 0 to 180 degrees.</summary>
    public Angle Angle => Angle.FromRadians(2 * Math.Atan2(Math.Sqrt((_x * _x) + (_y * _y) + (_z * _z)), Math.Abs(W)));

    /// <summary>
    /// The rotation for <typeparamref name="TFrom"/> axes that stand turned by an angle, right-handed about an axis, from
    /// <typeparamref name="TTo"/> axes. (The axis has the same components in both.)
    /// </summary>
    /// <param name="axis">The axis of the turn.</param>
    /// <param name="angle">The angle of the turn.</param>
    /// <exception cref="ArgumentException">The axis is <c>default</c>, which points nowhere.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The angle is NaN or infinite.</exception>
    public static Rotation<TFrom, TTo> About(Direction<TFrom> axis, Angle angle)
    {
        Direction<TFrom>.Require(axis);
        (double sin, double cos) = Math.SinCos(Finite.Require(angle.Radians, nameof(angle)) / 2);
        return new(sin * axis.X, sin * axis.Y, sin * axis.Z, cos);
    }

    /// <summary>From a quaternion (x, y, z; scalar part w) in Hamilton's convention.</summary>
    /// <exception cref="ArgumentException">Its length is not 1 within 1e-6; it is then normalised exactly.</exception>
    public static Rotation<TFrom, TTo> FromQuaternion(double x, double y, double z, double w)
    {
        Quaternion given = new(x, y, z, w);
        double length = Math.Sqrt(given.SquaredLength);
        if (!(Math.Abs(length - 1) <= 1e-6))
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"The quaternion (x {x}, y {y}, z {z}, w {w}) has length {length}; a rotation needs length 1 within 1e-6. Normalise it, and check that the scalar part is given last."));
        }

        return Normalised(given);
    }

    /// <summary>From a direction cosine matrix, nine numbers row by row; columns are TFrom's axes in TTo.</summary>
    /// <param name="rows">Nine numbers, row by row.</param>
    /// <exception cref="ArgumentException">
    /// Not nine numbers; or the rows are not orthogonal and of unit length within 1e-6; or the determinant is −1 (a mirror
    /// image, which no rigid body makes).
    /// </exception>
    public static Rotation<TFrom, TTo> FromMatrix(ReadOnlySpan<double> rows)
    {
        if (rows.Length != 9)
        {
            throw new ArgumentException($"rows has {rows.Length} numbers; a direction cosine matrix has 9, row by row.", nameof(rows));
        }

        for (int i = 0; i < 3; i++)
        {
            for (int j = i; j < 3; j++)
            {
                double dot = Vec.Read(rows[(3 * i)..]).Dot(Vec.Read(rows[(3 * j)..]));
                double want = i == j ? 1 : 0;
                if (!(Math.Abs(dot - want) <= 1e-6))
                {
                    throw new ArgumentException(
                        string.Create(CultureInfo.InvariantCulture, $"Rows {i + 1} and {j + 1} of the matrix have the scalar product {dot}; a direction cosine matrix has {want} within 1e-6."),
                        nameof(rows));
                }
            }
        }

        Vec first = Vec.Read(rows);
        Vec second = Vec.Read(rows[3..]);
        Vec third = Vec.Read(rows[6..]);
        if (first.Cross(second).Dot(third) < 0)
        {
            throw new ArgumentException("The matrix has determinant -1: a mirror image. Check the sign of one axis.", nameof(rows));
        }

        return Normalised(Quaternion.FromRows(first, second, third));
    }

    /// <summary>The rotation back.</summary>
    public Rotation<TTo, TFrom> Inverse() => Rotation<TTo, TFrom>.Unchecked(Bare.Conjugate());

    /// <summary>This rotation first, then the next.</summary>
    /// <typeparam name="TNext">The frame that the next rotation leads to.</typeparam>
    /// <param name="next">The rotation that starts where this one ends.</param>
    /// <returns>The rotation from this one's start to the next one's end, normalised.</returns>
    public Rotation<TFrom, TNext> Then<TNext>(Rotation<TTo, TNext> next)
        where TNext : struct, IFrame =>

        // A product of unit quaternions is off unit length by rounding only; without this, long chains would drift.
        Rotation<TFrom, TNext>.Normalised(next.Bare * Bare);

    /// <summary>The components of a vector along <typeparamref name="TTo"/> axes.</summary>
    /// <typeparam name="TQuantity">The vector's quantity.</typeparam>
    /// <param name="vector">The vector, by its components along <typeparamref name="TFrom"/> axes.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector<TQuantity, TTo> Apply<TQuantity>(Vector<TQuantity, TFrom> vector)
        where TQuantity : struct
    {
        // t = 2 u × v; v' = v + w t + u × t.
        double w = W;
        double tx = 2 * ((_y * vector.SiZ) - (_z * vector.SiY));
        double ty = 2 * ((_z * vector.SiX) - (_x * vector.SiZ));
        double tz = 2 * ((_x * vector.SiY) - (_y * vector.SiX));
        return new(
            vector.SiX + (w * tx) + (_y * tz) - (_z * ty),
            vector.SiY + (w * ty) + (_z * tx) - (_x * tz),
            vector.SiZ + (w * tz) + (_x * ty) - (_y * tx));
    }

    /// <summary>The components of a direction along <typeparamref name="TTo"/> axes.</summary>
    /// <param name="direction">The direction, by its components along <typeparamref name="TFrom"/> axes.</param>
    public Direction<TTo> Apply(Direction<TFrom> direction)
    {
        Vector<Length, TTo> turned = Apply(new Vector<Length, TFrom>(direction.X, direction.Y, direction.Z));
        return new(turned.SiX, turned.SiY, turned.SiZ);
    }

    /// <summary>Writes the direction cosine matrix, nine numbers row by row; columns are TFrom's axes in TTo.</summary>
    /// <param name="destination">At least nine numbers long.</param>
    /// <exception cref="ArgumentException">The destination is shorter than nine.</exception>
    public void CopyMatrixTo(Span<double> destination)
    {
        if (destination.Length < 9)
        {
            throw new ArgumentException($"destination holds {destination.Length} numbers; a direction cosine matrix needs room for 9.", nameof(destination));
        }

        for (int column = 0; column < 3; column++)
        {
            Vector<Length, TTo> axis = Apply(new Vector<Length, TFrom>(column == 0 ? 1 : 0, column == 1 ? 1 : 0, column == 2 ? 1 : 0));
            destination[column] = axis.SiX;
            destination[3 + column] = axis.SiY;
            destination[6 + column] = axis.SiZ;
        }
    }

    /// <summary>Whether the two differ by a turn of at most <paramref name="tolerance"/>.</summary>
    /// <param name="other">The rotation to compare with.</param>
    /// <param name="tolerance">Largest angle between them, zero or positive.</param>
    public bool EqualsWithin(Rotation<TFrom, TTo> other, Angle tolerance) =>
        Then(other.Inverse()).Angle.Radians <= tolerance.Radians;

    /// <summary>Whether all four numbers are the same.</summary>
    public static bool operator ==(Rotation<TFrom, TTo> left, Rotation<TFrom, TTo> right) =>
        left._x == right._x && left._y == right._y && left._z == right._z && left._wLessOne == right._wLessOne;

    /// <summary>Whether any of the four numbers differs.</summary>
    public static bool operator !=(Rotation<TFrom, TTo> left, Rotation<TFrom, TTo> right) => !(left == right);

    /// <inheritdoc/>
    public bool Equals(Rotation<TFrom, TTo> other) =>
        _x.Equals(other._x) && _y.Equals(other._y) && _z.Equals(other._z) && _wLessOne.Equals(other._wLessOne);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Rotation<TFrom, TTo> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_x, _y, _z, _wLessOne);

    /// <summary>The quaternion and frames in the invariant culture, such as <c>(x 0, y 0, z 0, w 1) [Body → Inertial]</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The quaternion in a numeric format, and the frames; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider)
    {
        formatProvider ??= CultureInfo.InvariantCulture;
        return $"(x {_x.ToString(format, formatProvider)}, y {_y.ToString(format, formatProvider)}, " +
            $"z {_z.ToString(format, formatProvider)}, w {W.ToString(format, formatProvider)}) [{typeof(TFrom).Name} → {typeof(TTo).Name}]";
    }

    /// <summary>From a quaternion that the caller knows to be of unit length.</summary>
    internal static Rotation<TFrom, TTo> Unchecked(Quaternion q) => new(q.X, q.Y, q.Z, q.W);

    private static Rotation<TFrom, TTo> Normalised(Quaternion q)
    {
        double length = Math.Sqrt(q.SquaredLength);
        return new(q.X / length, q.Y / length, q.Z / length, q.W / length);
    }
}
