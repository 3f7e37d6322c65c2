using System.Globalization;
using System.Numerics;
using Momentum.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Frames;

/// <summary>A point, by its coordinates from the origin of a frame.</summary>
/// <typeparam name="TFrame">The frame from whose origin and along whose axes the coordinates are taken.</typeparam>
/// <remarks>
/// <para>A point is not a displacement: two points do not add. Their difference is a displacement, a
/// <c>Vector&lt;Length, TFrame&gt;</c>, and a point plus a displacement is a point.</para>
/// <para>Range: every finite coordinate. Equality is exact, in metres; compare computed points with
/// <see cref="EqualsWithin"/>. <c>default</c> is the frame's origin. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct Position<TFrame> :
    IEquatable<Position<TFrame>>,
    IFormattable,
    IAdditionOperators<Position<TFrame>, Vector<Length, TFrame>, Position<TFrame>>,
    IEqualityOperators<Position<TFrame>, Position<TFrame>, bool>
    where TFrame : struct, IFrame
{
    private Position(Vector<Length, TFrame> fromOrigin) => FromOrigin = fromOrigin;

    /// <summary>The frame's origin.</summary>
    public static Position<TFrame> Origin => default;

    /// <summary>The displacement from the frame's origin to the point.</summary>
    public Vector<Length, TFrame> FromOrigin { get; }

    /// <summary>The coordinate along the frame's first axis.</summary>
    public Length X => FromOrigin.X;

    /// <summary>The coordinate along the frame's second axis.</summary>
    public Length Y => FromOrigin.Y;

    /// <summary>The coordinate along the frame's third axis.</summary>
    public Length Z => FromOrigin.Z;

    /// <summary>From three coordinates.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is NaN or infinite.</exception>
    public static Position<TFrame> Of(Length x, Length y, Length z) => new(Vector<Length, TFrame>.Of(x, y, z));

    /// <summary>From three numbers in one unit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is NaN or infinite, or the unit is no unit of length, such as <c>default</c>.</exception>
    public static Position<TFrame> Of(double x, double y, double z, LengthUnit unit) => Enum.IsDefined(unit)
        ? Of(Length.From(Finite.Require(x), unit), Length.From(Finite.Require(y), unit), Length.From(Finite.Require(z), unit))
        : throw new ArgumentOutOfRangeException(nameof(unit), unit, "unit must be a unit of length, such as LengthUnit.Meter.");

    /// <summary>The point moved by a displacement.</summary>
    public static Position<TFrame> operator +(Position<TFrame> left, Vector<Length, TFrame> right) => new(left.FromOrigin + right);

    /// <summary>The point moved back by a displacement.</summary>
    public static Position<TFrame> operator -(Position<TFrame> left, Vector<Length, TFrame> right) => new(left.FromOrigin - right);

    /// <summary>The displacement from the right point to the left one.</summary>
    public static Vector<Length, TFrame> operator -(Position<TFrame> left, Position<TFrame> right) => left.FromOrigin - right.FromOrigin;

    /// <summary>Whether the coordinates are the same numbers of metres.</summary>
    public static bool operator ==(Position<TFrame> left, Position<TFrame> right) => left.FromOrigin == right.FromOrigin;

    /// <summary>Whether any coordinate differs.</summary>
    public static bool operator !=(Position<TFrame> left, Position<TFrame> right) => !(left == right);

    /// <summary>Whether the points are at most <paramref name="tolerance"/> apart.</summary>
    /// <param name="other">The point to compare with.</param>
    /// <param name="tolerance">Largest distance, zero or positive.</param>
    public bool EqualsWithin(Position<TFrame> other, Length tolerance) => FromOrigin.EqualsWithin(other.FromOrigin, tolerance);

    /// <inheritdoc/>
    public bool Equals(Position<TFrame> other) => FromOrigin.Equals(other.FromOrigin);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Position<TFrame> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => FromOrigin.GetHashCode();

    /// <summary>The coordinates in metres and the frame in the invariant culture, such as <c>(0, 0, 0.4) m [Body]</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The coordinates in a numeric format, and the frame; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        FromOrigin.ToString(format, formatProvider ?? CultureInfo.InvariantCulture);
}
