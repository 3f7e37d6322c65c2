using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Testing;
using Microsoft.CodeAnalysis.Testing;

namespace Momentum.Analyzers.Tests.Verification;

/// <summary>
/// Checks what a fix makes of marked text: of each mark by itself, and of all at once in the document, the project and the
/// solution.
/// </summary>
internal static class Fix
{
    internal static Task Body<TFix>(string marked, string mended, int choice = 0)
        where TFix : CodeFixProvider, new() => File<TFix>(Check.InBody(marked), Check.InBody(mended), choice);

    internal static Task Members<TFix>(string marked, string mended, int choice = 0)
        where TFix : CodeFixProvider, new() => File<TFix>(Check.InClass(marked), Check.InClass(mended), choice);

    private static async Task File<TFix>(string marked, string mended, int choice)
        where TFix : CodeFixProvider, new()
    {
        CSharpCodeFixTest<UnitAnalyzer, TFix, DefaultVerifier> test = new()
        {
            TestCode = marked,
            FixedCode = mended,
            ReferenceAssemblies = Check.NoPackages,
            CompilerDiagnostics = CompilerDiagnostics.Errors,
            CodeActionIndex = choice,
        };
        test.TestState.AdditionalReferences.AddRange(Source.References);
        test.FixedState.AdditionalReferences.AddRange(Source.References);
        test.SolutionTransforms.Add((solution, project) => solution.WithProjectParseOptions(project, new CSharpParseOptions(LanguageVersion.Latest)));
        await test.RunAsync();
    }
}
