using System.Globalization;
using System.Numerics;

namespace Momentum.Quantities;

/// <summary>Angular momentum, or one component of it, about whatever point the holder states.</summary>
/// <remarks>
/// <para>Any finite number of either sign. Eight bytes: the SI number (kg·m²/s); no unit is carried at run time.</para>
/// <para>Equality is exact, of the SI number; compare computed values with <see cref="EqualsWithin"/>.
/// <c>default</c> is zero. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct AngularMomentum :
    IEquatable<AngularMomentum>,
    IComparable<AngularMomentum>,
    IFormattable,
    IAdditionOperators<AngularMomentum, AngularMomentum, AngularMomentum>,
    ISubtractionOperators<AngularMomentum, AngularMomentum, AngularMomentum>,
    IUnaryNegationOperators<AngularMomentum, AngularMomentum>,
    IMultiplyOperators<AngularMomentum, double, AngularMomentum>,
    IDivisionOperators<AngularMomentum, double, AngularMomentum>,
    IComparisonOperators<AngularMomentum, AngularMomentum, bool>
{
    // Exact: (lb 0.45359237 kg)(g_n 9.80665 m/s²)/(ft 0.3048 m) kg a slug, times ft². NIST SP 811, appendix B.
    private const double KilogramSquareMetersPerSlugSquareFoot = 1.3558179483314004;

    private readonly double _si;

    private AngularMomentum(double si) => _si = si;

    /// <summary>No momentum: 0 kg·m²/s.</summary>
    public static AngularMomentum Zero => default;

    /// <summary>The number of kilogram square metres a second (kg·m²/s), the same as newton metre seconds.</summary>
    public double KilogramSquareMetersPerSecond => _si;

    /// <summary>The number of newton metre seconds (N·m·s).</summary>
    public double NewtonMeterSeconds => _si;

    /// <summary>The number of slug square feet a second (slug·ft²/s), the same as pound-force foot seconds.</summary>
    public double SlugSquareFeetPerSecond => _si / KilogramSquareMetersPerSlugSquareFoot;

    /// <summary>From a number of kilogram square metres a second (kg·m²/s), the same as newton metre seconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static AngularMomentum FromKilogramSquareMetersPerSecond(double value) => new(Finite.Require(value));

    /// <summary>From a number of newton metre seconds (N·m·s).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static AngularMomentum FromNewtonMeterSeconds(double value) => new(Finite.Require(value));

    /// <summary>From a number of slug square feet a second (slug·ft²/s), the same as pound-force foot seconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static AngularMomentum FromSlugSquareFeetPerSecond(double value) => new(Finite.Require(value) * KilogramSquareMetersPerSlugSquareFoot);

    /// <summary>The sum.</summary>
    public static AngularMomentum operator +(AngularMomentum left, AngularMomentum right) => new(left._si + right._si);

    /// <summary>The difference.</summary>
    public static AngularMomentum operator -(AngularMomentum left, AngularMomentum right) => new(left._si - right._si);

    /// <summary>The same momentum the other way.</summary>
    public static AngularMomentum operator -(AngularMomentum value) => new(-value._si);

    /// <summary>The momentum times a pure number.</summary>
    public static AngularMomentum operator *(AngularMomentum left, double right) => new(left._si * right);

    /// <summary>The momentum times a pure number.</summary>
    public static AngularMomentum operator *(double left, AngularMomentum right) => new(left * right._si);

    /// <summary>The momentum divided by a pure number.</summary>
    public static AngularMomentum operator /(AngularMomentum left, double right) => new(left._si / right);

    /// <summary>The ratio of two momenta, a pure number.</summary>
    public static double operator /(AngularMomentum left, AngularMomentum right) => left._si / right._si;

    /// <summary>Whether both are the same SI number.</summary>
    public static bool operator ==(AngularMomentum left, AngularMomentum right) => left._si == right._si;

    /// <summary>Whether they are different SI numbers.</summary>
    public static bool operator !=(AngularMomentum left, AngularMomentum right) => left._si != right._si;

    /// <summary>Whether the left is less.</summary>
    public static bool operator <(AngularMomentum left, AngularMomentum right) => left._si < right._si;

    /// <summary>Whether the left is greater.</summary>
    public static bool operator >(AngularMomentum left, AngularMomentum right) => left._si > right._si;

    /// <summary>Whether the left is less or equal.</summary>
    public static bool operator <=(AngularMomentum left, AngularMomentum right) => left._si <= right._si;

    /// <summary>Whether the left is greater or equal.</summary>
    public static bool operator >=(AngularMomentum left, AngularMomentum right) => left._si >= right._si;

    /// <summary>Whether the difference is at most <paramref name="tolerance"/> in size.</summary>
    /// <param name="other">The momentum to compare with.</param>
    /// <param name="tolerance">Largest difference, zero or positive.</param>
    public bool EqualsWithin(AngularMomentum other, AngularMomentum tolerance) => Math.Abs(_si - other._si) <= tolerance._si;

    /// <inheritdoc/>
    public bool Equals(AngularMomentum other) => _si.Equals(other._si);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is AngularMomentum other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => _si.GetHashCode();

    /// <inheritdoc/>
    public int CompareTo(AngularMomentum other) => _si.CompareTo(other._si);

    /// <summary>The SI number and unit in the invariant culture, such as <c>12.5 kg·m²/s</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The SI number in a numeric format, and the unit; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        _si.ToString(format, formatProvider ?? CultureInfo.InvariantCulture) + " kg·m²/s";
}
