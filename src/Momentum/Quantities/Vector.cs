using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace Momentum.Quantities;

/// <summary>
/// Three components of one scalar quantity along the axes of one frame: a force in body axes is a
/// <c>Vector&lt;Force, Body&gt;</c>.
/// </summary>
/// <typeparam name="TQuantity">
/// The scalar quantity of each component, such as <see cref="Length"/> (a displacement; a point is a <c>Position</c>),
/// <see cref="Speed"/>, <see cref="Force"/>, <see cref="RotationalSpeed"/> or <see cref="AngularMomentum"/>. One that a vector
/// cannot have is refused with the list of those it can have.
/// </typeparam>
/// <typeparam name="TFrame">The frame along whose axes the components are taken.</typeparam>
/// <remarks>
/// <para>Three SI numbers, 24 bytes; no unit is carried at run time and nothing is converted until a scalar is read.
/// Vectors of another quantity or frame neither add nor compare: that does not compile. The physical products
/// (<c>r.Cross(force)</c> is a torque, <c>mass * acceleration</c> a force) are in <see cref="VectorProducts"/>.</para>
/// <para>Range: every finite component. The factories refuse NaN and infinity, and multiplication and division by a number
/// refuse such a number, and a division zero. Beyond that the operators do not check: a component that overflows is infinite, or,
/// where two of them cancel, not a number. Reading it throws an <see cref="ArgumentException"/>, because no scalar quantity holds
/// it; as text it reads <c>Infinity</c> or <c>NaN</c>; and what is computed from the vector is refused.</para>
/// <para>Equality is exact, of the SI numbers; compare computed vectors with <see cref="EqualsWithin"/>.
/// <c>default</c> is the zero vector. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct Vector<TQuantity, TFrame> :
    IEquatable<Vector<TQuantity, TFrame>>,
    IFormattable,
    IAdditionOperators<Vector<TQuantity, TFrame>, Vector<TQuantity, TFrame>, Vector<TQuantity, TFrame>>,
    ISubtractionOperators<Vector<TQuantity, TFrame>, Vector<TQuantity, TFrame>, Vector<TQuantity, TFrame>>,
    IUnaryNegationOperators<Vector<TQuantity, TFrame>, Vector<TQuantity, TFrame>>,
    IMultiplyOperators<Vector<TQuantity, TFrame>, double, Vector<TQuantity, TFrame>>,
    IDivisionOperators<Vector<TQuantity, TFrame>, double, Vector<TQuantity, TFrame>>,
    IEqualityOperators<Vector<TQuantity, TFrame>, Vector<TQuantity, TFrame>, bool>
    where TQuantity : struct
    where TFrame : struct, IFrame
{
    // Readable by the floors above, which compute in SI numbers.
    internal readonly double SiX;
    internal readonly double SiY;
    internal readonly double SiZ;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector(double x, double y, double z)
    {
        SiX = x;
        SiY = y;
        SiZ = z;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector(Vec si)
        : this(si.X, si.Y, si.Z)
    {
    }

    internal Vec Si
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => new(SiX, SiY, SiZ);
    }

    /// <summary>The zero vector.</summary>
    public static Vector<TQuantity, TFrame> Zero => default;

    /// <summary>The component along the frame's first axis.</summary>
    public TQuantity X => Si<TQuantity>.Quantity(SiX);

    /// <summary>The component along the frame's second axis.</summary>
    public TQuantity Y => Si<TQuantity>.Quantity(SiY);

    /// <summary>The component along the frame's third axis.</summary>
    public TQuantity Z => Si<TQuantity>.Quantity(SiZ);

    /// <summary>The length of the vector, never negative.</summary>
    public TQuantity Magnitude => Si<TQuantity>.Quantity(SiMagnitude);

    // Scaled by the largest component: neither overflows nor underflows where the result does not.
    internal double SiMagnitude
    {
        get
        {
            double square = (SiX * SiX) + (SiY * SiY) + (SiZ * SiZ);
            if (square is > 1e-200 and < 1e200)
            {
                return Math.Sqrt(square);
            }

            double scale = Math.Max(Math.Abs(SiX), Math.Max(Math.Abs(SiY), Math.Abs(SiZ)));
            if (scale == 0 || !double.IsFinite(scale))
            {
                return scale;
            }

            double x = SiX / scale;
            double y = SiY / scale;
            double z = SiZ / scale;
            return scale * Math.Sqrt((x * x) + (y * y) + (z * z));
        }
    }

    /// <summary>From three scalars.</summary>
    /// <param name="x">Component along the frame's first axis.</param>
    /// <param name="y">Component along the frame's second axis.</param>
    /// <param name="z">Component along the frame's third axis.</param>
    /// <exception cref="ArgumentOutOfRangeException">A component is NaN or infinite.</exception>
    /// <exception cref="NotSupportedException"><typeparamref name="TQuantity"/> is not a quantity that a vector can have.</exception>
    public static Vector<TQuantity, TFrame> Of(TQuantity x, TQuantity y, TQuantity z) =>
        FromSi(Si<TQuantity>.Number(x), Si<TQuantity>.Number(y), Si<TQuantity>.Number(z));

    /// <summary>From a direction and the component along it.</summary>
    /// <param name="direction">The direction.</param>
    /// <param name="magnitude">The component along it; a negative one points the other way.</param>
    /// <exception cref="ArgumentOutOfRangeException">The magnitude is NaN or infinite.</exception>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public static Vector<TQuantity, TFrame> Along(Direction<TFrame> direction, TQuantity magnitude)
    {
        Direction<TFrame>.Require(direction);
        double size = Finite.Require(Si<TQuantity>.Number(magnitude), nameof(magnitude));
        return new(size * direction.X, size * direction.Y, size * direction.Z);
    }

    /// <summary>
    /// From bare numbers in the quantity's SI unit, such as m, m/s, N, rad/s or kg·m²/s.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A component is NaN or infinite.</exception>
    public static Vector<TQuantity, TFrame> FromSi(double x, double y, double z) =>
        new(Finite.Require(x), Finite.Require(y), Finite.Require(z));

    internal static Vector<TQuantity, TFrame> FromSi(Vec si) => FromSi(si.X, si.Y, si.Z);

    /// <summary>Writes the three SI numbers: the way out of the type system, for a solver's own arrays.</summary>
    /// <param name="destination">At least three numbers long.</param>
    /// <exception cref="ArgumentException">The destination is shorter than three.</exception>
    public void CopySiTo(Span<double> destination)
    {
        if (destination.Length < 3)
        {
            throw new ArgumentException(
                $"destination holds {destination.Length} numbers; a vector needs room for 3.", nameof(destination));
        }

        destination[0] = SiX;
        destination[1] = SiY;
        destination[2] = SiZ;
    }

    /// <summary>The direction of the vector.</summary>
    /// <exception cref="InvalidOperationException">The vector is zero, which has no direction.</exception>
    public Direction<TFrame> Direction() => SiMagnitude is > 0 and < double.PositiveInfinity
        ? Direction<TFrame>.Of(SiX, SiY, SiZ)
        : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"A vector of magnitude {SiMagnitude} has no direction."));

    /// <summary>The component along a direction, negative where the vector points the other way.</summary>
    /// <param name="direction">A direction in the same frame.</param>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public TQuantity ComponentAlong(Direction<TFrame> direction)
    {
        Direction<TFrame>.Require(direction);
        return Si<TQuantity>.Quantity((SiX * direction.X) + (SiY * direction.Y) + (SiZ * direction.Z));
    }

    /// <summary>The sum.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<TQuantity, TFrame> operator +(Vector<TQuantity, TFrame> left, Vector<TQuantity, TFrame> right) =>
        new(left.SiX + right.SiX, left.SiY + right.SiY, left.SiZ + right.SiZ);

    /// <summary>The difference.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<TQuantity, TFrame> operator -(Vector<TQuantity, TFrame> left, Vector<TQuantity, TFrame> right) =>
        new(left.SiX - right.SiX, left.SiY - right.SiY, left.SiZ - right.SiZ);

    /// <summary>The vector that points the other way.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<TQuantity, TFrame> operator -(Vector<TQuantity, TFrame> value) =>
        new(-value.SiX, -value.SiY, -value.SiZ);

    /// <summary>The vector times a pure number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<TQuantity, TFrame> operator *(Vector<TQuantity, TFrame> left, double right) =>
        Times(left, Finite.Require(right));

    /// <summary>The vector times a pure number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<TQuantity, TFrame> operator *(double left, Vector<TQuantity, TFrame> right) => right * left;

    /// <summary>The vector divided by a pure number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is zero, NaN or infinite.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<TQuantity, TFrame> operator /(Vector<TQuantity, TFrame> left, double right) =>
        Over(left, Finite.Divisor(right));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<TQuantity, TFrame> Times(Vector<TQuantity, TFrame> left, double right) =>
        new(left.SiX * right, left.SiY * right, left.SiZ * right);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<TQuantity, TFrame> Over(Vector<TQuantity, TFrame> left, double right) =>
        new(left.SiX / right, left.SiY / right, left.SiZ / right);

    /// <summary>Whether all three SI numbers are the same.</summary>
    public static bool operator ==(Vector<TQuantity, TFrame> left, Vector<TQuantity, TFrame> right) =>
        left.SiX == right.SiX && left.SiY == right.SiY && left.SiZ == right.SiZ;

    /// <summary>Whether any of the three SI numbers differs.</summary>
    public static bool operator !=(Vector<TQuantity, TFrame> left, Vector<TQuantity, TFrame> right) => !(left == right);

    /// <summary>Whether the magnitude of the difference is at most <paramref name="tolerance"/>.</summary>
    /// <param name="other">The vector to compare with.</param>
    /// <param name="tolerance">Largest magnitude of the difference, zero or positive.</param>
    public bool EqualsWithin(Vector<TQuantity, TFrame> other, TQuantity tolerance) =>
        (this - other).SiMagnitude <= Si<TQuantity>.Number(tolerance);

    /// <inheritdoc/>
    public bool Equals(Vector<TQuantity, TFrame> other) =>
        SiX.Equals(other.SiX) && SiY.Equals(other.SiY) && SiZ.Equals(other.SiZ);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Vector<TQuantity, TFrame> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(SiX, SiY, SiZ);

    /// <summary>The SI numbers, unit and frame in the invariant culture, such as <c>(1, 2, 3) N [Body]</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The SI numbers in a numeric format, unit and frame; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider)
    {
        formatProvider ??= CultureInfo.InvariantCulture;
        return $"({SiX.ToString(format, formatProvider)}, {SiY.ToString(format, formatProvider)}, " +
            $"{SiZ.ToString(format, formatProvider)}) {Si<TQuantity>.Symbol} [{typeof(TFrame).Name}]";
    }
}
