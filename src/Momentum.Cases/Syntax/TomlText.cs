using System.Globalization;
using System.Text;

namespace Momentum.Cases.Syntax;

internal sealed record TomlText(string Value, Place Place) : TomlNode(Place)
{
    private const int LongestQuoted = 60;

    public override string What => "a text";

    public override string Quoted => $"\"{Glimpse(Value)}\"";

    /// <summary>A text as a message shows it: printable, and no more than a glance at what may be a megabyte.</summary>
    public static string Glimpse(string text, int longest = LongestQuoted) => Printable(text.Length > longest ? string.Concat(text.AsSpan(0, longest), "…") : text);

    /// <summary>Control characters would let a file write over the terminal, and half a surrogate pair is no text; both are shown as their code.</summary>
    public static string Printable(string text)
    {
        var printable = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (i + 1 < text.Length && char.IsSurrogatePair(text, i))
            {
                printable.Append(text[i]).Append(text[++i]);
            }
            else if (char.IsControl(text[i]) || char.IsSurrogate(text[i]))
            {
                printable.Append(CultureInfo.InvariantCulture, $"\\u{(int)text[i]:X4}");
            }
            else
            {
                printable.Append(text[i]);
            }
        }

        return printable.ToString();
    }
}
