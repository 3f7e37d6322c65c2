namespace Momentum.Cases.Syntax;

internal sealed record TomlText(string Value, Place Place) : TomlNode(Place)
{
    private const int LongestQuoted = 60;

    public override string What => "a text";

    public override string Quoted => $"\"{Glimpse(Value)}\"";

    /// <summary>A text as a message shows it: printable, and no more than a glance at what may be a megabyte.</summary>
    public static string Glimpse(string text, int longest = LongestQuoted) => Printable.Line(text.Length > longest ? string.Concat(text.AsSpan(0, longest), "…") : text);
}
