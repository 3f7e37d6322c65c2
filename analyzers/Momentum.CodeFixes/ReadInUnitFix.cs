using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>Reads the quantity in the unit that the place expects: <c>length.Feet</c> becomes <c>length.Meters</c>.</summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class ReadInUnitFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(
        Descriptors.UnitsAdded.Id,
        Descriptors.UnitsCompared.Id,
        Descriptors.UnitAssigned.Id,
        Descriptors.UnitPassed.Id,
        Descriptors.AngleUnit.Id,
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
            if (diagnostic.Properties.TryGetValue(Conversions.ToKey, out string? member) && member is not null
                && await Mend.Find(context, diagnostic).ConfigureAwait(false) is ({ } root, { } expression)
                && await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is { } semantics
                && Mend.Reading(expression, semantics, member, context.CancellationToken) is { } reading)
            {
                Mend.Replace(context, diagnostic, $"Read '{member}'", root, reading, reading switch
                {
                    InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax access } => access.WithName(SyntaxFactory.IdentifierName(member)),
                    _ => SyntaxFactory.IdentifierName(member),
                });
            }
        }
    }
}
