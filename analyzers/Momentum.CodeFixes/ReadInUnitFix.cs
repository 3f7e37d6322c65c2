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
public sealed class ReadInUnitFix : ExpressionFix
{
    /// <summary>Creates the fix.</summary>
    public ReadInUnitFix()
        : base(
        Descriptors.UnitsAdded,
        Descriptors.UnitsCompared,
        Descriptors.UnitAssigned,
        Descriptors.UnitPassed,
        Descriptors.AngleUnit,
        Descriptors.RotationRates,
        Descriptors.MassAndForce,
        Descriptors.Temperatures)
    {
    }

    private protected override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation) =>
        diagnostic.Properties.TryGetValue(Conversions.ToKey, out string? member) && member is not null
        && Reading.In(marked, semantics, member, cancellation) is { } reading
            ? ($"Read '{member}'", reading, reading switch
            {
                InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax access } => access.WithName(SyntaxFactory.IdentifierName(member)),
                _ => SyntaxFactory.IdentifierName(member),
            })
            : null;
}
