using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests;

/// <summary>Every rule has a page; what the page calls wrong is reported, and what it calls right is not.</summary>
public sealed class HelpPageTests
{
    public static TheoryData<string> AllRules() => new(new UnitAnalyzer().SupportedDiagnostics.Select(d => d.Id).Distinct());

    /// <summary>The rules on code: all but the one on settings.</summary>
    public static TheoryData<string> Rules() => new(new UnitAnalyzer().SupportedDiagnostics.Select(d => d.Id).Distinct().Where(id => id != "MOM018"));

    [Theory]
    [MemberData(nameof(Rules))]
    public async Task The_wrong_example_is_reported_and_the_right_one_is_not(string id)
    {
        Assert.Equal(new[] { id }, await Reported(Example(id, "Wrong")));
        Assert.Empty(await Reported(Example(id, "Right")));
    }

    [Theory]
    [MemberData(nameof(AllRules))]
    public void The_page_states_the_rule_as_it_is(string id)
    {
        DiagnosticDescriptor descriptor = new UnitAnalyzer().SupportedDiagnostics.First(d => d.Id == id);
        string page = Page(id);
        string severity = descriptor.DefaultSeverity == DiagnosticSeverity.Info ? "suggestion" : descriptor.DefaultSeverity.ToString().ToLowerInvariant();
        Assert.StartsWith($"# {id}: {descriptor.Title}\n", page, StringComparison.Ordinal);
        Assert.Contains($"Category `{descriptor.Category}`", page, StringComparison.Ordinal);
        Assert.Contains($"default severity: {severity}.", page, StringComparison.Ordinal);
        Assert.Equal(descriptor.IsEnabledByDefault, !page.Contains("Off by default", StringComparison.Ordinal));
        Assert.Contains($"| [{id}]({id}.md) | {descriptor.Title} | {descriptor.Category} | {severity} |", Page("README"), StringComparison.Ordinal);
        Assert.Equal($"analyzers/docs/{id}.md", descriptor.HelpLinkUri);
    }

    private static string Page(string name, [CallerFilePath] string here = "") =>
        File.ReadAllText(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "analyzers", "docs", name + ".md"));

    /// <summary>The code on a rule's page under a heading.</summary>
    internal static string Example(string id, string heading) => Code(heading).Match(Page(id)) is { Success: true } match
        ? match.Groups[1].Value
        : throw new InvalidOperationException($"The page has no example under '{heading}'.");

    private static Regex Code(string heading) => new($@"## {heading}\n```csharp\n(.*?)\n```", RegexOptions.Singleline);

    private static async Task<string[]> Reported(string members)
    {
        Compilation compilation = Source.Compile([Check.InClass(members)]).WithAllRules();
        Assert.Empty(compilation.GetDiagnostics().Where(d => d.Severity == DiagnosticSeverity.Error));
        return [.. (await Source.Analyze(compilation)).Select(d => d.Id).Distinct()];
    }
}
