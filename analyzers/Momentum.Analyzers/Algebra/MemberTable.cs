using System.Globalization;
using System.Reflection;

namespace Momentum.Analyzers.Algebra;

/// <summary>
/// The units of UnitsNet's quantities whose names are no products of unit words, as that library defines them: written from
/// its own assembly by the tests, which also hold that it is up to date.
/// </summary>
internal static class MemberTable
{
    private static readonly Lazy<Dictionary<string, Unit>> _units = new(Load);

    /// <summary>The unit of a member, singular or plural; null where there is none.</summary>
    internal static Unit? Read(string quantity, string member) => _units.Value.TryGetValue($"{quantity}.{member}", out Unit? unit) ? unit : null;

    // One unit a line: quantity, singular, plural, symbol, exponents (mass, length, time, temperature, current, amount,
    // light), size in SI units, or "own" for a scale of its own.
    private static Dictionary<string, Unit> Load()
    {
        Dictionary<string, Unit> units = new(StringComparer.Ordinal);
        using Stream table = typeof(MemberTable).GetTypeInfo().Assembly.GetManifestResourceStream("Momentum.Analyzers.Algebra.MemberTable.txt")!;
        using StreamReader reader = new(table);
        while (reader.ReadLine() is { } line)
        {
            string[] parts = line.Split('\t');
            int[] powers = parts[4].Split(' ').Select(p => int.Parse(p, CultureInfo.InvariantCulture)).ToArray();
            Dimension dimension = Dimension.Of(mass: powers[0], length: powers[1], time: powers[2], temperature: powers[3], current: powers[4], amount: powers[5], light: powers[6]);
            bool own = parts[5] == "own";
            Unit unit = new(
                parts[3],
                dimension,
                Scale.Rounded(own ? units.Count + 2 : double.Parse(parts[5], CultureInfo.InvariantCulture)),
                own ? Kind.OwnScale : parts[0] == "Energy" ? Kind.Energy : Kind.Unspecified);
            units[$"{parts[0]}.{parts[1]}"] = unit;
            units[$"{parts[0]}.{parts[2]}"] = unit;
        }

        return units;
    }
}
