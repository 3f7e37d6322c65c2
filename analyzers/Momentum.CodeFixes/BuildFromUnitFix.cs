using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>Builds the quantity from the unit that the number is in: <c>Length.FromMeters(feet)</c> becomes <c>Length.FromFeet(feet)</c>.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class BuildFromUnitFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(
        Descriptors.UnitPassed.Id,
        Descriptors.ProductUnit.Id,
        Descriptors.RotationRates.Id,
        Descriptors.MassAndForce.Id,
        Descriptors.Temperatures.Id);

    /// <inheritdoc/>
    public override FixAllProvider GetFixAllProvider() => WellKnownFixAllProviders.BatchFixer;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            if (diagnostic.Properties.TryGetValue(Conversions.FromKey, out string? from) && from is not null
                && await Mend.Find(context, diagnostic).ConfigureAwait(false) is ({ } root, { } expression)
                && expression.AncestorsAndSelf().First(n => n.Parent is not ParenthesizedExpressionSyntax).Parent is ArgumentSyntax { Parent.Parent: InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax factory } }
                && factory.Name.Identifier.ValueText.StartsWith("From", StringComparison.Ordinal)
                && await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is { } semantics
                && semantics.GetSymbolInfo(factory, context.CancellationToken).Symbol is IMethodSymbol { IsStatic: true } method
                && method.ContainingType.GetMembers("From" + from).Any())
            {
                Mend.Replace(context, diagnostic, $"Build it with 'From{from}'", root, factory.Name, SyntaxFactory.IdentifierName("From" + from));
            }
        }
    }
}
