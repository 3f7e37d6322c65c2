using System.Globalization;

namespace RealCode;

/// <summary>
/// What a reader found of each report: <c>true</c> (a mistake), <c>false</c> (right code) or <c>debatable</c>. One line a
/// report: verdict, rule, checkout, path, line, separated by tabs; what follows is a remark.
/// </summary>
internal sealed class Ledger
{
    internal const string True = "true";
    internal const string False = "false";
    internal const string Debatable = "debatable";

    private readonly Dictionary<(string Rule, string Checkout, string Path, int Line), string> _verdicts = [];

    internal static Ledger Read(string? file)
    {
        Ledger ledger = new();
        if (file is null)
        {
            return ledger;
        }

        int number = 0;
        foreach (string line in File.ReadLines(file))
        {
            number++;
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            string[] parts = line.Split('\t');
            if (parts.Length < 5 || parts[0] is not (True or False or Debatable) || !int.TryParse(parts[4], NumberStyles.None, CultureInfo.InvariantCulture, out int at))
            {
                throw new InvalidDataException($"{file}, line {number}: write verdict (true, false or debatable), rule, checkout, path and line, separated by tabs.");
            }

            ledger._verdicts[(parts[1], parts[2], parts[3], at)] = parts[0];
        }

        return ledger;
    }

    /// <summary>The verdict; a dash where nobody has looked.</summary>
    internal string Of(Finding finding) => _verdicts.GetValueOrDefault((finding.Rule, finding.Checkout, finding.Path, finding.Line), "-");
}
