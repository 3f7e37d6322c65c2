using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeActions;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Momentum.CodeFixes;

/// <summary>A fix that puts one node in the place of another, in or around the expression that a diagnostic marks.</summary>
public abstract class ExpressionFix : CodeFixProvider
{
    private protected ExpressionFix(params DiagnosticDescriptor[] mended) => FixableDiagnosticIds = mended.Select(d => d.Id).ToImmutableArray();

    /// <inheritdoc/>
    public sealed override ImmutableArray<string> FixableDiagnosticIds { get; }

    // What rests on a name is mended one at a time, by somebody who looks: dotnet format and "fix all" would change the
    // numbers of right code wherever a name was misread.
    /// <inheritdoc/>
    public sealed override FixAllProvider? GetFixAllProvider() => RestsOnNames ? null : WellKnownFixAllProviders.BatchFixer;

    private protected virtual bool RestsOnNames => false;

    /// <inheritdoc/>
    public sealed override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        if (await context.Document.GetSyntaxRootAsync(context.CancellationToken).ConfigureAwait(false) is not { } root
            || await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is not { } semantics)
        {
            return;
        }

        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            if (root.FindNode(diagnostic.Location.SourceSpan, getInnermostNodeForTie: true) is ExpressionSyntax marked
                && Mend(marked, diagnostic, semantics, context.CancellationToken) is var (title, old, mended))
            {
                context.RegisterCodeFix(
                    CodeAction.Create(title, _ => Task.FromResult(context.Document.WithSyntaxRoot(root.ReplaceNode(old, WithComments(old, mended)))), Key(title)),
                    diagnostic);
            }
        }
    }

    /// <summary>One key for one kind of mend, so that fixing all mends all that are mended in the same way.</summary>
    internal static string Key(string title) => title.Split('\'')[0];

    /// <summary>The fix's title, the node that goes and the one that comes; null where there is nothing to offer.</summary>
    private protected abstract (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation);

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
}
