using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>An attribute whose unit cannot be read would be silently without effect.</summary>
internal static class UnitTextRule
{
    internal const string SuggestionKey = "Suggestion";

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
            string? suggestion = Suggestion(text);
            context.ReportDiagnostic(Diagnostic.Create(
                Descriptor,
                argument.GetLocation(),
                suggestion is null ? null : ImmutableDictionary<string, string?>.Empty.Add(SuggestionKey, suggestion),
                text,
                suggestion is null ? "write it as rad/s, kg*m^2 or lbf*in" : $"write '{suggestion}'"));
        }
    }

    /// <summary>What was most likely meant by a text that cannot be read: <c>Nm</c> is <c>N*m</c>, <c>RPM</c> is <c>rpm</c>; null where nothing is near.</summary>
    internal static string? Suggestion(string text)
    {
        string trimmed = text.Trim();
        bool oneCase = trimmed.Any(char.IsUpper) != trimmed.Any(char.IsLower);
        return Abbreviations.Text(trimmed.ToLowerInvariant()) ?? (oneCase ? Cased(trimmed) ?? Parted(trimmed) : Parted(trimmed) ?? Cased(trimmed)) ?? (NameUnits.Read("x_" + trimmed) ?? UnitWords.Read(trimmed)) switch
        {
            { } unit when UnitText.Read(unit.Symbol) is not null => unit.Symbol,
            _ => null,
        };
    }

    // Capitals where there are none, or the reverse.
    private static string? Cased(string text) => new[] { text.ToLowerInvariant(), text.Length > 0 ? char.ToUpperInvariant(text[0]) + text.Substring(1).ToLowerInvariant() : text }
        .FirstOrDefault(other => other != text && UnitText.Read(other) is not null);

    // Factors written together: Nm, kgm2, lbfin, Nms.
    private static string? Parted(string text)
    {
        string powers = text.Replace("2", "^2").Replace("3", "^3").Replace("^^", "^");
        for (int first = 1; first < powers.Length; first++)
        {
            string two = powers.Insert(first, "*");
            if (char.IsLetter(powers[first]) && UnitText.Read(two) is not null)
            {
                return two;
            }
        }

        for (int first = 1; first < powers.Length; first++)
        {
            for (int second = first + 2; second <= powers.Length; second++)
            {
                string three = powers.Insert(first, "*").Insert(second, "*");
                if (second <= powers.Length && UnitText.Read(three) is not null)
                {
                    return three;
                }
            }
        }

        return null;
    }
}
