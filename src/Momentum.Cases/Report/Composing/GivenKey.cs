using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Syntax;

namespace Momentum.Cases.Report.Composing;

/// <summary>One value of the case file, under the full path of its key, as it was written.</summary>
/// <param name="Path">Such as <c>despin.cord.line_density</c>.</param>
/// <param name="Key">What is known of the key.</param>
/// <param name="Text">The value as written.</param>
/// <param name="NotUsedYet">Whether it was read without any effect on the answer.</param>
internal sealed record GivenKey(string Path, KeyDescription Key, string Text, bool NotUsedYet)
{
    /// <summary>Fewer digits than this would hide a conversion to SI.</summary>
    private const int FewestDigits = 4;

    /// <summary>Every value that the file gives, in the order of the file; the title and the format are not inputs.</summary>
    public static IReadOnlyList<GivenKey> AllOf(CaseReading reading) =>
        [.. Walk(typeof(Case), reading.Case!.Given, "", [.. reading.NotUsedYet], notUsedYet: false)
            .Where(k => k.Path is not "title" and not "format")];

    /// <summary>The tolerance as written, set apart from the value; empty if there is none.</summary>
    public static string ToleranceOf(string text)
    {
        string tolerance = ToleranceText.Split(text.Replace("±", "+/-", StringComparison.Ordinal)).Tolerances.Trim();
        bool says = tolerance.EndsWith("max", StringComparison.Ordinal) || tolerance.EndsWith("sigma", StringComparison.Ordinal) || tolerance.EndsWith("each", StringComparison.Ordinal);
        return tolerance.Length == 0 ? ""
            : tolerance.Replace("+/-", "±", StringComparison.Ordinal).Replace(" max", ", limits", StringComparison.Ordinal) + (says ? "" : ", one sigma");
    }

    /// <summary>The row of the input table.</summary>
    public InputRow ToInput() => Key.Form == KeyForm.Quantity
        ? new InputRow(Path, Name, Key.IsScatter ? Text : ToleranceText.Split(Text.Replace("±", "+/-", StringComparison.Ordinal)).Value.Trim(), Key.IsScatter ? "" : ToleranceOf(Text), Si())
        : new InputRow(Path, Name, Text);

    /// <summary>The key's explanation up to its first stop.</summary>
    private string Name
    {
        get
        {
            int stop = Key.Doc.AsSpan().IndexOfAny(".:;");
            return stop < 0 ? Key.Doc : Key.Doc[..stop];
        }
    }

    private static IEnumerable<GivenKey> Walk(
        Type section, IReadOnlyDictionary<string, TomlEntry> entries, string path, HashSet<string> unused, bool notUsedYet)
    {
        foreach ((string name, TomlEntry entry) in entries)
        {
            KeyDescription key = SectionDescription.Of(section).Keys.First(k => k.Name == name);
            string full = KeyDescription.Join(path, name);
            bool idle = notUsedYet || unused.Contains(full);
            IEnumerable<GivenKey> found = entry.Value switch
            {
                TomlTable table => Walk(key.ValueType, table.Entries, full, unused, idle),
                TomlList list when key.Form == KeyForm.Sections => list.Items.Index().SelectMany(i =>
                    Walk(key.ValueType, ((TomlTable)i.Item).Entries, $"{full}[{i.Index + 1}]", unused, idle)),
                TomlList list => [new GivenKey(full, key, string.Join(", ", list.Items.Select(Written)), idle)],
                _ => [new GivenKey(full, key, Written(entry.Value), idle)],
            };
            foreach (GivenKey given in found)
            {
                yield return given;
            }
        }
    }

    private static string Written(TomlNode node) => node switch
    {
        TomlText text => Printable.Line(text.Value),
        TomlScalar scalar => scalar.Text,
        _ => node.Quoted,
    };

    private Figure? Si()
    {
        QuantityKind kind = Key.Quantity!;
        return (Key.IsScatter ? QuantityText.ParseScatter(Text, kind, out _) : QuantityText.Parse(Text, kind, out _)) is { } parsed
            ? new Figure(parsed.Si, kind.SiUnit == "1" ? "" : kind.SiUnit, Math.Max(FewestDigits, DigitsOf(Text)))
            : null;
    }

    /// <summary>How many significant digits the number was written with, at most nine.</summary>
    private static int DigitsOf(string text) =>
        Math.Min(9, text.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or '-' or '+').SkipWhile(c => c is '0' or '.' or '-' or '+').Count(char.IsAsciiDigit));
}
