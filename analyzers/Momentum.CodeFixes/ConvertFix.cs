using System.Collections.Immutable;
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
public sealed class ConvertFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(
        Descriptors.UnitsAdded.Id,
        Descriptors.UnitsCompared.Id,
        Descriptors.UnitAssigned.Id,
        Descriptors.UnitPassed.Id,
        Descriptors.ProductUnit.Id,
        Descriptors.AngleUnit.Id,
        Descriptors.RotationRates.Id,
        Descriptors.MassAndForce.Id,
        Descriptors.NamesDisagree.Id);

    /// <inheritdoc/>
    public override FixAllProvider GetFixAllProvider() => WellKnownFixAllProviders.BatchFixer;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            ImmutableDictionary<string, string?> properties = diagnostic.Properties;
            if (!properties.TryGetValue(Conversions.QuantityKey, out string? quantity)
                || !properties.TryGetValue(Conversions.FromKey, out string? from)
                || !properties.TryGetValue(Conversions.ToKey, out string? to)
                || await Mend.Find(context, diagnostic).ConfigureAwait(false) is not ({ } root, { } expression)
                || await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is not { } semantics
                || semantics.GetTypeInfo(expression, context.CancellationToken) is not { Type: { } type } info || !Types.IsNumeric(type)
                || Mend.Reading(expression, semantics, to!, context.CancellationToken) is not null)
            {
                continue;
            }

            ExpressionSyntax number = expression.WithoutTrivia();
            string cast = Cast(semantics, quantity!, to!, info.ConvertedType ?? type);
            ExpressionSyntax converted = SyntaxFactory.ParseExpression($"{cast}global::UnitsNet.{quantity}.From{from}({number}).{to}")
                .WithAdditionalAnnotations(Simplifier.Annotation);
            converted = converted.ReplaceNodes(
                converted.DescendantNodes().OfType<NameSyntax>().Where(n => n is QualifiedNameSyntax or AliasQualifiedNameSyntax),
                (_, node) => node.WithAdditionalAnnotations(Simplifier.Annotation));
            converted = converted.ReplaceNodes(
                converted.DescendantNodes().OfType<MemberAccessExpressionSyntax>(),
                (_, node) => node.WithAdditionalAnnotations(Simplifier.Annotation));
            Mend.Replace(context, diagnostic, $"Convert by '{quantity}' from {from} to {to}", root, expression, converted);
        }
    }

    // A member gives a double, or a decimal; what it replaces may have been another number.
    private static string Cast(SemanticModel semantics, string quantity, string member, ITypeSymbol wanted)
    {
        ITypeSymbol? given = semantics.Compilation.GetTypeByMetadataName("UnitsNet." + quantity)?.GetMembers(member).OfType<IPropertySymbol>().FirstOrDefault()?.Type;
        return given is null || !Types.IsNumeric(wanted) || semantics.Compilation.ClassifyCommonConversion(given, wanted).IsImplicit ? string.Empty : $"({wanted.ToDisplayString()})";
    }
}
