using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeActions;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Rename;
using Momentum.Analyzers;
using Momentum.Analyzers.Inference;

namespace Momentum.CodeFixes;

/// <summary>Renames a local variable after the unit of what is stored in it: <c>depthM = lengthMm</c> becomes <c>depthMm</c>.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class RenameFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(Descriptors.NamesDisagree.Id);

    // Renaming touches every use of a name: one at a time.
    /// <inheritdoc/>
    public override FixAllProvider? GetFixAllProvider() => null;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        if (await context.Document.GetSyntaxRootAsync(context.CancellationToken).ConfigureAwait(false) is not { } root
            || await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is not { } semantics)
        {
            return;
        }

        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            if (root.FindNode(diagnostic.Location.SourceSpan, getInnermostNodeForTie: true) is IdentifierNameSyntax { Parent: EqualsValueClauseSyntax { Parent: VariableDeclaratorSyntax variable } } value
                && semantics.GetDeclaredSymbol(variable, context.CancellationToken) is ILocalSymbol local
                && NameUnits.Renamed(local.Name, value.Identifier.ValueText) is { } name)
            {
                string title = $"Rename '{local.Name}' to '{name}'";
                context.RegisterCodeFix(
                    CodeAction.Create(title, token => Renamer.RenameSymbolAsync(context.Document.Project.Solution, local, default, name, token), ExpressionFix.Key(title)),
                    diagnostic);
            }
        }
    }
}
