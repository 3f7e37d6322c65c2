using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;

namespace AnalyzerCost;

/// <summary>An analyzer that does nothing: what the compiler spends on having any at all, as every build of the SDK has.</summary>
#pragma warning disable RS1001, RS1025, RS1026, RS1036, RS1038 // Never shipped as an analyzer.
internal sealed class IdleAnalyzer : DiagnosticAnalyzer
#pragma warning restore RS1001, RS1025, RS1026, RS1036, RS1038
{
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } =
        [new("IDLE", "Idle", "Idle", "Idle", DiagnosticSeverity.Info, isEnabledByDefault: true)];

    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterSyntaxNodeAction(_ => { }, SyntaxKind.MethodDeclaration);
    }
}
