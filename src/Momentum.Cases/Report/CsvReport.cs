using System.Globalization;
using System.Text;
using Momentum.Cases.Answers;

namespace Momentum.Cases.Report;

/// <summary>
/// Writes the figures of an answer as CSV (RFC 4180) for a spreadsheet: a line for each, with its path in the tree, its value
/// in SI, and value, unit and standard deviation as a reader sees them.
/// </summary>
public static class CsvReport
{
    /// <summary>Writes the answer.</summary>
    public static void Write(Answer answer, Stream utf8)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(utf8);
        var text = new StringBuilder("path,name,value_si,value,unit,standard_deviation,note\n");
        Lines(text, "", answer.Figures);
        utf8.Write(Encoding.UTF8.GetBytes(text.ToString()));
    }

    private static void Lines(StringBuilder text, string path, AnswerGroup group)
    {
        foreach (AnswerNode node in group.Nodes)
        {
            string here = node.Key.Length == 0 ? path : path.Length == 0 ? node.Key : $"{path}.{node.Key}";
            switch (node)
            {
                case AnswerGroup inner:
                    Lines(text, here, inner);
                    break;
                case AnswerTable table:
                    foreach ((int index, AnswerGroup row) in table.Rows.Index())
                    {
                        Lines(text, string.Create(CultureInfo.InvariantCulture, $"{here}[{index + 1}]"), row);
                    }

                    break;
                case AnswerFigure figure:
                    Line(text, here, node, Exact(figure.Value), Exact(figure.Shown), figure.Unit, figure.Spread is { } spread ? Exact(spread.Shown) : "");
                    break;
                case AnswerCount count:
                    string number = count.Count.ToString(CultureInfo.InvariantCulture);
                    Line(text, here, node, number, number, "", "");
                    break;
                case AnswerWord word:
                    Line(text, here, node, word.Word, word.Shown, "", "");
                    break;
                default:
                    throw new NotSupportedException($"CSV has no form yet for {node.GetType().Name}.");
            }
        }
    }

    private static void Line(StringBuilder text, string path, AnswerNode node, string si, string shown, string unit, string deviation) =>
        text.AppendJoin(',', ((string[])[path, node.Name, si, shown, unit, deviation, node.Note]).Select(Field)).Append('\n');

    private static string Exact(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Field(string text) =>
        text.AsSpan().IndexOfAny(",\"\n\r") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
