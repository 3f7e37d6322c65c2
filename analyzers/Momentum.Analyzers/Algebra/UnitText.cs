using System.Collections.Concurrent;
using System.Globalization;

namespace Momentum.Analyzers.Algebra;

/// <summary>Reads a unit as people write it: <c>rad/s</c>, <c>kg*m^2</c>, <c>kg·m²</c>, <c>lbf in</c>, <c>1/min</c>, <c>N/(m s)</c>.</summary>
internal static class UnitText
{
    private static readonly ConcurrentDictionary<string, Unit?> _known = new(StringComparer.Ordinal);

    /// <summary>The unit, or null where the text is not one; a lone <c>1</c> or empty text is a pure number.</summary>
    internal static Unit? Read(string text) => _known.GetOrAdd(text, Find);

    private static Unit? Find(string text)
    {
        string trimmed = text.Trim();
        switch (trimmed)
        {
            case "":
                return Unit.One;
            case "°C" or "degC":
                return new Unit("°C", Dimension.Of(temperature: 1), Scale.One, Kind.CelsiusPoint);
            case "°F" or "degF":
                return new Unit("°F", Dimension.Of(temperature: 1), Scale.Integer(5).Over(Scale.Integer(9)), Kind.FahrenheitPoint);
            default:
                Reader reader = new(trimmed);
                Unit? unit = reader.Expression();
                return unit is null || !reader.AtEnd ? null : Stated(unit).Named(trimmed.Replace("**", "^").Replace('*', '·').Replace("^2", "²").Replace("^3", "³"));
        }
    }

    // Stated moments of inertia and angular momenta carry the angle that a product with an angular speed uses up:
    // (kg·m²/rad²)·(rad/s) = kg·m²/(rad·s), and hertz in place of rad/s shows.
    private static Unit Stated(Unit unit)
    {
        Dimension dimension = unit.Dimension;
        return dimension.Equals(Dimension.Of(mass: 1, length: 2)) ? unit.As(dimension.WithAngle(-2), unit.Kind)
            : dimension.Equals(Dimension.Of(mass: 1, length: 2, time: -1)) ? unit.As(dimension.WithAngle(-1), unit.Kind)
            : unit;
    }

    private sealed class Reader(string text)
    {
        private int _at;

        internal bool AtEnd => _at >= text.Length;

        internal Unit? Expression()
        {
            Unit? unit = Factor();
            while (unit is not null)
            {
                bool spaced = Skip(' ');
                if (AtEnd || text[_at] == ')')
                {
                    return unit;
                }

                if (Skip('/'))
                {
                    _ = Skip(' ');
                    unit = Factor() is { } below ? unit.Over(below) : null;
                }
                else if (Skip('*') || Skip('·') || Skip('⋅') || Skip('.') || spaced)
                {
                    _ = Skip(' ');
                    unit = Factor() is { } factor ? unit.Times(factor) : null;
                }
                else
                {
                    return null;
                }
            }

            return null;
        }

        private Unit? Factor()
        {
            Unit? unit;
            if (Skip('('))
            {
                unit = Expression();
                if (!Skip(')'))
                {
                    return null;
                }
            }
            else
            {
                int start = _at;
                while (!AtEnd && (char.IsLetter(text[_at]) || text[_at] is '°' or '%' or '_' or 'µ' || (text[_at] == '1' && _at == start)))
                {
                    _at++;
                }

                // g0 is the one symbol that ends in a digit.
                if (!AtEnd && text[_at] == '0' && text.Substring(start, _at - start) == "g")
                {
                    _at++;
                }

                unit = UnitTable.BySymbol(text.Substring(start, _at - start));
            }

            return Exponent() is { } exponent ? unit?.Power(exponent * Dimension.Whole) : null;
        }

        // 1 where none is written; null where one is begun and cannot be read.
        private int? Exponent()
        {
            if (AtEnd)
            {
                return 1;
            }

            if (Skip('²'))
            {
                return 2;
            }

            if (Skip('³'))
            {
                return 3;
            }

            if (Skip('⁻'))
            {
                return Skip('¹') ? -1 : Skip('²') ? -2 : Skip('³') ? -3 : null;
            }

            int before = _at;
            bool marked = Skip('^') || (_at + 1 < text.Length && text[_at] == '*' && text[_at + 1] == '*' && Skip('*') && Skip('*'));
            int start = _at;
            _ = Skip('-');
            while (!AtEnd && char.IsDigit(text[_at]))
            {
                _at++;
            }

            if (int.TryParse(text.Substring(start, _at - start), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int exponent) && exponent is >= -9 and <= 9)
            {
                return exponent;
            }

            _at = before;
            return marked ? null : 1;
        }

        private bool Skip(char expected)
        {
            if (AtEnd || text[_at] != expected)
            {
                return false;
            }

            _at++;
            return true;
        }
    }
}
