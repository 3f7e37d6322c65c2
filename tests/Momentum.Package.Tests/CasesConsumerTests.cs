using System.Text.RegularExpressions;

namespace Momentum.Package.Tests;

/// <summary>What a tool builder gets who adds the package of cases to a new project.</summary>
[Collection(PackedOnce.Name)]
public sealed partial class CasesConsumerTests(Packages packages)
{
    // Every way in and out, on the starter case, which every key of the format stands in.
    private const string Program = """
        using Momentum.Cases;
        using Momentum.Cases.Answers;
        using Momentum.Cases.Report;

        var judgement = Judgement.Of(CaseReader.Read(StarterCase.Write()));
        foreach (Problem problem in judgement.Problems.Where(p => p.Severity == Severity.Error))
        {
            Console.WriteLine(problem);
        }

        Answer answer = Solver.Solve(judgement, new SpreadOptions(200, 1));
        foreach (ReportFormat format in ReportFormat.All)
        {
            var result = new MemoryStream();
            format.Write(answer, result);
            Console.WriteLine($"{format.Name} {result.Length > 2000}");
        }

        Console.WriteLine($"{answer.SolvedFor} {CaseSchema.Write().Length > 5000}");
        """;

    private const string Printed = "text True\njson True\ncsv True\nhtml True\ncord_length True\n";

    private string Reference => $"""<PackageReference Include="Momentum.Cases" Version="{packages.Version}" />""";

    [Fact]
    public void A_new_project_reads_answers_and_reports_a_case() =>
        Assert.Equal(Printed, new Consumer(packages, "CasesPlain", items: Reference).With(Program).BuildsAndRuns());

    [Fact]
    public void A_native_program_does_the_same_and_no_warning_is_about_the_package()
    {
        Consumer consumer = new Consumer(
            packages,
            "CasesNative",
            "<PublishAot>true</PublishAot><TreatWarningsAsErrors>false</TreatWarningsAsErrors><TrimmerSingleWarn>true</TrimmerSingleWarn>",
            Reference + """<TrimmerRootAssembly Include="Momentum.Cases" />""").With(Program);
        (string output, string folder) = consumer.Publishes();
        Assert.All(Warnings().Matches(output), warning => Assert.Matches("warning IL(2104|3053): Assembly '(UnitsNet|OxyPlot|MathNet\\.Numerics)' produced", warning.Value));

        (int exit, string printed) = DotNet.Run(folder, Path.Combine(folder, OperatingSystem.IsWindows() ? "CasesNative.exe" : "CasesNative"));
        Assert.Equal((0, Printed), (exit, printed));
    }

    [GeneratedRegex("warning .*")]
    private static partial Regex Warnings();
}
