using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>Replaces a factor by the typed conversion: <c>angle.Degrees * Math.PI / 180</c> becomes <c>angle.Radians</c>.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class TypedConversionFix : ExpressionFix
{
    /// <summary>Creates the fix.</summary>
    public TypedConversionFix()
        : base(Descriptors.ConversionByHand)
    {
    }

    private protected override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation) =>
        diagnostic.Properties.TryGetValue(Conversions.ToKey, out string? member) && member is not null
        && diagnostic.AdditionalLocations.Count == 1
        && marked.FindNode(diagnostic.AdditionalLocations[0].SourceSpan, getInnermostNodeForTie: true) is MemberAccessExpressionSyntax access
            ? ($"Read '{member}'", marked, access.WithName(SyntaxFactory.IdentifierName(member)).WithoutTrivia())
            : null;
}
