using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Simplification;
using Momentum.Analyzers;
using Momentum.Analyzers.Inference;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>
/// Converts a bare number at the boundary by a quantity: <c>feet</c> becomes <c>Length.FromFeet(feet).Meters</c>. Not offered
/// where a unit is known from one name only.
/// </summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public class ConvertFix : ExpressionFix
{
    /// <summary>Creates the fix.</summary>
    public ConvertFix()
        : base(
        Descriptors.UnitsAdded,
        Descriptors.UnitsCompared,
        Descriptors.UnitAssigned,
        Descriptors.UnitPassed,
        Descriptors.ProductUnit,
        Descriptors.AngleUnit,
        Descriptors.RotationRates,
        Descriptors.MassAndForce)
    {
    }

    private protected ConvertFix(params DiagnosticDescriptor[] mended)
        : base(mended)
    {
    }

    private protected sealed override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation)
    {
        if (!diagnostic.Properties.TryGetValue(Conversions.QuantityKey, out string? quantity)
            || !diagnostic.Properties.TryGetValue(Conversions.FromKey, out string? from)
            || !diagnostic.Properties.TryGetValue(Conversions.ToKey, out string? to)
            || semantics.GetTypeInfo(marked, cancellation) is not { Type: { } type } info || !Types.IsNumeric(type)
            || Reading.In(marked, semantics, to!, cancellation) is not null)
        {
            return null;
        }

        ExpressionSyntax number = marked.WithoutTrivia();
        string cast = Cast(semantics, quantity!, to!, info.ConvertedType ?? type);
        ExpressionSyntax converted = SyntaxFactory.ParseExpression($"{cast}global::UnitsNet.{quantity}.From{from}({number}).{to}")
            .WithAdditionalAnnotations(Simplifier.Annotation);
        converted = converted.ReplaceNodes(
            converted.DescendantNodes().OfType<NameSyntax>().Where(n => n is QualifiedNameSyntax or AliasQualifiedNameSyntax),
            (_, node) => node.WithAdditionalAnnotations(Simplifier.Annotation));
        converted = converted.ReplaceNodes(
            converted.DescendantNodes().OfType<MemberAccessExpressionSyntax>(),
            (_, node) => node.WithAdditionalAnnotations(Simplifier.Annotation));
        return ($"Convert by '{quantity}' from {from} to {to}", marked, converted);
    }

    // A member gives a double, or a decimal; what it replaces may have been another number.
    private static string Cast(SemanticModel semantics, string quantity, string member, ITypeSymbol wanted)
    {
        ITypeSymbol? given = semantics.Compilation.GetTypeByMetadataName("UnitsNet." + quantity)?.GetMembers(member).OfType<IPropertySymbol>().FirstOrDefault()?.Type;
        return given is null || !Types.IsNumeric(wanted) || semantics.Compilation.ClassifyCommonConversion(given, wanted).IsImplicit ? string.Empty : $"({wanted.ToDisplayString()})";
    }
}
