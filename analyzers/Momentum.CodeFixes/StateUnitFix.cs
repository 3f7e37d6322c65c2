using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeActions;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Editing;
using Microsoft.CodeAnalysis.Formatting;
using Momentum.Analyzers;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.CodeFixes;

/// <summary>States by attribute what a parameter's, field's or property's name says: <c>[Unit("ft")] double lengthFt</c>.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class StateUnitFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(Descriptors.NamesDisagree.Id);

    // A name may be misread: one at a time.
    /// <inheritdoc/>
    public override FixAllProvider? GetFixAllProvider() => null;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        if (await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is not { } semantics
            || await context.Document.GetSyntaxRootAsync(context.CancellationToken).ConfigureAwait(false) is not { } root
            || semantics.Compilation.GetTypeByMetadataName(Declarations.AttributeNamespace + ".UnitAttribute") is null)
        {
            return;
        }

        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            foreach (Location location in diagnostic.AdditionalLocations.Where(l => l.SourceTree == root.SyntaxTree))
            {
                SyntaxNode? declaration = root.FindNode(location.SourceSpan).FirstAncestorOrSelf<SyntaxNode>(n => n is ParameterSyntax or FieldDeclarationSyntax or PropertyDeclarationSyntax);
                string name = root.FindToken(location.SourceSpan.Start).ValueText;
                if (declaration is null or FieldDeclarationSyntax { Declaration.Variables.Count: > 1 } || NameUnits.Read(name) is not { } unit || UnitText.Read(unit.Symbol) is null)
                {
                    continue;
                }

                bool imported = semantics.LookupNamespacesAndTypes(declaration.SpanStart, name: "UnitAttribute").Any(t => t.ContainingNamespace.ToDisplayString() == Declarations.AttributeNamespace);
                string attribute = imported ? "Unit" : $"global::{Declarations.AttributeNamespace}.Unit";
                string title = $"State the unit of '{name}'";
                context.RegisterCodeFix(
                    CodeAction.Create(title, token => State(context.Document, declaration, attribute, unit.Symbol, token), ExpressionFix.Key(title) + name),
                    diagnostic);
            }
        }
    }

    private static async Task<Document> State(Document document, SyntaxNode declaration, string name, string unit, CancellationToken cancellation)
    {
        DocumentEditor editor = await DocumentEditor.CreateAsync(document, cancellation).ConfigureAwait(false);
        SyntaxNode attribute = editor.Generator.Attribute(
                name,
                editor.Generator.AttributeArgument(editor.Generator.LiteralExpression(unit)))
            .WithAdditionalAnnotations(Formatter.Annotation);
        editor.AddAttribute(declaration, attribute);
        return editor.GetChangedDocument();
    }
}
