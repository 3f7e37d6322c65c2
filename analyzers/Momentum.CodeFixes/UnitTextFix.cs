using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>Writes the text of a unit so that it can be read: <c>"Nm"</c> becomes <c>"N*m"</c>.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class UnitTextFix : ExpressionFix
{
    /// <summary>Creates the fix.</summary>
    public UnitTextFix()
        : base(Descriptors.UnitText)
    {
    }

    private protected override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation) =>
        marked is LiteralExpressionSyntax && diagnostic.Properties.TryGetValue(UnitTextRule.SuggestionKey, out string? text) && text is not null
            ? ($"Write '{text}'", marked, SyntaxFactory.LiteralExpression(SyntaxKind.StringLiteralExpression, SyntaxFactory.Literal(text)))
            : null;
}
