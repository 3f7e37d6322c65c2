using System.Buffers;
using System.Globalization;
using System.Text;

namespace Momentum.Cases;

/// <summary>
/// Shows characters that would steer a terminal, or turn the order of reading round, as their code: control characters, those
/// that set the direction of writing (Unicode Standard Annex 9), and the separators of lines and paragraphs.
/// </summary>
internal static class Printable
{
    private static readonly SearchValues<char> _hidden = SearchValues.Create(
        [.. Enumerable.Range(0, 0xFFFF).Select(c => (char)c).Where(c => (char.IsControl(c) && c is not '\n' and not '\t') || TurnsReading(c))]);

    /// <summary>A text as part of one line: the end of a line, tabs and halves of surrogate pairs are shown as their code too.</summary>
    public static string Line(string text)
    {
        var line = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (i + 1 < text.Length && char.IsSurrogatePair(text, i))
            {
                line.Append(text[i]).Append(text[++i]);
            }
            else if (char.IsControl(text[i]) || char.IsSurrogate(text[i]) || TurnsReading(text[i]))
            {
                line.Append(CultureInfo.InvariantCulture, $"\\u{(int)text[i]:X4}");
            }
            else
            {
                line.Append(text[i]);
            }
        }

        return line.ToString();
    }

    /// <summary>A text of many lines.</summary>
    public static string Text(string text)
    {
        if (!text.AsSpan().ContainsAny(_hidden))
        {
            return text;
        }

        using var writer = new StringWriter(CultureInfo.InvariantCulture);
        Write(writer, text);
        return writer.ToString();
    }

    /// <summary>Writes a text of many lines.</summary>
    public static void Write(TextWriter writer, ReadOnlySpan<char> text)
    {
        while (text.IndexOfAny(_hidden) is >= 0 and var at)
        {
            writer.Write(text[..at]);
            if (text[at] != '\r' || at + 1 == text.Length || text[at + 1] != '\n')
            {
                writer.Write(string.Create(CultureInfo.InvariantCulture, $"\\u{(int)text[at]:X4}"));
            }

            text = text[(at + 1)..];
        }

        writer.Write(text);
    }

    private static bool TurnsReading(char c) => c is '\u061C' or '\u200E' or '\u200F' or (>= '\u2028' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
