using System.Diagnostics;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;
using Momentum.Analyzers;

namespace AnalyzerCost;

/// <summary>Parses, binds and emits in this process, as the compiler does; the analyzer's part is what it takes beyond an idle one.</summary>
internal sealed class CompilerCost : ICost
{
    private readonly SourceText[] _texts;
    private readonly MetadataReference[] _references;

    internal CompilerCost(string folder)
    {
        _texts = [.. Directory.EnumerateFiles(folder, "*.cs").Order(StringComparer.Ordinal).Select(path => SourceText.From(CodeWriter.Usings + File.ReadAllText(path)))];
        _references = [..
            ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
                .Split(Path.PathSeparator)
                .Where(path => Path.GetFileName(path).StartsWith("System", StringComparison.Ordinal) || Path.GetFileName(path) == "UnitsNet.dll")
                .Select(path => MetadataReference.CreateFromFile(path))];
    }

    public double Measure(bool withAnalyzer)
    {
        double compiler = Processor(() => Require(Compile().Emit(Stream.Null).Success));
        return withAnalyzer ? compiler + Processor(() => Analyze(new UnitAnalyzer())) - Processor(() => Analyze(new IdleAnalyzer())) : compiler;
    }

    private static double Processor(Action action)
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        using Process self = Process.GetCurrentProcess();
        TimeSpan before = self.TotalProcessorTime;
        action();
        self.Refresh();
        return (self.TotalProcessorTime - before).TotalSeconds;
    }

    private CSharpCompilation Compile() => CSharpCompilation.Create(
        "Generated",
        _texts.Select(text => CSharpSyntaxTree.ParseText(text)),
        _references,
        new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));

    private void Analyze(DiagnosticAnalyzer analyzer)
    {
        CompilationWithAnalyzers with = Compile().WithAnalyzers([analyzer], new CompilationWithAnalyzersOptions(new AnalyzerOptions([]), null, true, false));
        Require(with.GetAnalyzerDiagnosticsAsync().GetAwaiter().GetResult().IsEmpty);
    }

    private static void Require(bool condition)
    {
        if (!condition)
        {
            throw new InvalidOperationException("The generated code is not right.");
        }
    }
}
