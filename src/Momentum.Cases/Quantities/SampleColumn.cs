using System.Globalization;
using System.Text;
using Momentum.Dispersion;

namespace Momentum.Cases.Quantities;

/// <summary>
/// Measured values in place of one: a column of a file of comma-separated values, whose first line names its columns. The mean
/// is the nominal value, and a case takes one of them, each with equal chance.
/// </summary>
internal static class SampleColumn
{
    /// <summary>Nobody measures more by hand.</summary>
    public const int MostValues = 1_000_000;

    private const int LongestLine = 100_000;

    /// <summary>Reads the values of a column, in SI.</summary>
    /// <param name="stream">The file, as UTF-8.</param>
    /// <param name="column">The name of the column.</param>
    /// <param name="unit">The unit of its numbers.</param>
    /// <param name="kind">What kind of quantity they are.</param>
    /// <param name="trouble">Why not.</param>
    public static QuantityText? Read(Stream stream, string column, string unit, QuantityKind kind, out Trouble? trouble)
    {
        using var reader = new StreamReader(stream, new UTF8Encoding(false), detectEncodingFromByteOrderMarks: true);
        string[] names = Fields(reader.ReadLine());
        int place = Array.IndexOf(names, column);
        if (place < 0)
        {
            string? near = Nearest.To(column, names);
            trouble = new Trouble(
                $"the file has no column {Syntax.TomlText.Glimpse(column)}", near is null ? $"Its first line must name the columns; it reads {Syntax.TomlText.Glimpse(string.Join(", ", names))}." : $"Did you mean {near}?");
            return null;
        }

        List<double> values = [];
        int line = 1;
        while (reader.ReadLine() is { } text)
        {
            line++;
            if (text.Length == 0)
            {
                continue;
            }

            string[] fields = text.Length > LongestLine ? [] : Fields(text);
            if (place >= fields.Length || QuantityText.Amount(fields[place] + " " + unit, kind, out Trouble? wrong) is not var (number, known))
            {
                trouble = new Trouble(
                    string.Create(CultureInfo.InvariantCulture, $"line {line} of the file has no number of {kind.Name} in that column"), "Mend the line, or the unit.");
                return null;
            }

            double si = kind.ToSi(number, known);
            if (QuantityText.OutOfRange(si, kind) is { } range)
            {
                trouble = range with { Message = string.Create(CultureInfo.InvariantCulture, $"in line {line} of the file, {range.Message}") };
                return null;
            }

            values.Add(si);
            if (values.Count > MostValues)
            {
                trouble = new Trouble($"the file has more than {MostValues} values", "Give fewer: a sample of them.");
                return null;
            }
        }

        if (values.Count < 2)
        {
            trouble = new Trouble("the column has fewer than two values", "Measure two or more, or state one value with its tolerance.");
            return null;
        }

        double mean = values.Average();
        trouble = null;
        return new QuantityText(mean, new Tolerance(ScatterLaw.Samples([.. values.Select(v => v - mean)]), ScatterLaw.None), string.Create(CultureInfo.InvariantCulture, $"mean of {values.Count} measured values"));
    }

    private static string[] Fields(string? line) => line is null ? [] : [.. line.Split(',').Select(f => f.Trim().Trim('"'))];
}
