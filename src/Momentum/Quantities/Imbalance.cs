using System.Globalization;
using System.Numerics;

namespace Momentum.Quantities;

/// <summary>Mass times its distance from an axis: how far a body is out of balance. ISO 21940 calls it unbalance.</summary>
/// <remarks>
/// <para>Any finite number of either sign. Eight bytes: the SI number (kg·m); no unit is carried at run time.</para>
/// <para>Equality is exact, of the SI number; compare computed values with <see cref="EqualsWithin"/>.
/// <c>default</c> is zero. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct Imbalance :
    IEquatable<Imbalance>,
    IComparable<Imbalance>,
    IFormattable,
    IAdditionOperators<Imbalance, Imbalance, Imbalance>,
    ISubtractionOperators<Imbalance, Imbalance, Imbalance>,
    IUnaryNegationOperators<Imbalance, Imbalance>,
    IMultiplyOperators<Imbalance, double, Imbalance>,
    IDivisionOperators<Imbalance, double, Imbalance>,
    IComparisonOperators<Imbalance, Imbalance, bool>
{
    // Exact: a sixteenth of the pound, 0.45359237 kg, times the inch, 0.0254 m. NIST SP 811, appendix B.
    private const double KilogramMetersPerOunceInch = 0.45359237 / 16 * 0.0254;

    private readonly double _si;

    private Imbalance(double si) => _si = si;

    /// <summary>In balance: 0 kg·m.</summary>
    public static Imbalance Zero => default;

    /// <summary>The number of kilogram metres (kg·m).</summary>
    public double KilogramMeters => _si;

    /// <summary>The number of gram millimetres (g·mm).</summary>
    public double GramMillimeters => _si * 1e6;

    /// <summary>The number of ounce inches (oz·in), the ounce as a mass.</summary>
    public double OunceInches => _si / KilogramMetersPerOunceInch;

    /// <summary>From a number of kilogram metres (kg·m).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static Imbalance FromKilogramMeters(double value) => new(Finite.Require(value));

    /// <summary>From a number of gram millimetres (g·mm).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static Imbalance FromGramMillimeters(double value) => new(Finite.Require(value) / 1e6);

    /// <summary>From a number of ounce inches (oz·in), the ounce as a mass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static Imbalance FromOunceInches(double value) => new(Finite.Require(value) * KilogramMetersPerOunceInch);

    /// <summary>The sum.</summary>
    public static Imbalance operator +(Imbalance left, Imbalance right) => new(left._si + right._si);

    /// <summary>The difference.</summary>
    public static Imbalance operator -(Imbalance left, Imbalance right) => new(left._si - right._si);

    /// <summary>The same imbalance the other way.</summary>
    public static Imbalance operator -(Imbalance value) => new(-value._si);

    /// <summary>The imbalance times a pure number.</summary>
    public static Imbalance operator *(Imbalance left, double right) => new(left._si * right);

    /// <summary>The imbalance times a pure number.</summary>
    public static Imbalance operator *(double left, Imbalance right) => new(left * right._si);

    /// <summary>The imbalance divided by a pure number.</summary>
    public static Imbalance operator /(Imbalance left, double right) => new(left._si / right);

    /// <summary>The ratio of two imbalances, a pure number.</summary>
    public static double operator /(Imbalance left, Imbalance right) => left._si / right._si;

    /// <summary>Whether both are the same SI number.</summary>
    public static bool operator ==(Imbalance left, Imbalance right) => left._si == right._si;

    /// <summary>Whether they are different SI numbers.</summary>
    public static bool operator !=(Imbalance left, Imbalance right) => left._si != right._si;

    /// <summary>Whether the left is less.</summary>
    public static bool operator <(Imbalance left, Imbalance right) => left._si < right._si;

    /// <summary>Whether the left is greater.</summary>
    public static bool operator >(Imbalance left, Imbalance right) => left._si > right._si;

    /// <summary>Whether the left is less or equal.</summary>
    public static bool operator <=(Imbalance left, Imbalance right) => left._si <= right._si;

    /// <summary>Whether the left is greater or equal.</summary>
    public static bool operator >=(Imbalance left, Imbalance right) => left._si >= right._si;

    /// <summary>Whether the difference is at most <paramref name="tolerance"/> in size.</summary>
    /// <param name="other">The imbalance to compare with.</param>
    /// <param name="tolerance">Largest difference, zero or positive.</param>
    public bool EqualsWithin(Imbalance other, Imbalance tolerance) => Math.Abs(_si - other._si) <= tolerance._si;

    /// <inheritdoc/>
    public bool Equals(Imbalance other) => _si.Equals(other._si);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Imbalance other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => _si.GetHashCode();

    /// <inheritdoc/>
    public int CompareTo(Imbalance other) => _si.CompareTo(other._si);

    /// <summary>The SI number and unit in the invariant culture, such as <c>12.5 kg·m</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The SI number in a numeric format, and the unit; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        _si.ToString(format, formatProvider ?? CultureInfo.InvariantCulture) + " kg·m";
}
