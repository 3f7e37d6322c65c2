using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;

namespace Momentum.Analyzers.Tests.Verification;

/// <summary>Compiles C# text against this run's own framework, UnitsNet and this library, and runs the analyzer on it.</summary>
internal static class Source
{
    internal static ImmutableArray<MetadataReference> Framework { get; } = [..
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path).StartsWith("System", StringComparison.Ordinal) || Path.GetFileName(path) is "netstandard.dll" or "mscorlib.dll")
            .Select(path => (MetadataReference)MetadataReference.CreateFromFile(path))];

    internal static ImmutableArray<MetadataReference> References { get; } = [..
        Framework,
        MetadataReference.CreateFromFile(typeof(UnitsNet.Length).Assembly.Location),
        MetadataReference.CreateFromFile(typeof(Quantities.UnitAttribute).Assembly.Location)];

    internal static CSharpCompilation Compile(IEnumerable<string> texts, ImmutableArray<MetadataReference>? references = null) => CSharpCompilation.Create(
        "Consumer",
        texts.Select((text, i) => CSharpSyntaxTree.ParseText(text, new CSharpParseOptions(LanguageVersion.Latest), $"File{i}.cs")),
        references ?? References,
        new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable, allowUnsafe: true));

    /// <summary>With the rules that are off by default turned on.</summary>
    internal static Compilation WithAllRules(this CSharpCompilation compilation) => compilation.WithOptions(compilation.Options.WithSpecificDiagnosticOptions(
        new UnitAnalyzer().SupportedDiagnostics.Where(d => !d.IsEnabledByDefault).Select(d => KeyValuePair.Create(d.Id, ReportDiagnostic.Info))));

    /// <summary>Runs the analyzer as the compiler does for a project with such an <c>.editorconfig</c>.</summary>
    internal static async Task<ImmutableArray<Diagnostic>> Analyze(string text, string settings)
    {
        Settings options = new(settings);
        Compilation compilation = Compile([text]);
        CompilationWithAnalyzers with = compilation.WithAnalyzers([new UnitAnalyzer()], new AnalyzerOptions([], options));
        return await with.GetAnalyzerDiagnosticsAsync();
    }

    internal static async Task<ImmutableArray<Diagnostic>> Analyze(Compilation compilation)
    {
        CompilationWithAnalyzers with = compilation.WithAnalyzers(
            [new UnitAnalyzer()],
            new CompilationWithAnalyzersOptions(new AnalyzerOptions([]), (exception, analyzer, _) => throw new InvalidOperationException($"{analyzer} threw", exception), concurrentAnalysis: false, logAnalyzerExecutionTime: false));
        return await with.GetAnalyzerDiagnosticsAsync();
    }

    private sealed class Settings(string text) : AnalyzerConfigOptionsProvider
    {
        private readonly AnalyzerConfigSet _set = AnalyzerConfigSet.Create(ImmutableArray.Create(AnalyzerConfig.Parse("root = true\n[*.cs]\n" + text, "/.editorconfig")));

        public override AnalyzerConfigOptions GlobalOptions => new Values(_set.GlobalConfigOptions.AnalyzerOptions);

        public override AnalyzerConfigOptions GetOptions(SyntaxTree tree) => new Values(_set.GetOptionsForSourcePath("/" + tree.FilePath).AnalyzerOptions);

        public override AnalyzerConfigOptions GetOptions(AdditionalText textFile) => GlobalOptions;

        private sealed class Values(ImmutableDictionary<string, string> values) : AnalyzerConfigOptions
        {
            public override bool TryGetValue(string key, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out string? value) => values.TryGetValue(key, out value);
        }
    }
}
