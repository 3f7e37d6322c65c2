namespace Momentum.Tool.Cases.Syntax;

internal sealed record TomlText(string Value, Place Place) : TomlNode(Place)
{
    private const int LongestQuoted = 60;

    public override string What => "a text";

    public override string Quoted => $"\"{Printable(Value)}\"";

    /// <summary>Control characters would let a file write over the terminal; they are shown as their code instead.</summary>
    public static string Printable(string text)
    {
        string cut = text.Length > LongestQuoted ? string.Concat(text.AsSpan(0, LongestQuoted), "…") : text;
        return string.Concat(cut.Select(c => char.IsControl(c) || char.IsSurrogate(c) ? $"\\u{(int)c:X4}" : c.ToString()));
    }
}
