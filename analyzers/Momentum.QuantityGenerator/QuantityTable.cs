namespace Momentum.QuantityGenerator;

/// <summary>The list of quantities and products, read from text; its form is told in the list itself.</summary>
internal sealed class QuantityTable
{
    private static readonly HashSet<string> _words = ["vector", "scalar", "exact", "own"];

    private readonly List<Quantity> _quantities = [];
    private readonly List<Product> _products = [];

    private QuantityTable()
    {
    }

    internal IReadOnlyList<Quantity> Quantities => _quantities;

    internal IReadOnlyList<Product> Products => _products;

    /// <summary>Reads the list.</summary>
    /// <exception cref="FormatException">A row is not of the form; the message names the line.</exception>
    internal static QuantityTable Read(string text)
    {
        QuantityTable table = new();
        string section = "";
        string[] lines = text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            string line = lines[i].Trim();
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            try
            {
                switch (line[0] == '[' ? line : section)
                {
                    case "[quantities]" when line[0] != '[':
                        table.AddQuantity(Cells(line));
                        break;
                    case "[products]" when line[0] != '[':
                        table.AddProduct(Cells(line));
                        break;
                    case "[quantities]" or "[products]":
                        section = line;
                        break;
                    default:
                        throw new FormatException("A row stands under [quantities] or under [products].");
                }
            }
            catch (FormatException wrong)
            {
                throw new FormatException($"Line {i + 1}, \"{line}\": {wrong.Message}");
            }
        }

        return table;
    }

    private static string[] Cells(string line) => [.. line.Split('|').Select(cell => cell.Trim())];

    private void AddQuantity(string[] cells)
    {
        HashSet<string> words = cells.Length < 4 ? [] : [.. Words(cells[3])];
        bool isOwn = words.Contains("own");
        if (cells.Any(cell => cell.Length == 0) || (isOwn ? cells.Length < 6 : cells.Length != 4))
        {
            throw new FormatException("A quantity is written: name | symbol | SI unit | of what; one with \"own\" goes on: what it is | the SI unit in words | other units.");
        }

        if (words.FirstOrDefault(word => !_words.Contains(word)) is { } unknown)
        {
            throw new FormatException($"\"{unknown}\" says nothing here; the words are vector, scalar, exact and own.");
        }

        if (words.Contains("vector") == words.Contains("scalar") || (isOwn && words.Contains("exact")))
        {
            throw new FormatException("A quantity is \"vector\" or \"scalar\", and \"exact\" only if UnitsNet has it.");
        }

        if (_quantities.Any(known => known.Name == cells[0]))
        {
            throw new FormatException($"There is a row for {cells[0]} already.");
        }

        _quantities.Add(new Quantity(cells[0], cells[1], cells[2], words, isOwn ? cells[4] : "", isOwn ? cells[5] : "", [.. cells.Skip(6).Select(Unit)]));
    }

    private static OtherUnit Unit(string cell)
    {
        string[] words = Words(cell);
        if (words.Length < 3 || words[1].TrimStart('/').Length == 0)
        {
            throw new FormatException($"A unit is written: name factor words; this is \"{cell}\".");
        }

        return new OtherUnit(words[0], words[1], string.Join(" ", words.Skip(2)));
    }

    private void AddProduct(string[] cells)
    {
        string[] words = cells.Length == 3 ? Words(cells[0]) : [];
        if (words.Length != 5 || words[1].Length != 1 || words[3] != "=" || cells[2].Length == 0)
        {
            throw new FormatException("A product is written: left sign right = result | of what | what it is.");
        }

        char sign = words[1][0];
        string[] forms = Words(cells[1]);
        bool ofVectors = forms.Contains("vectors");
        bool ofScalars = forms.Contains("scalars");
        if (forms.Length == 0 || forms.Any(form => form is not ("vectors" or "scalars")))
        {
            throw new FormatException("A product is of \"vectors\", of \"scalars\" or of both.");
        }

        (Quantity left, Quantity right, Quantity result) = (Find(words[0]), Find(words[2]), Find(words[4]));
        bool fits = sign switch
        {
            '*' => !ofVectors || (left.IsOfVectors != right.IsOfVectors && result.IsOfVectors),
            '/' => !ofVectors || (left.IsOfVectors && !right.IsOfVectors && result.IsOfVectors),
            'x' => !ofScalars && left.IsOfVectors && right.IsOfVectors && result.IsOfVectors,
            '.' => !ofScalars && left.IsOfVectors && right.IsOfVectors && !result.IsOfVectors,
            _ => throw new FormatException($"The signs are *, /, x and . ; this is {sign}."),
        };
        if (!fits)
        {
            throw new FormatException("With * and / of vectors one factor and the result are vectors, with / the left one; with x both factors and the result are; with . both factors are.");
        }

        _products.Add(new Product(left, sign, right, result, ofVectors, ofScalars, cells[2]));
    }

    private Quantity Find(string name) => _quantities.FirstOrDefault(known => known.Name == name) ?? throw new FormatException($"There is no row for {name} under [quantities].");

    private static string[] Words(string cell) => cell.Split([' '], StringSplitOptions.RemoveEmptyEntries);
}
