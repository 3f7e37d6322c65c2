using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>An attribute whose unit cannot be read would be silently without effect.</summary>
internal static class UnitTextRule
{
    internal static DiagnosticDescriptor Descriptor => Descriptors.UnitText;

    internal static void Check(SyntaxNodeAnalysisContext context)
    {
        AttributeSyntax attribute = (AttributeSyntax)context.Node;
        if (attribute.Name.ToString() is { } name && (name.EndsWith("Unit", StringComparison.Ordinal) || name.EndsWith("UnitAttribute", StringComparison.Ordinal))
            && attribute.ArgumentList?.Arguments.FirstOrDefault()?.Expression is { } argument
            && context.SemanticModel.GetConstantValue(argument, context.CancellationToken) is { HasValue: true, Value: string text }
            && UnitText.Read(text) is null
            && context.SemanticModel.GetSymbolInfo(attribute, context.CancellationToken).Symbol?.ContainingType is { Name: "UnitAttribute" } type
            && type.ContainingNamespace.ToDisplayString() == Declarations.AttributeNamespace)
        {
            context.ReportDiagnostic(Diagnostic.Create(Descriptor, argument.GetLocation(), text));
        }
    }
}
