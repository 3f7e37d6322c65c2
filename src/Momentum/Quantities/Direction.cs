using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace Momentum.Quantities;

/// <summary>A direction along the axes of one frame: a unit vector, without a quantity.</summary>
/// <typeparam name="TFrame">The frame along whose axes the components are taken.</typeparam>
/// <remarks>
/// <para>The components are pure numbers whose squares sum to one, to rounding.</para>
/// <para>Equality is exact. <c>default</c> is no direction: its components are zero, and what needs a direction
/// refuses it; <see cref="IsDefault"/> tells. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct Direction<TFrame> :
    IEquatable<Direction<TFrame>>,
    IFormattable,
    IUnaryNegationOperators<Direction<TFrame>, Direction<TFrame>>,
    IEqualityOperators<Direction<TFrame>, Direction<TFrame>, bool>
    where TFrame : struct, IFrame
{
    internal Direction(double x, double y, double z)
    {
        X = x;
        Y = y;
        Z = z;
    }

    internal Vec Si => new(X, Y, Z);

    /// <summary>The frame's first axis.</summary>
    public static Direction<TFrame> XAxis => new(1, 0, 0);

    /// <summary>The frame's second axis.</summary>
    public static Direction<TFrame> YAxis => new(0, 1, 0);

    /// <summary>The frame's third axis.</summary>
    public static Direction<TFrame> ZAxis => new(0, 0, 1);

    /// <summary>Cosine of the angle to the frame's first axis.</summary>
    public double X { get; }

    /// <summary>Cosine of the angle to the frame's second axis.</summary>
    public double Y { get; }

    /// <summary>Cosine of the angle to the frame's third axis.</summary>
    public double Z { get; }

    /// <summary>Whether this is <c>default</c>, which points nowhere.</summary>
    public bool IsDefault => this == default;

    /// <summary>The direction of three components, which need not be of unit length.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A component is NaN or infinite.</exception>
    /// <exception cref="ArgumentException">All components are zero.</exception>
    public static Direction<TFrame> Of(double x, double y, double z)
    {
        double scale = Math.Max(Math.Abs(Finite.Require(x)), Math.Max(Math.Abs(Finite.Require(y)), Math.Abs(Finite.Require(z))));
        if (scale == 0)
        {
            throw new ArgumentException("The components (0, 0, 0) have no direction; give at least one that is not zero.");
        }

        // Scaled first, so that squares of tiny or huge components neither vanish nor overflow.
        x /= scale;
        y /= scale;
        z /= scale;
        double length = Math.Sqrt((x * x) + (y * y) + (z * z));
        return new(x / length, y / length, z / length);
    }

    /// <summary>Refuses <c>default</c> where a direction must point somewhere.</summary>
    /// <exception cref="ArgumentException">The direction is <c>default</c>.</exception>
    internal static void Require(Direction<TFrame> direction, [CallerArgumentExpression(nameof(direction))] string name = "")
    {
        if (direction.IsDefault)
        {
            throw new ArgumentException($"{name} is default, which points nowhere; make one with Direction<TFrame>.Of(x, y, z).", name);
        }
    }

    /// <summary>The angle to another direction in the same frame, 0 to 180 degrees, precise at both ends.</summary>
    /// <exception cref="ArgumentException">One of them is <c>default</c>, which points nowhere.</exception>
    public Angle AngleTo(Direction<TFrame> other)
    {
        Require(this, "this");
        Require(other);
        return Angle.FromRadians(Si.AngleTo(other.Si));
    }

    /// <summary>The opposite direction.</summary>
    public static Direction<TFrame> operator -(Direction<TFrame> value) => new(-value.X, -value.Y, -value.Z);

    /// <summary>Whether all components are the same numbers.</summary>
    public static bool operator ==(Direction<TFrame> left, Direction<TFrame> right) =>
        left.X == right.X && left.Y == right.Y && left.Z == right.Z;

    /// <summary>Whether any component differs.</summary>
    public static bool operator !=(Direction<TFrame> left, Direction<TFrame> right) => !(left == right);

    /// <inheritdoc/>
    public bool Equals(Direction<TFrame> other) => X.Equals(other.X) && Y.Equals(other.Y) && Z.Equals(other.Z);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Direction<TFrame> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(X, Y, Z);

    /// <summary>The components and frame in the invariant culture, such as <c>(0, 0, 1) [Body]</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The components in a numeric format, and the frame; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider)
    {
        formatProvider ??= CultureInfo.InvariantCulture;
        return $"({X.ToString(format, formatProvider)}, {Y.ToString(format, formatProvider)}, " +
            $"{Z.ToString(format, formatProvider)}) [{typeof(TFrame).Name}]";
    }
}
