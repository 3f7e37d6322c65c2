using System.Text.RegularExpressions;
using Momentum.Cases;
using Momentum.Cases.Quantities;

namespace Momentum.Fuzz.Readers;

/// <summary>The words of a case file: the keys and section names of the schema, and the units.</summary>
internal static partial class CaseWords
{
    internal static IEnumerable<string> All => Keys().Concat(Units).Concat(["+/-", " max", "\"", "[[part]]", " = ", "\n", "true", "{ ", "}", "#"]).Distinct();

    internal static IEnumerable<string> Units => QuantityKinds.ByType.Values.SelectMany(kind => kind.Units.Keys).Where(unit => unit.Length is > 0 and < 12).Distinct();

    private static IEnumerable<string> Keys() => Names().Matches(CaseSchema.Write()).Select(match => match.Groups[1].Value);

    [GeneratedRegex("\"([a-z][a-z_0-9]+)\"\\s*:")]
    private static partial Regex Names();
}
