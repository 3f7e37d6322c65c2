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
public sealed class BuildFromUnitFix : ExpressionFix
{
    /// <summary>Creates the fix.</summary>
    public BuildFromUnitFix()
        : base(
        Descriptors.UnitPassed,
        Descriptors.ProductUnit,
        Descriptors.RotationRates,
        Descriptors.MassAndForce,
        Descriptors.Temperatures)
    {
    }

    private protected override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation) =>
        diagnostic.Properties.TryGetValue(Conversions.FromKey, out string? from) && from is not null
        && marked.AncestorsAndSelf().First(n => n.Parent is not ParenthesizedExpressionSyntax).Parent is ArgumentSyntax { Parent.Parent: InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax factory } }
        && factory.Name.Identifier.ValueText.StartsWith("From", StringComparison.Ordinal)
        && semantics.GetSymbolInfo(factory, cancellation).Symbol is IMethodSymbol { IsStatic: true } method
        && method.ContainingType.GetMembers("From" + from).Any()
            ? ($"Build it with 'From{from}'", factory.Name, SyntaxFactory.IdentifierName("From" + from))
            : null;
}
