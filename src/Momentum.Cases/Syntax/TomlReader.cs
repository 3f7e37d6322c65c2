using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace Momentum.Cases.Syntax;

/// <summary>
/// Turns TOML text into one tree of tables, in which a table written as a header, as dotted keys or in braces looks the same,
/// and every key and value knows its line and column.
/// </summary>
internal static class TomlReader
{
    private const int MaxDepth = 16;

    private static readonly TomlSerializerOptions _limits = new() { MaxDepth = MaxDepth };

    /// <summary>Reads the text.</summary>
    /// <param name="text">The whole file.</param>
    /// <param name="problem">The first thing wrong with the TOML itself; later ones are usually its echo.</param>
    /// <returns>The root table, or null with <paramref name="problem"/> set.</returns>
    public static TomlTable? Read(string text, out (Place? Place, string Message)? problem)
    {
        problem = null;
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, _limits, sourceName: "case", validate: true);
        }
        catch (TomlException refusal)
        {
            // The parser throws, and without a place, only where tables or lists are nested beyond its limit.
            problem = refusal.Span is { } span
                ? (new Place(span.Start.Line + 1, span.Start.Column + 1), refusal.Message)
                : (null, $"tables or lists are nested too deep (more than {MaxDepth})");
            return null;
        }
        catch (ArgumentException)
        {
            // The parser itself stumbles over a few malformed texts instead of saying what is wrong with them.
            problem = (new Place(FirstLineThatStumbles(text), 1), "it cannot be parsed");
            return null;
        }

        // What is missing at the end of the file the parser places at its very beginning.
        if (document.Diagnostics.Where(d => d.Kind == DiagnosticMessageKind.Error).MinBy(d => d.Span.End.Offset == 0 ? int.MaxValue : d.Span.Offset) is { } first)
        {
            problem = (PlaceOf(first.Span), first.Message);
            return null;
        }

        try
        {
            var root = new TomlTable(new Place(1, 1));
            AddAll(root, document.KeyValues);
            foreach (TableSyntaxBase header in document.Tables)
            {
                AddAll(TableFor(root, header), header.Items);
            }

            return root;
        }
        catch (BrokenToml broken)
        {
            problem = (broken.Place, broken.Message);
            return null;
        }
    }

    /// <summary>The line up to which the text still does not make the parser stumble, and one more.</summary>
    private static int FirstLineThatStumbles(string text)
    {
        string[] lines = text.Split('\n');
        int good = 0;
        int bad = lines.Length;
        while (bad - good > 1)
        {
            int middle = (good + bad) / 2;
            try
            {
                SyntaxParser.Parse(string.Join('\n', lines[..middle]), _limits, sourceName: "case", validate: true);
                good = middle;
            }
            catch (Exception failure) when (failure is TomlException or ArgumentException)
            {
                bad = middle;
            }
        }

        return bad;
    }

    private static TomlTable TableFor(TomlTable root, TableSyntaxBase header)
    {
        List<(string Name, Place Place)> path = PathOf(header.Name!);
        Place place = PlaceOf(header.Span);
        TomlTable parent = root;
        foreach ((string name, Place at) in path[..^1])
        {
            parent = Descend(parent, name, at);
        }

        (string last, Place lastPlace) = path[^1];
        if (header is not TableArraySyntax)
        {
            return Descend(parent, last, place);
        }

        var table = new TomlTable(place);
        if (!parent.Entries.TryGetValue(last, out TomlEntry existing))
        {
            parent.TryAdd(last, new TomlEntry(lastPlace, new TomlList(new List<TomlNode> { table }, place)));
        }
        else if (existing.Value is TomlList { Items: List<TomlNode> items })
        {
            items.Add(table);
        }
        else
        {
            throw new BrokenToml(lastPlace, $"`{TomlText.Glimpse(last)}` is defined already and is not a list of tables");
        }

        return table;
    }

    /// <summary>The table of that name in its parent, made if it is not there; of a list of tables, the latest.</summary>
    private static TomlTable Descend(TomlTable parent, string name, Place place)
    {
        if (parent.Entries.TryGetValue(name, out TomlEntry existing))
        {
            return existing.Value switch
            {
                TomlTable table => table,
                TomlList { Items: [.., TomlTable last] } => last,
                _ => throw new BrokenToml(place, $"`{TomlText.Glimpse(name)}` is defined already and is not a table"),
            };
        }

        var made = new TomlTable(place);
        parent.TryAdd(name, new TomlEntry(place, made));
        return made;
    }

    private static void AddAll(TomlTable table, SyntaxList<KeyValueSyntax> items)
    {
        foreach (KeyValueSyntax item in items)
        {
            Add(table, item);
        }
    }

    private static void Add(TomlTable table, KeyValueSyntax item)
    {
        List<(string Name, Place Place)> path = PathOf(item.Key!);
        foreach ((string name, Place at) in path[..^1])
        {
            table = Descend(table, name, at);
        }

        (string last, Place place) = path[^1];
        if (!table.TryAdd(last, new TomlEntry(place, NodeOf(item.Value!))))
        {
            throw new BrokenToml(place, $"the key `{TomlText.Glimpse(last)}` is defined already");
        }
    }

    private static TomlNode NodeOf(ValueSyntax value)
    {
        Place place = PlaceOf(value.Span);
        switch (value)
        {
            case StringValueSyntax text:
                return new TomlText(text.Value ?? "", place);
            case IntegerValueSyntax:
                return new TomlScalar(TomlScalarKind.Whole, value.ToString().Trim(), place);
            case FloatValueSyntax:
                return new TomlScalar(TomlScalarKind.Decimal, value.ToString().Trim(), place);
            case BooleanValueSyntax truth:
                return new TomlScalar(TomlScalarKind.Truth, truth.Value ? "true" : "false", place);
            case ArraySyntax list:
                var items = new List<TomlNode>();
                foreach (ArrayItemSyntax item in list.Items)
                {
                    items.Add(NodeOf(item.Value!));
                }

                return new TomlList(items.AsReadOnly(), place);
            case InlineTableSyntax braces:
                var table = new TomlTable(place);
                foreach (InlineTableItemSyntax item in braces.Items)
                {
                    Add(table, item.KeyValue!);
                }

                return table;
            default:
                return new TomlScalar(TomlScalarKind.Date, value.ToString().Trim(), place);
        }
    }

    private static List<(string Name, Place Place)> PathOf(KeySyntax key)
    {
        var path = new List<(string, Place)> { (NameOf(key.Key!), PlaceOf(key.Key!.Span)) };
        foreach (DottedKeyItemSyntax dotted in key.DotKeys)
        {
            path.Add((NameOf(dotted.Key!), PlaceOf(dotted.Key!.Span)));
        }

        return path;
    }

    private static string NameOf(BareKeyOrStringValueSyntax key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => key.ToString().Trim(),
    };

    private static Place PlaceOf(SourceSpan span) => new(span.Start.Line + 1, span.Start.Column + 1);

    private sealed class BrokenToml(Place place, string message) : Exception(message)
    {
        public Place Place => place;
    }
}
