using System.Text;
using Momentum.Cases.Keys;

namespace Momentum.Cases;

/// <summary>Writes the starter case: every key of the format with its explanation, the optional ones as comments.</summary>
public static class StarterCase
{
    private const int Width = 100;

    /// <summary>A complete, valid case of an invented vehicle.</summary>
    public static string Write()
    {
        var text = new StringBuilder();
        text.Append("""
            # A de-spin case for momentum. The vehicle and all its numbers are invented: replace them by your own.
            # A quantity is a text with number and unit: "430 mm", "18.4 kg*m^2", "13.6 slug*ft^2", "72 rpm".
            # A tolerance may follow: "+/- 2 %" is one standard deviation, "+/- 6 % 3 sigma" three of them, "+/- 3 mm max" limits
            # either way with any value between equally likely, "+0.2/-0 mm max" unequal ones; "58 to 62 rpm" is a range. Behind it
            # "+/- 0.5 g each" is what each weight or cord has of its own. A tolerance that cannot act is an error that says why.
            # Lines that begin with # are comments; take the # away to use the key.


            """);
        WriteSection(text, SectionDescription.Of(typeof(Case)), "", live: true);
        return text.ToString();
    }

    private static void WriteSection(StringBuilder text, SectionDescription section, string path, bool live)
    {
        string mark = live ? "" : "# ";
        foreach (KeyDescription key in section.Keys.Where(k => k.Example.Length > 0))
        {
            Comment(text, Explanation(key));
            text.Append(mark).Append(live && !key.InStarter ? "# " : "").Append(key.Name).Append(" = ").Append(key.Example).Append('\n');
        }

        foreach (KeyDescription key in section.Keys.Where(k => k.Example.Length == 0))
        {
            bool innerLive = live && key.InStarter;
            string innerPath = KeyDescription.Join(path, key.Name);
            text.Append('\n');
            Comment(text, Explanation(key));
            text.Append(innerLive ? "" : "# ").Append(key.Form == KeyForm.Sections ? $"[[{innerPath}]]" : $"[{innerPath}]").Append('\n');
            WriteSection(text, SectionDescription.Of(key.ValueType), innerPath, innerLive);
        }
    }

    private static string Explanation(KeyDescription key) => key.Doc
        + (key.Form == KeyForm.Choice && !key.Doc.Contains('"', StringComparison.Ordinal) ? $" One of: {key.Allowed}." : "")
        + (key.NotUsedYet ? " Read and checked, not used yet." : "");

    private static void Comment(StringBuilder text, string sentence)
    {
        int column = 0;
        foreach (string word in sentence.Split(' '))
        {
            if (column == 0 || column + 1 + word.Length > Width)
            {
                text.Append(column == 0 ? "" : "\n").Append("##");
                column = 2;
            }

            text.Append(' ').Append(word);
            column += 1 + word.Length;
        }

        text.Append('\n');
    }
}
