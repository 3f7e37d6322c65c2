using System.Reflection;
using System.Text.RegularExpressions;

namespace Momentum.Cases.Report;

/// <summary>The page's parts that are files of their own: the skeleton, the style sheet, the script.</summary>
internal static partial class Page
{
    /// <summary>Fills the slots <c>{{name}}</c> of a part in one pass, so that what fills a slot is never searched for slots.</summary>
    /// <exception cref="KeyNotFoundException">The part has a slot that is not filled.</exception>
    public static string Fill(string part, IReadOnlyDictionary<string, string> slots) =>
        Slot().Replace(part, m => slots[m.Groups[1].Value]);

    /// <summary>Reads a part.</summary>
    public static string Part(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Report/{name}")
            ?? throw new InvalidOperationException($"The part '{name}' of the report is not in the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    [GeneratedRegex(@"\{\{([a-z-]+)\}\}")]
    private static partial Regex Slot();
}
