using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;

namespace RealCode;

/// <summary>How often the reports were right, by rule and by tier of evidence.</summary>
internal static class Summary
{
    internal static string Table(IReadOnlyCollection<Finding> findings, Ledger ledger, DiagnosticAnalyzer analyzer)
    {
        StringBuilder text = new("| rule | reports | true | debatable | false | not looked at | strict | with debatable |\n|---|---|---|---|---|---|---|---|\n");
        foreach (IGrouping<string, Finding> rule in findings.GroupBy(f => f.Rule).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            Row(text, rule.Key, [.. rule.Select(ledger.Of)]);
        }

        foreach (IGrouping<string, DiagnosticDescriptor> tier in analyzer.SupportedDiagnostics.DistinctBy(d => d.Id).GroupBy(d => $"{d.Category}, {d.DefaultSeverity.ToString().ToLowerInvariant()}{(d.IsEnabledByDefault ? string.Empty : ", off by default")}"))
        {
            Row(text, $"**{tier.Key}**", [.. findings.Where(f => tier.Any(d => d.Id == f.Rule)).Select(ledger.Of)]);
        }

        return text.ToString();
    }

    private static void Row(StringBuilder text, string name, string[] verdicts)
    {
        int right = verdicts.Count(v => v == Ledger.True);
        int wrong = verdicts.Count(v => v == Ledger.False);
        int debatable = verdicts.Count(v => v == Ledger.Debatable);
        int judged = right + wrong + debatable;
        _ = text.Append(CultureInfo.InvariantCulture, $"| {name} | {verdicts.Length} | {right} | {debatable} | {wrong} | {verdicts.Length - judged} | {Share(right, judged)} | {Share(right + debatable, judged)} |\n");
    }

    private static string Share(int part, int whole) => whole == 0 ? "" : ((double)part / whole).ToString("F2", CultureInfo.InvariantCulture);
}
