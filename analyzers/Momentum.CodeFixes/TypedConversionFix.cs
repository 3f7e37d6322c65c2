using System.Collections.Immutable;
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
public sealed class TypedConversionFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(Descriptors.ConversionByHand.Id);

    /// <inheritdoc/>
    public override FixAllProvider GetFixAllProvider() => WellKnownFixAllProviders.BatchFixer;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            if (diagnostic.Properties.TryGetValue(Conversions.ToKey, out string? member) && member is not null
                && await Mend.Find(context, diagnostic).ConfigureAwait(false) is ({ } root, { } product)
                && diagnostic.AdditionalLocations.Count == 1
                && product.FindNode(diagnostic.AdditionalLocations[0].SourceSpan, getInnermostNodeForTie: true) is MemberAccessExpressionSyntax access)
            {
                Mend.Replace(context, diagnostic, $"Read '{member}'", root, product, access.WithName(SyntaxFactory.IdentifierName(member)).WithoutTrivia());
            }
        }
    }
}
