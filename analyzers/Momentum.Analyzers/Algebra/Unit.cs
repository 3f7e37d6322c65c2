using System.Collections.Concurrent;
using System.Text;

namespace Momentum.Analyzers.Algebra;

/// <summary>A unit: dimension, exact scale to SI, and kind. Immutable; equal when all three are.</summary>
internal sealed class Unit : IEquatable<Unit>
{
    private static readonly ConcurrentDictionary<UnitPair, Unit?> _made = new();

    // A compound unit remembers what it was made of, and writes its name only when somebody reads it.
    private readonly Unit? _left;
    private readonly Unit? _right;
    private readonly int _rightSixths;
    private string? _symbol;

    internal Unit(string symbol, Dimension dimension, Scale scale, Kind kind = Kind.Unspecified)
    {
        _symbol = symbol;
        Dimension = dimension;
        Scale = scale;
        Kind = kind;
    }

    private Unit(Unit? left, Unit right, int rightSixths, Dimension dimension, Scale scale, Kind kind)
    {
        _left = left;
        _right = right;
        _rightSixths = rightSixths;
        Dimension = dimension;
        Scale = scale;
        Kind = kind;
    }

    /// <summary>The unit of a pure number.</summary>
    internal static Unit One { get; } = new("1", default, Scale.One);

    internal Dimension Dimension { get; }

    internal Scale Scale { get; }

    internal Kind Kind { get; }

    /// <summary>How a person would write it: <c>kg·m²</c>, <c>lbf·in</c>, <c>rpm</c>.</summary>
    internal string Symbol => _symbol ??= Compose();

    /// <summary>Whether it was made as a product or quotient of others.</summary>
    internal bool IsProduct => _left is not null;

    /// <summary>Whether it is a ratio of two units of one dimension, such as rad/deg: the name of a conversion factor.</summary>
    internal bool IsRatioOfLike => IsProduct && Dimension.IsNone && !Scale.Equals(Scale.One);

    internal bool IsPureNumber => Dimension.IsNone && Scale.Equals(Scale.One);

    /// <summary>Whether it is a point on a scale that does not start at nothing, which no product can hold.</summary>
    internal bool IsPoint => Kind is Kind.CelsiusPoint or Kind.FahrenheitPoint or Kind.OwnScale;

    /// <summary>Whether it is a point on a temperature scale, absolute or not.</summary>
    internal bool IsTemperature => Kind is Kind.CelsiusPoint or Kind.FahrenheitPoint or Kind.AbsoluteTemperature;

    internal Unit Times(Unit other) => Combine(other, Dimension.Whole);

    internal Unit Over(Unit other) => Combine(other, -Dimension.Whole);

    /// <summary>To a power in sixths; null where that is not a unit.</summary>
    internal Unit? Power(int sixths) => sixths switch
    {
        Dimension.Whole => this,
        0 => One,
        _ => new UnitPair(this, null, sixths).Recall(_made, static (unit, _, power) => unit.Dimension.Power(power) is { } dimension && unit.Scale.Power(power) is { } scale
            ? new Unit(null, unit, power, dimension, scale, Kind.Unspecified)
            : null),
    };

    /// <summary>The same size and name with another dimension of angle and another kind.</summary>
    internal Unit As(Dimension dimension, Kind kind) => new(Symbol, dimension, Scale, kind);

    internal Unit Named(string symbol) => new(symbol, Dimension, Scale, Kind);

    public bool Equals(Unit? other) =>
        other is not null && (ReferenceEquals(this, other) || (Dimension.Equals(other.Dimension) && Kind == other.Kind && Scale.Equals(other.Scale)));

    public override bool Equals(object? obj) => Equals(obj as Unit);

    public override int GetHashCode() => (((Dimension.GetHashCode() * 31) + Scale.GetHashCode()) * 31) + (int)Kind;

    public override string ToString() => Symbol;

    // A pure number leaves a kind alone (half a torque is a torque); a product with anything else is a new thing.
    private Unit Combine(Unit other, int sixths)
    {
        if (other.IsPureNumber)
        {
            return this;
        }

        if (IsPureNumber && sixths == Dimension.Whole)
        {
            return other;
        }

        return new UnitPair(this, other, sixths).Recall(_made, static (left, right, power) => new Unit(
            left.IsPureNumber ? null : left,
            right!,
            power,
            left.Dimension.Times(power > 0 ? right!.Dimension : right!.Dimension.Power(-Dimension.Whole)!.Value),
            power > 0 ? left.Scale.Times(right.Scale) : left.Scale.Over(right.Scale),
            Kind.Unspecified))!;
    }

    private string Compose()
    {
        List<KeyValuePair<string, int>> factors = [];
        Collect(factors, Dimension.Whole);
        StringBuilder text = new();
        foreach (KeyValuePair<string, int> factor in factors.Where(f => f.Value > 0))
        {
            _ = text.Append(text.Length == 0 ? string.Empty : "·").Append(Raised(factor.Key, factor.Value));
        }

        if (text.Length == 0)
        {
            _ = text.Append('1');
        }

        List<KeyValuePair<string, int>> below = factors.Where(f => f.Value < 0).ToList();
        if (below.Count > 0)
        {
            string joined = string.Join("·", below.Select(f => Raised(f.Key, -f.Value)));
            _ = text.Append('/').Append(below.Count > 1 ? $"({joined})" : joined);
        }

        return text.ToString();
    }

    private void Collect(List<KeyValuePair<string, int>> factors, int sixths)
    {
        if (_right is null)
        {
            if (Equals(One))
            {
                return;
            }

            int at = factors.FindIndex(f => f.Key == Symbol);
            if (at < 0)
            {
                factors.Add(new(Symbol, sixths));
            }
            else
            {
                factors[at] = new(Symbol, factors[at].Value + sixths);
            }

            return;
        }

        _left?.Collect(factors, sixths);
        _right.Collect(factors, sixths * _rightSixths / Dimension.Whole);
    }

    private static string Raised(string symbol, int sixths)
    {
        string basis = sixths != Dimension.Whole && symbol.IndexOfAny(['·', '/', '²', '³']) >= 0 ? $"({symbol})" : symbol;
        return sixths switch
        {
            Dimension.Whole => basis,
            2 * Dimension.Whole => basis + "²",
            3 * Dimension.Whole => basis + "³",
            _ when sixths % Dimension.Whole == 0 => $"{basis}^{sixths / Dimension.Whole}",
            Dimension.Whole / 2 => $"√{basis}",
            _ => $"{basis}^({sixths}/{Dimension.Whole})",
        };
    }
}
