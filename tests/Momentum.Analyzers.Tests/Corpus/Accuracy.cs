using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>
/// Precision and recall over one part of the corpus. The tuning part is there to be looked into while rules are made; of the
/// reporting part nobody looks at more than the figures.
/// </summary>
internal sealed class Accuracy
{
    private readonly ImmutableArray<Snippet> _snippets;
    private readonly Dictionary<string, List<string>> _reports;
    private readonly ILookup<string, string> _messages;

    private Accuracy(ImmutableArray<Snippet> snippets, Dictionary<string, List<string>> reports, ILookup<string, string> messages)
    {
        _snippets = snippets;
        _reports = reports;
        _messages = messages;
    }

    internal string Hash => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Concat(_snippets.Select(s => s.Code + string.Join(",", s.Seeded))))))[..16];

    internal int Right(bool names) => _snippets.Count(s => s.IsRight && s.NamesOnly == names);

    internal int Seeded(bool names) => _snippets.Count(s => !s.IsRight && s.NamesOnly == names);

    /// <summary>Of the reports, the share that is of the seeded mistake.</summary>
    internal double Precision(bool names) => Share(Group(names).SelectMany(s => _reports[s.Name].Select(s.Seeded.Contains)));

    /// <summary>Of the seeded mistakes, the share that is reported.</summary>
    internal double Recall(bool names) => Share(Group(names).Where(s => !s.IsRight).Select(Found));

    internal IEnumerable<string> Failures() => _snippets
        .Where(s => !(s.IsRight || Found(s)) || _reports[s.Name].Exists(r => !s.Seeded.Contains(r)))
        .Select(s => $"seeded [{string.Join(' ', s.Seeded)}], reported [{string.Join("; ", _messages[s.Name])}]\n{s.Code}");

    /// <summary>The table that goes with the analyzer's pages.</summary>
    internal string Table()
    {
        StringBuilder text = new();
        _ = text.Append("| rule | seeded | found | recall | reports | of another | precision |\n|---|---|---|---|---|---|---|\n");
        foreach (string rule in _snippets.Where(s => !s.IsRight).Select(s => s.Seeded[0]).Concat(_reports.Values.SelectMany(r => r)).Distinct().Order(StringComparer.Ordinal))
        {
            Snippet[] seeded = [.. _snippets.Where(s => !s.IsRight && s.Seeded[0] == rule)];
            bool[] reports = [.. _snippets.SelectMany(s => _reports[s.Name].Where(r => r == rule).Select(s.Seeded.Contains))];
            Row(text, rule, seeded.Length, seeded.Count(Found), reports.Length, reports.Count(r => !r));
        }

        foreach (bool names in new[] { false, true })
        {
            bool[] reports = [.. Group(names).SelectMany(s => _reports[s.Name].Select(s.Seeded.Contains))];
            Row(text, names ? "**all, by names**" : "**all, typed or attributed**", Seeded(names), Group(names).Count(s => !s.IsRight && Found(s)), reports.Length, reports.Count(r => !r));
        }

        return text.ToString();
    }

    /// <summary>One part: generated with seeds of its own, and the hand-written classes whose name falls to it.</summary>
    internal static async Task<Accuracy> Of(string part)
    {
        bool tuning = part == "tuning";
        ulong seed = tuning ? 20260101UL : 77771UL;
        Generator generator = new(seed, tuning ? "T" : "R");
        ImmutableArray<Snippet> snippets =
        [
            .. generator.Products(220, seeded: false, names: false),
            .. generator.Products(220, seeded: true, names: false),
            .. generator.Products(100, seeded: false, names: true),
            .. generator.Products(100, seeded: true, names: true),
            .. generator.Particulars(3, seeded: false),
            .. generator.Particulars(3, seeded: true),
            .. HandWritten("FlightCode").Where(s => SHA256.HashData(Encoding.UTF8.GetBytes(s.Name))[0] % 2 == (tuning ? 0 : 1)),
            .. HandWritten(tuning ? "Tuning" : "Reporting"),
        ];
        Compilation compilation = Source.Compile([Check.Head + string.Concat(snippets.Select(s => s.Code))]);
        ImmutableArray<Diagnostic> errors = compilation.GetDiagnostics();
        Assert.True(errors.All(d => d.Severity != DiagnosticSeverity.Error), string.Join("\n", errors.Where(d => d.Severity == DiagnosticSeverity.Error).Select(d => $"{d.GetMessage(CultureInfo.InvariantCulture)}: {d.Location.SourceTree!.GetText().Lines[d.Location.GetLineSpan().StartLinePosition.Line]}")));

        Dictionary<string, List<string>> reports = snippets.ToDictionary(s => s.Name, _ => new List<string>());
        List<(string Name, string Text)> messages = [];
        foreach (Diagnostic diagnostic in await Source.Analyze(compilation))
        {
            SyntaxNode node = (await diagnostic.Location.SourceTree!.GetRootAsync()).FindNode(diagnostic.Location.SourceSpan);
            string name = node.AncestorsAndSelf().OfType<ClassDeclarationSyntax>().Last().Identifier.ValueText;
            reports[name].Add(diagnostic.Id);
            messages.Add((name, $"{diagnostic.Id} {diagnostic.GetMessage(CultureInfo.InvariantCulture)}"));
        }

        return new(snippets, reports, messages.ToLookup(m => m.Name, m => m.Text));
    }

    private static IEnumerable<Snippet> HandWritten(string file, [CallerFilePath] string here = "")
    {
        foreach (string block in File.ReadAllText(Path.Combine(Path.GetDirectoryName(here)!, file + ".txt")).Split("//// ", StringSplitOptions.RemoveEmptyEntries))
        {
            int end = block.IndexOf('\n', StringComparison.Ordinal);
            string[] head = block[..end].Split(' ');
            bool right = head[0] == "right";
            bool names = head.Contains("names") || (right && head[^1].StartsWith("Legacy", StringComparison.Ordinal));
            yield return new(head[^1], block[(end + 1)..], right ? [] : [head[0]], names);
        }
    }

    private static void Row(StringBuilder text, string name, int seeded, int found, int reports, int wrong) => text.Append(
        CultureInfo.InvariantCulture, $"| {name} | {seeded} | {found} | {Figure(found, seeded)} | {reports} | {wrong} | {Figure(reports - wrong, reports)} |\n");

    private static string Figure(int part, int whole) => whole == 0 ? "" : ((double)part / whole).ToString("F3", CultureInfo.InvariantCulture);

    private IEnumerable<Snippet> Group(bool names) => _snippets.Where(s => s.NamesOnly == names);

    private bool Found(Snippet snippet) => _reports[snippet.Name].Exists(snippet.Seeded.Contains);

    private static double Share(IEnumerable<bool> hits)
    {
        bool[] all = [.. hits];
        return all.Count(h => h) / (double)all.Length;
    }
}
