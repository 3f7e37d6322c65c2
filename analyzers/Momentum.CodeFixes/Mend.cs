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
        CodeAction.Create(title, _ => Task.FromResult(context.Document.WithSyntaxRoot(root.ReplaceNode(old, mended.WithTriviaFrom(old)))), Key(title)),
        diagnostic);

    // One key for one kind of mend, so that fixing all mends all that are mended in the same way.
    internal static string Key(string title) => title.Split('\'')[0];

    /// <summary>In parentheses where it would otherwise come apart.</summary>
    internal static ExpressionSyntax Whole(ExpressionSyntax expression) => expression.WithoutTrivia() is var bare
        && bare is IdentifierNameSyntax or MemberAccessExpressionSyntax or InvocationExpressionSyntax or LiteralExpressionSyntax or ElementAccessExpressionSyntax or ParenthesizedExpressionSyntax
            ? bare
            : SyntaxFactory.ParenthesizedExpression(bare);
}
