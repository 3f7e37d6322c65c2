using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Momentum.CodeFixes;

/// <summary>An expression that reads a quantity in one unit.</summary>
internal static class Reading
{
    /// <summary>
    /// What of an expression is to be exchanged so that a quantity is read in another unit: the member's name, or the call of
    /// <c>As</c>; null where the expression is not one reading, in parentheses, with a sign or a cast perhaps.
    /// </summary>
    internal static ExpressionSyntax? In(ExpressionSyntax expression, SemanticModel semantics, string member, CancellationToken cancellation) => expression switch
    {
        ParenthesizedExpressionSyntax parenthesized => In(parenthesized.Expression, semantics, member, cancellation),
        CastExpressionSyntax cast => In(cast.Expression, semantics, member, cancellation),
        PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression or (int)SyntaxKind.UnaryPlusExpression } sign => In(sign.Operand, semantics, member, cancellation),
        MemberAccessExpressionSyntax access when semantics.GetSymbolInfo(access, cancellation).Symbol is IPropertySymbol property && property.ContainingType.GetMembers(member).Any() => access.Name,
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.ValueText: "As" } } call
            when semantics.GetSymbolInfo(call, cancellation).Symbol is IMethodSymbol method && method.ContainingType.GetMembers(member).Any() => call,
        _ => null,
    };
}
