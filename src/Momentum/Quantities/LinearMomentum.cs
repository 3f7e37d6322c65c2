using System.Globalization;
using System.Numerics;

namespace Momentum.Quantities;

/// <summary>Linear momentum, or one component of it.</summary>
/// <remarks>
/// <para>Any finite number of either sign. Eight bytes: the SI number (kg·m/s); no unit is carried at run time.</para>
/// <para>Equality is exact, of the SI number; compare computed values with <see cref="EqualsWithin"/>.
/// <c>default</c> is zero. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct LinearMomentum :
    IEquatable<LinearMomentum>,
    IComparable<LinearMomentum>,
    IFormattable,
    IAdditionOperators<LinearMomentum, LinearMomentum, LinearMomentum>,
    ISubtractionOperators<LinearMomentum, LinearMomentum, LinearMomentum>,
    IUnaryNegationOperators<LinearMomentum, LinearMomentum>,
    IMultiplyOperators<LinearMomentum, double, LinearMomentum>,
    IDivisionOperators<LinearMomentum, double, LinearMomentum>,
    IComparisonOperators<LinearMomentum, LinearMomentum, bool>
{
    // Exact: lb 0.45359237 kg times g_n 9.80665 m/s². NIST SP 811, appendix B.
    private const double NewtonsPerPoundForce = 4.4482216152605;

    private readonly double _si;

    private LinearMomentum(double si) => _si = si;

    /// <summary>No momentum: 0 kg·m/s.</summary>
    public static LinearMomentum Zero => default;

    /// <summary>The number of kilogram metres a second (kg·m/s), the same as newton seconds.</summary>
    public double KilogramMetersPerSecond => _si;

    /// <summary>The number of newton seconds (N·s).</summary>
    public double NewtonSeconds => _si;

    /// <summary>The number of pound-force seconds (lbf·s).</summary>
    public double PoundForceSeconds => _si / NewtonsPerPoundForce;

    /// <summary>From a number of kilogram metres a second (kg·m/s), the same as newton seconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static LinearMomentum FromKilogramMetersPerSecond(double value) => new(Finite.Require(value));

    /// <summary>From a number of newton seconds (N·s).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static LinearMomentum FromNewtonSeconds(double value) => new(Finite.Require(value));

    /// <summary>From a number of pound-force seconds (lbf·s).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is NaN or infinite.</exception>
    public static LinearMomentum FromPoundForceSeconds(double value) => new(Finite.Require(value) * NewtonsPerPoundForce);

    /// <summary>The sum.</summary>
    public static LinearMomentum operator +(LinearMomentum left, LinearMomentum right) => new(left._si + right._si);

    /// <summary>The difference.</summary>
    public static LinearMomentum operator -(LinearMomentum left, LinearMomentum right) => new(left._si - right._si);

    /// <summary>The same momentum the other way.</summary>
    public static LinearMomentum operator -(LinearMomentum value) => new(-value._si);

    /// <summary>The momentum times a pure number.</summary>
    public static LinearMomentum operator *(LinearMomentum left, double right) => new(left._si * right);

    /// <summary>The momentum times a pure number.</summary>
    public static LinearMomentum operator *(double left, LinearMomentum right) => new(left * right._si);

    /// <summary>The momentum divided by a pure number.</summary>
    public static LinearMomentum operator /(LinearMomentum left, double right) => new(left._si / right);

    /// <summary>The ratio of two momenta, a pure number.</summary>
    public static double operator /(LinearMomentum left, LinearMomentum right) => left._si / right._si;

    /// <summary>Whether both are the same SI number.</summary>
    public static bool operator ==(LinearMomentum left, LinearMomentum right) => left._si == right._si;

    /// <summary>Whether they are different SI numbers.</summary>
    public static bool operator !=(LinearMomentum left, LinearMomentum right) => left._si != right._si;

    /// <summary>Whether the left is less.</summary>
    public static bool operator <(LinearMomentum left, LinearMomentum right) => left._si < right._si;

    /// <summary>Whether the left is greater.</summary>
    public static bool operator >(LinearMomentum left, LinearMomentum right) => left._si > right._si;

    /// <summary>Whether the left is less or equal.</summary>
    public static bool operator <=(LinearMomentum left, LinearMomentum right) => left._si <= right._si;

    /// <summary>Whether the left is greater or equal.</summary>
    public static bool operator >=(LinearMomentum left, LinearMomentum right) => left._si >= right._si;

    /// <summary>Whether the difference is at most <paramref name="tolerance"/> in size.</summary>
    /// <param name="other">The momentum to compare with.</param>
    /// <param name="tolerance">Largest difference, zero or positive.</param>
    public bool EqualsWithin(LinearMomentum other, LinearMomentum tolerance) => Math.Abs(_si - other._si) <= tolerance._si;

    /// <inheritdoc/>
    public bool Equals(LinearMomentum other) => _si.Equals(other._si);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is LinearMomentum other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => _si.GetHashCode();

    /// <inheritdoc/>
    public int CompareTo(LinearMomentum other) => _si.CompareTo(other._si);

    /// <summary>The SI number and unit in the invariant culture, such as <c>12.5 kg·m/s</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The SI number in a numeric format, and the unit; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        _si.ToString(format, formatProvider ?? CultureInfo.InvariantCulture) + " kg·m/s";
}
