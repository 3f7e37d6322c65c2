using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;
using Momentum.Analyzers.Inference;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>
/// Turns one product of inertia from one sign convention into the other: by its sign. Only where it is passed or stored alone;
/// of an array, only the products change sign, and not the moments.
/// </summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class NegateFix : ExpressionFix
{
    /// <summary>Creates the fix.</summary>
    public NegateFix()
        : base(Descriptors.Signs)
    {
    }

    private protected override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation) =>
        Types.IsNumeric(semantics.GetTypeInfo(marked, cancellation).Type)
        && diagnostic.Properties.TryGetValue(Conversions.RoleKey, out string? role) && role is nameof(Role.Argument) or nameof(Role.Assign) or nameof(Role.Return) or nameof(Role.Sum)
            ? ("Change its sign", marked, Negated(marked))
            : null;

    private static ExpressionSyntax Negated(ExpressionSyntax expression)
    {
        ExpressionSyntax negative = SyntaxFactory.PrefixUnaryExpression(SyntaxKind.UnaryMinusExpression, Whole(expression));
        return expression.Parent is BinaryExpressionSyntax ? SyntaxFactory.ParenthesizedExpression(negative) : negative;
    }

    // In parentheses where it would otherwise come apart.
    private static ExpressionSyntax Whole(ExpressionSyntax expression) => expression.WithoutTrivia() is var bare
        && bare is IdentifierNameSyntax or MemberAccessExpressionSyntax or InvocationExpressionSyntax or LiteralExpressionSyntax or ElementAccessExpressionSyntax or ParenthesizedExpressionSyntax
            ? bare
            : SyntaxFactory.ParenthesizedExpression(bare);
}
