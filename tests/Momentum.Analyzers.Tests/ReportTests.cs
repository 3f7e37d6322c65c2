using System.Collections.Immutable;
using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests;

/// <summary>What every report shows, and how a project turns one down.</summary>
public sealed class ReportTests
{
    public static TheoryData<string> Rules() => HelpPageTests.Rules();

    // Rules that judge one expression or one attribute have one place only, which the report marks.
    private static readonly string[] _ofOnePlace = ["MOM014", "MOM015", "MOM016"];

    [Theory]
    [MemberData(nameof(Rules))]
    public async Task It_shows_where_each_of_the_two_came_from(string id)
    {
        Diagnostic report = (await Source.Analyze(Source.Compile([Check.InClass(HelpPageTests.Example(id, "Wrong"))]).WithAllRules()))[0];
        Assert.Equal(id, report.Id);
        if (_ofOnePlace.Contains(id))
        {
            Assert.Empty(report.AdditionalLocations);
        }
        else if (id == "MOM010")
        {
            // One number and what is made of it: the other place is the factor that stands in the report itself.
            Assert.Single(report.AdditionalLocations);
        }
        else
        {
            Assert.True(report.AdditionalLocations.Count >= 2, "The report does not show both origins.");
            Assert.Equal(report.AdditionalLocations.Count, report.AdditionalLocations.Distinct().Count());
        }
    }

    [Theory]
    [InlineData("double feet = a.Feet; double sum = b.Meters + feet;", "a.Feet|b.Meters")]
    [InlineData("double feet = a.Feet; _ = Length.FromMeters(2 * feet);", "a.Feet|Length.FromMeters(2 * feet)")]
    [InlineData("double d = angle.Degrees; _ = Math.Sin(d);", "angle.Degrees|Math.Sin(d)")]
    [InlineData("double v = a.Feet / time.Seconds; _ = Speed.FromMetersPerSecond(v);", "a.Feet|time.Seconds|Speed.FromMetersPerSecond(v)")]
    public async Task It_shows_the_reading_and_not_only_the_variable(string body, string origins)
    {
        Diagnostic report = Assert.Single(await Source.Analyze(Source.Compile([Check.InBody(body)])));
        string text = report.Location.SourceTree!.ToString();
        Assert.Equal(origins, string.Join("|", report.AdditionalLocations.Select(l => text.Substring(l.SourceSpan.Start, l.SourceSpan.Length))));
    }

    public static TheoryData<string> RulesOnByDefault() => new(new UnitAnalyzer().SupportedDiagnostics.Where(d => d.IsEnabledByDefault && d.Id != "MOM018").Select(d => d.Id).Distinct());

    [Theory]
    [MemberData(nameof(RulesOnByDefault))]
    public Task Each_rule_is_turned_off_in_the_editor_s_settings(string id) =>
        Check.Members(HelpPageTests.Example(id, "Wrong"), ($"dotnet_diagnostic.{id}.severity", "none"));

    [Fact]
    public async Task A_declaration_in_the_source_of_another_project_is_no_reason_to_fall_silent()
    {
        CSharpCompilation library = CSharpCompilation.Create(
            "Library",
            [CSharpSyntaxTree.ParseText("using Momentum.Quantities; public class Plant { public static double Gain([Unit(\"m\")] double length) => length; [Unit(\"rpm\")] public double Rate; public double lengthFt; }", path: "Plant.cs")],
            Source.References,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        string text = Check.InBody("double feet = a.Feet; Plant.Gain(feet); var plant = new Plant(); plant.Rate = w.RadiansPerSecond; double lengthMm = plant.lengthFt;");
        foreach (MetadataReference reference in new MetadataReference[] { library.ToMetadataReference(), Compiled(library) })
        {
            ImmutableArray<Diagnostic> reports = await Source.Analyze(Source.Compile([text], Source.References.Add(reference)));
            Assert.Equal(["MOM004", "MOM008", "MOM101"], reports.Select(r => r.Id).Order());
        }
    }

    private static PortableExecutableReference Compiled(CSharpCompilation library)
    {
        MemoryStream bytes = new();
        Assert.True(library.Emit(bytes).Success);
        bytes.Position = 0;
        return MetadataReference.CreateFromStream(bytes);
    }

    [Theory]
    [InlineData("momentum_unit_names = no", "'momentum_unit_names = no' is not read; write true or false")]
    [InlineData("momentum_unit_call_depth = deep", "'momentum_unit_call_depth = deep' is not read; write a whole number from 0 to 4")]
    [InlineData("momentum_unit_flow_blocks = -1", "'momentum_unit_flow_blocks = -1' is not read; write a whole number from 0 to 10000")]
    public async Task A_setting_that_cannot_be_read_is_reported(string setting, string message)
    {
        Diagnostic report = Assert.Single(await Source.Analyze(Check.InBody("double x = a.Feet;"), setting));
        Assert.Equal("MOM018", report.Id);
        Assert.Equal(message, report.GetMessage(CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("MOM001", "Stated")]
    [InlineData("MOM101", "Named")]
    [InlineData("MOM201", "Suggested")]
    public async Task Each_tier_is_turned_off_as_one(string id, string tier)
    {
        string text = Check.InClass(HelpPageTests.Example(id, "Wrong"));
        Assert.NotEmpty(await Source.Analyze(text, string.Empty));
        Assert.Empty(await Source.Analyze(text, $"dotnet_analyzer_diagnostic.category-Momentum.{tier}.severity = none"));
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void The_tier_decides_the_severity(string id)
    {
        DiagnosticDescriptor rule = new UnitAnalyzer().SupportedDiagnostics.First(d => d.Id == id);
        DiagnosticSeverity[] allowed = rule.Category switch
        {
            "Momentum.Stated" => [DiagnosticSeverity.Error, DiagnosticSeverity.Warning],
            "Momentum.Named" => [DiagnosticSeverity.Warning],
            _ => [DiagnosticSeverity.Info],
        };
        Assert.Contains(rule.DefaultSeverity, allowed);
        Assert.True(rule.IsEnabledByDefault || rule.Category == "Momentum.Suggested");
    }
}
