using System.Globalization;
using UnitsNet;

namespace Momentum.Cases.Quantities;

/// <summary>
/// One kind of quantity that a case file can state: its name in messages, its SI unit, the range in which the computation can
/// be trusted, and the spellings of its units (UnitsNet's, exact in letter case, after <see cref="TradeUnits"/>).
/// </summary>
internal abstract class QuantityKind(string name, string siUnit, string example, double smallest, double largest, Type unitType)
{
    private Dictionary<string, Unit>? _units;

    /// <summary>The name as messages use it: "length", "moment of inertia".</summary>
    public string Name => name;

    /// <summary>The name with its article.</summary>
    public string OneOf => (name[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an " : "a ") + name;

    public string SiUnit => siUnit;

    /// <summary>A well-formed value.</summary>
    public string Example => example;

    /// <summary>Smallest magnitude other than zero, SI: below it squares and quotients lose their meaning.</summary>
    public double Smallest => smallest;

    /// <summary>Largest magnitude, SI.</summary>
    public double Largest => largest;

    /// <summary>Every accepted spelling, normalised as <see cref="Normalise"/> does.</summary>
    public IReadOnlyDictionary<string, Unit> Units => _units ??= CollectUnits();

    /// <summary>Finds a unit by its normalised spelling; only a rare one costs the making of the whole table.</summary>
    public bool TryFind(string normalised, out Unit unit)
    {
        foreach ((string quantity, string spelling, double factor) in TradeUnits.Exact)
        {
            if (quantity == name && spelling == normalised)
            {
                unit = new Unit(null, factor);
                return true;
            }
        }

        return Units.TryGetValue(normalised, out unit);
    }

    /// <summary>A stated value with its tolerance, boxed as the <see cref="Stated{TQuantity}"/> of this kind.</summary>
    public abstract object State(QuantityText parsed);

    /// <summary>A value without tolerance, boxed likewise: one that was drawn.</summary>
    public abstract object StateExactly(double si);

    /// <summary>The SI value of a boxed <see cref="Stated{TQuantity}"/> of this kind.</summary>
    public abstract double SiOf(object stated);

    /// <summary>A requirement, boxed as the <see cref="Limit{TQuantity}"/> of this kind.</summary>
    public abstract object Limit(QuantityText parsed, bool isUpper, bool includesBound, string text);

    /// <summary>A band that a requirement allows, both ends included, boxed likewise.</summary>
    public abstract object Band(double least, double most, string text);

    /// <summary>SI value of a number in a unit of this kind.</summary>
    public abstract double ToSi(double number, Unit unit);

    /// <summary>A unit in one spelling: <c>kg*m^2</c>, <c>kg m2</c>, <c>kg-m^2</c> and <c>kg·m²</c> are the same.</summary>
    public static string Normalise(string unit)
    {
        Span<char> buffer = unit.Length <= 64 ? stackalloc char[unit.Length] : new char[unit.Length];
        int length = 0;
        bool pendingProduct = false;
        for (int i = 0; i < unit.Length; i++)
        {
            char c = unit[i];
            switch (c)
            {
                case ' ' or '\t' or '*' or '·' or '⋅' or '-' when length > 0:
                    pendingProduct = true;
                    continue;
                case '^':
                    continue;
                case '2' or '3' when length > 0 && (char.IsLetter(buffer[length - 1]) || (i > 0 && unit[i - 1] == '^')):
                    c = c == '2' ? '²' : '³';
                    break;
                case '/':
                    pendingProduct = false;
                    break;
                case 'μ':
                    c = 'µ';
                    break;
            }

            if (pendingProduct && buffer[length - 1] != '/')
            {
                buffer[length++] = '·';
            }

            pendingProduct = false;
            buffer[length++] = c;
        }

        return new string(buffer[..length]);
    }

    private Dictionary<string, Unit> CollectUnits()
    {
        var units = new Dictionary<string, Unit>(StringComparer.Ordinal);
        foreach ((string quantity, string spelling, double factor) in TradeUnits.Exact)
        {
            if (quantity == name)
            {
                units.TryAdd(spelling, new Unit(null, factor));
            }
        }

        UnitAbbreviationsCache known = UnitsNetSetup.Default.UnitAbbreviations;
        foreach (int value in Enum.GetValuesAsUnderlyingType(unitType))
        {
            var unit = (Enum)Enum.ToObject(unitType, value);
            foreach (string spelling in known.GetUnitAbbreviations(unitType, value, CultureInfo.InvariantCulture))
            {
                if (!TradeUnits.Refused.Contains((name, spelling)))
                {
                    units.TryAdd(Normalise(spelling), new Unit(unit, double.NaN));
                }
            }
        }

        return units;
    }
}
