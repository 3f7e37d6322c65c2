using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeActions;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Momentum.CodeFixes;

/// <summary>What the fixes share: finding the expression that a diagnostic marks, and replacing it.</summary>
internal static class Mend
{
    internal static async Task<(SyntaxNode Root, ExpressionSyntax Expression)?> Find(CodeFixContext context, Diagnostic diagnostic)
    {
        SyntaxNode? root = await context.Document.GetSyntaxRootAsync(context.CancellationToken).ConfigureAwait(false);
        return root?.FindNode(diagnostic.Location.SourceSpan, getInnermostNodeForTie: true) is ExpressionSyntax expression ? (root, expression) : null;
    }

    internal static void Replace(CodeFixContext context, Diagnostic diagnostic, string title, SyntaxNode root, SyntaxNode old, SyntaxNode mended) => context.RegisterCodeFix(
        CodeAction.Create(title, _ => Task.FromResult(context.Document.WithSyntaxRoot(root.ReplaceNode(old, WithComments(old, mended)))), Key(title)),
        diagnostic);

    /// <summary>
    /// What of an expression is to be exchanged so that a quantity is read in another unit: the member's name, or the call of
    /// <c>As</c>; null where the expression is not one reading, in parentheses, with a sign or a cast perhaps.
    /// </summary>
    internal static ExpressionSyntax? Reading(ExpressionSyntax expression, SemanticModel semantics, string member, CancellationToken cancellation) => expression switch
    {
        ParenthesizedExpressionSyntax parenthesized => Reading(parenthesized.Expression, semantics, member, cancellation),
        CastExpressionSyntax cast => Reading(cast.Expression, semantics, member, cancellation),
        PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression or (int)SyntaxKind.UnaryPlusExpression } sign => Reading(sign.Operand, semantics, member, cancellation),
        MemberAccessExpressionSyntax access when semantics.GetSymbolInfo(access, cancellation).Symbol is IPropertySymbol property && property.ContainingType.GetMembers(member).Any() => access.Name,
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.ValueText: "As" } } call
            when semantics.GetSymbolInfo(call, cancellation).Symbol is IMethodSymbol method && method.ContainingType.GetMembers(member).Any() => call,
        _ => null,
    };

    // Comments inside what goes stand before what comes.
    private static SyntaxNode WithComments(SyntaxNode old, SyntaxNode mended)
    {
        HashSet<string> kept = [.. mended.DescendantTrivia().Select(t => t.ToString())];
        IEnumerable<SyntaxTrivia> around = old.GetLeadingTrivia().Concat(old.GetTrailingTrivia());
        SyntaxTrivia[] lost = [.. old.DescendantTrivia().Where(t => t.RawKind is (int)SyntaxKind.SingleLineCommentTrivia or (int)SyntaxKind.MultiLineCommentTrivia && !kept.Contains(t.ToString()) && !around.Contains(t))];
        SyntaxTriviaList leading = old.GetLeadingTrivia();
        foreach (SyntaxTrivia comment in lost)
        {
            leading = leading.Add(comment).Add(comment.RawKind == (int)SyntaxKind.SingleLineCommentTrivia ? SyntaxFactory.ElasticLineFeed : SyntaxFactory.Space);
        }

        return mended.WithLeadingTrivia(leading).WithTrailingTrivia(old.GetTrailingTrivia());
    }

    // One key for one kind of mend, so that fixing all mends all that are mended in the same way.
    internal static string Key(string title) => title.Split('\'')[0];

    /// <summary>In parentheses where it would otherwise come apart.</summary>
    internal static ExpressionSyntax Whole(ExpressionSyntax expression) => expression.WithoutTrivia() is var bare
        && bare is IdentifierNameSyntax or MemberAccessExpressionSyntax or InvocationExpressionSyntax or LiteralExpressionSyntax or ElementAccessExpressionSyntax or ParenthesizedExpressionSyntax
            ? bare
            : SyntaxFactory.ParenthesizedExpression(bare);
}
