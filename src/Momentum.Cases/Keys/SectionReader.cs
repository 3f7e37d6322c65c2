using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using Momentum.Cases.Quantities;
using Momentum.Cases.Syntax;
using Momentum.Dispersion;

namespace Momentum.Cases.Keys;

/// <summary>Fills a section's record from a table, collecting every error on the way.</summary>
internal sealed class SectionReader(Findings findings, List<string> notUsedYet, ICaseFiles? files)
{
    private static readonly ILookup<string, string> _sectionsOf = SectionDescription.Of(typeof(Case)).Everywhere().ToLookup(k => k.Key, k => k.Section);

    /// <summary>Reads a section; the result is whole only if no error was added.</summary>
    public Section Read(Type type, TomlTable table, string path)
    {
        var description = SectionDescription.Of(type);
        Section section = description.Blank();
        section.Given = table.Entries;
        section.Path = path;
        section.Place = table.Place;
        int errorsBefore = findings.ErrorCount;
        HashSet<string?> meant = [];
        foreach ((string name, TomlEntry entry) in table.Entries)
        {
            if (description.Keys.FirstOrDefault(k => k.Name == name) is not { } key)
            {
                meant.Add(Unknown(description, path, name, entry));
                continue;
            }

            if (key.NotUsedYet)
            {
                notUsedYet.Add(KeyDescription.Join(path, name));
            }

            if (Value(key, entry.Value, KeyDescription.Join(path, name)) is { } value)
            {
                key.Set(section, value);
            }
        }

        foreach (KeyDescription key in description.Keys)
        {
            // A key that was only misspelt has been told of already.
            if (key.Required && !table.Entries.ContainsKey(key.Name) && !meant.Contains(key.Name))
            {
                string remedy = key.Form == KeyForm.Section && key.Example.Length == 0
                    ? $"Add a section [{KeyDescription.Join(path, key.Name)}]; `momentum new` writes a complete case to start from."
                    : path.Length == 0 ? $"Add at the top of the file {key.Name} = {key.Example}." : $"Add to [{path}] for example {key.Name} = {key.Example}.";
                findings.Add(new Problem(Severity.Error, findings.File, table.Place, KeyDescription.Join(path, key.Name), null, "it is missing", key.Allowed, remedy));
            }
        }

        if (findings.ErrorCount == errorsBefore)
        {
            section.Judge(findings);
        }

        return section;
    }

    private object? Value(KeyDescription key, TomlNode node, string path)
    {
        switch (key.Form)
        {
            case KeyForm.Text when node is TomlText text:
                if (string.IsNullOrWhiteSpace(text.Value))
                {
                    Wrong(key, node, path, "it is empty");
                    return null;
                }

                return text.Value;

            case KeyForm.Truth when node is TomlScalar { Kind: TomlScalarKind.Truth, Text: var truth }:
                return truth == "true";

            case KeyForm.Count when node is TomlScalar { Kind: TomlScalarKind.Whole, Text: var digits }:
                return Count(key, node, path, digits);

            case KeyForm.Choice when node is TomlText word:
                for (int i = 0; i < key.Choices.Count; i++)
                {
                    if (key.Choices[i] == word.Value)
                    {
                        return Enum.ToObject(key.ValueType, i);
                    }
                }

                string? near = Nearest.To(word.Value, key.Choices);
                Wrong(key, node, path, "it is none of the words allowed", near is null ? key.Remedy(path) : $"Did you mean \"{near}\"?");
                return null;

            case KeyForm.Quantity when node is TomlText text:
                return QuantityOf(key, text, path) is { } stated ? key.Quantity!.State(stated) : null;

            case KeyForm.Quantity when node is TomlScalar { Kind: TomlScalarKind.Whole or TomlScalarKind.Decimal, Text: var ratio } && key.Quantity!.SiUnit == "1":
                return QuantityOf(key, new TomlText(ratio, node.Place), path) is { } bare ? key.Quantity!.State(bare) : null;

            case KeyForm.Quantity when node is TomlTable samples && samples.Entries.ContainsKey("samples"):
                return Samples(key, samples, path) is { } measured ? key.Quantity!.State(measured) : null;

            case KeyForm.Texts when node is TomlList texts && texts.Items.All(item => item is TomlText):
                return texts.Items.Select(item => ((TomlText)item).Value).ToArray();

            case KeyForm.Limit when node is TomlText text:
                return LimitOf(key, text, path);

            case KeyForm.Triple when node is TomlList list && list.Items.Count == key.Length:
                return Triple(key, list, path);

            case KeyForm.Section when node is TomlTable table:
                return Read(key.ValueType, table, path);

            case KeyForm.Section when node is TomlText text && SectionDescription.Of(key.ValueType).Shorthand is { } shorthand:
                var standIn = new TomlTable(text.Place);
                standIn.TryAdd(shorthand.Name, new TomlEntry(text.Place, text));
                return Read(key.ValueType, standIn, path);

            case KeyForm.Sections when node is TomlList list && list.Items.All(item => item is TomlTable):
                Array sections = ListOf(key.ValueType, list.Items.Count);
                for (int i = 0; i < sections.Length; i++)
                {
                    sections.SetValue(Read(key.ValueType, (TomlTable)list.Items[i], $"{path}[{i}]"), i);
                }

                return sections;

            case KeyForm.Quantity or KeyForm.Limit when node is TomlScalar { Kind: TomlScalarKind.Whole or TomlScalarKind.Decimal }:
                Wrong(key, node, path, $"a bare number has no unit: {key.Quantity!.OneOf} is wanted");
                return null;

            default:
                Wrong(key, node, path, $"{node.What} cannot stand here");
                return null;
        }
    }

    private int? Count(KeyDescription key, TomlNode node, string path, string digits)
    {
        if (!int.TryParse(digits, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int count))
        {
            Wrong(key, node, path, "it is not a whole number of usual size");
            return null;
        }

        if (count < Bound(key.AtLeast, int.MinValue) || count > Bound(key.AtMost, int.MaxValue))
        {
            Wrong(key, node, path, "it is out of range");
            return null;
        }

        return count;

        static int Bound(string? text, int otherwise) => text is null ? otherwise : int.Parse(text, CultureInfo.InvariantCulture);
    }

    private QuantityText? QuantityOf(KeyDescription key, TomlText text, string path)
    {
        Trouble? trouble;
        if ((key.IsScatter ? QuantityText.ParseScatter(text.Value, key.Quantity!, out trouble) : QuantityText.Parse(text.Value, key.Quantity!, out trouble)) is not { } parsed)
        {
            Wrong(key, text, path, trouble!.Message, trouble.Remedy);
            return null;
        }

        return Ranged(key, text, path, parsed);
    }

    /// <summary>The value if it is within its key's range, its tolerance too.</summary>
    private QuantityText? Ranged(KeyDescription key, TomlNode text, string path, QuantityText parsed)
    {
        if (parsed.Si <= Bound(key, key.MoreThan))
        {
            Wrong(key, text, path, $"it is not more than {key.MoreThan}");
            return null;
        }

        if (parsed.Si < Bound(key, key.AtLeast))
        {
            Wrong(key, text, path, $"it is less than {key.AtLeast}");
            return null;
        }

        if (parsed.Si > Bound(key, key.AtMost))
        {
            Wrong(key, text, path, $"it is more than {key.AtMost}");
            return null;
        }

        return Tolerated(key, text, path, parsed);
    }

    /// <summary>The value with a tolerance that can act and keeps it within its range; null with the error told if it cannot.</summary>
    private QuantityText? Tolerated(KeyDescription key, TomlNode text, string path, QuantityText parsed)
    {
        if (parsed.Tolerance.IsNone)
        {
            return parsed;
        }

        if (key.NoTolerance is { } why)
        {
            Wrong(key, text, path, $"it has no tolerance: {why}", "Remove the tolerance.");
            return null;
        }

        if (parsed.Tolerance.Each.Shape != ScatterShape.None && !key.OfEachCord)
        {
            Wrong(key, text, path, "each belongs to what every weight or cord has of its own, and there is only one of this", "Remove the word each.");
            return null;
        }

        if (key.IsScatter)
        {
            return parsed;
        }

        if (parsed.Tolerance.Within(key.Least - parsed.Si, key.Most - parsed.Si) is not { } within)
        {
            Wrong(key, text, path, $"its tolerance reaches beyond what the value may be{key.Bounds}", "Narrow the limits, or check the unit of the tolerance.");
            return null;
        }

        return parsed with { Tolerance = within };
    }

    /// <summary>A table that names measured values.</summary>
    private QuantityText? Samples(KeyDescription key, TomlTable table, string path)
    {
        const string Example = "{ samples = \"radii.csv\", column = \"r_mm\", unit = \"mm\" }";
        string[] wanted = ["samples", "column", "unit"];
        string[] given = [.. wanted.Select(name => table.Entries.TryGetValue(name, out TomlEntry entry) && entry.Value is TomlText { Value.Length: > 0 } text ? text.Value : "")];
        if (key.IsScatter || key.NoTolerance is not null)
        {
            Wrong(key, table, path, "measured values cannot stand here" + (key.NoTolerance is { } why ? $": {why}" : ""));
            return null;
        }

        if (given.Contains("") || table.Entries.Count != wanted.Length)
        {
            Wrong(key, table, path, "measured values are named by samples, column and unit, and nothing else", $"Write for example {key.Name} = {Example}.");
            return null;
        }

        if (files is null)
        {
            Wrong(key, table, path, "the case is read without any files beside it", "Give the reader the files that the case names, or state the value with its tolerance.");
            return null;
        }

        try
        {
            using Stream stream = files.Open(given[0]);
            return SampleColumn.Read(stream, given[1], given[2], key.Quantity!, out Trouble? trouble) is { } read ? Ranged(key, table, path, read) : Told(trouble!);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Wrong(key, table, path, failure is FileNotFoundException ? $"there is no such file as {TomlText.Glimpse(given[0])}" : $"{TomlText.Glimpse(given[0])} cannot be read: {failure.Message.TrimEnd('.')}", "Check the path and the permissions.");
            return null;
        }

        QuantityText? Told(Trouble trouble)
        {
            Wrong(key, table, path, trouble.Message, trouble.Remedy);
            return null;
        }
    }

    private static double Bound(KeyDescription key, string? text) =>
        text is null ? double.NaN : QuantityText.Parse(text, key.Quantity!, out _)!.Si;

    private object? LimitOf(KeyDescription key, TomlText text, string path)
    {
        string trimmed = text.Value.TrimStart();
        bool isUpper = trimmed.StartsWith('<');
        if (!isUpper && !trimmed.StartsWith('>'))
        {
            return Band(key, text, path);
        }

        bool includesBound = trimmed.Length > 1 && trimmed[1] == '=';
        TomlText bound = text with { Value = trimmed[(includesBound ? 2 : 1)..] };
        if (QuantityText.Parse(bound.Value, key.Quantity!, out Trouble? trouble) is not { } parsed)
        {
            Wrong(key, text, path, trouble!.Message);
            return null;
        }

        if (!parsed.Tolerance.IsNone)
        {
            Wrong(key, text, path, "a requirement has no tolerance");
            return null;
        }

        if (parsed.Si < 0)
        {
            Wrong(key, text, path, "it is negative, and what it bounds is a magnitude");
            return null;
        }

        if (parsed.Si == 0 && isUpper)
        {
            Wrong(key, text, path, "nothing real is below zero magnitude");
            return null;
        }

        return key.Quantity!.Limit(parsed, isUpper, includesBound, text.Value);
    }

    /// <summary>What must lie between two values, "6 to 18 rpm".</summary>
    private object? Band(KeyDescription key, TomlText text, string path)
    {
        if (!key.AllowsBand || QuantityText.Parse(text.Value, key.Quantity!, out _) is not { Tolerance.Shared: { Shape: ScatterShape.Uniform } range } parsed ||
            text.Value.Contains('+', StringComparison.Ordinal) || text.Value.Contains('±', StringComparison.Ordinal))
        {
            Wrong(key, text, path, "it does not begin with < or >" + (key.AllowsBand ? ", and is no band such as \"6 to 18 rpm\"" : ""));
            return null;
        }

        if (parsed.Si - range.Below < 0)
        {
            Wrong(key, text, path, "it is negative, and what it bounds is a magnitude");
            return null;
        }

        return key.Quantity!.Band(parsed.Si - range.Below, parsed.Si + range.Above, text.Value);
    }

    private Array? Triple(KeyDescription key, TomlList list, string path)
    {
        Array triple = ListOf(key.ValueType, key.Length);
        bool isWhole = true;
        for (int i = 0; i < key.Length; i++)
        {
            string itemPath = $"{path}[{i}]";
            if (list.Items[i] is not TomlText text)
            {
                Wrong(key, list.Items[i], itemPath, $"{list.Items[i].What} cannot stand here: {key.Quantity!.OneOf} with its unit is wanted");
                isWhole = false;
            }
            else if (QuantityOf(key, text, itemPath) is { } parsed)
            {
                triple.SetValue(key.Quantity!.State(parsed), i);
            }
            else
            {
                isWhole = false;
            }
        }

        return isWhole ? triple : null;
    }

    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "Items are of reference types, whose arrays share their code.")]
    private static Array ListOf(Type item, int length) => Array.CreateInstance(item, length);

    /// <summary>Reports an unknown key; returns the known one that was probably meant.</summary>
    private string? Unknown(SectionDescription description, string path, string name, TomlEntry entry)
    {
        string shown = TomlText.Glimpse(name);
        if (description.Keys.FirstOrDefault(k => k.Was == name) is { } renamed)
        {
            findings.Add(new Problem(
                Severity.Error, findings.File, entry.KeyPlace, KeyDescription.Join(path, shown), entry.Value.Quoted,
                $"the key has another name now, {renamed.Name}", renamed.Allowed, $"Write {renamed.Name} in place of {name}."));
            return renamed.Name;
        }

        string? near = findings.ListsErrors ? Nearest.To(name, description.Keys.Select(k => k.Name)) : null;
        string[] elsewhere = [.. _sectionsOf[name].Where(s => s != path).Select(s => s.Length == 0 ? "the top of the file" : $"[{s}]").Distinct().Take(2)];
        string allowed = string.Join(", ", description.Keys.Select(k => k.Name));
        string remedy = elsewhere.Length > 0 && near is null ? $"That key belongs to {string.Join(" or ", elsewhere)}."
            : near is not null ? $"Did you mean {near}?"
            : "Remove it, or write a # before it to make it a comment.";
        findings.Add(new Problem(
            Severity.Error, findings.File, entry.KeyPlace, KeyDescription.Join(path, shown), entry.Value.Quoted,
            path.Length == 0 ? "unknown key or section" : $"[{path}] has no such key", allowed, remedy));
        return near;
    }

    private void Wrong(KeyDescription key, TomlNode node, string path, string message, string? remedy = null) =>
        findings.Add(new Problem(Severity.Error, findings.File, node.Place, path, node.Quoted, message, key.Allowed, remedy ?? key.Remedy(path)));
}
