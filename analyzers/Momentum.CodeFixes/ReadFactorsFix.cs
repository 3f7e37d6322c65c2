using System.Composition;
using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>
/// Reads the quantities of a product in units that give the expected one: <c>inertia.KilogramSquareMeters *
/// spin.RevolutionsPerMinute</c> becomes <c>inertia.KilogramSquareMeters * spin.RadiansPerSecond</c>. One quantity in another
/// unit where that is enough; else, where SI is expected, all of them in SI.
/// </summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class ReadFactorsFix : ExpressionFix
{
    private const double Tolerance = 1e-9;

    /// <summary>Creates the fix.</summary>
    public ReadFactorsFix()
        : base(
        Descriptors.ProductUnit,
        Descriptors.UnitsAdded,
        Descriptors.UnitsCompared,
        Descriptors.AngleUnit,
        Descriptors.RotationRates,
        Descriptors.MassAndForce)
    {
    }

    private protected override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation) =>
        diagnostic.Properties.TryGetValue(Conversions.RatioKey, out string? text)
        && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double ratio)
        && marked is not MemberAccessExpressionSyntax
        && Factors(marked, semantics, cancellation) is { Count: > 0 } factors
        && (One(factors, ratio) ?? (diagnostic.Properties[Conversions.CoherentKey] == "true" ? All(factors) : null)) is { Count: > 0 } names
            ? (
                $"Read in units that fit: '{string.Join("', '", names.Values.Distinct())}'",
                marked,
                marked.ReplaceNodes(names.Keys, (old, _) => SyntaxFactory.IdentifierName(names[old]).WithTriviaFrom(old)))
            : null;

    // The members that the expression multiplies, each with the power it stands in; null where it is not a product of such.
    private static List<Factor>? Factors(ExpressionSyntax product, SemanticModel semantics, CancellationToken cancellation)
    {
        List<Factor> factors = [];
        return Collect(product, 1) ? factors : null;

        bool Collect(ExpressionSyntax expression, int power) => expression switch
        {
            ParenthesizedExpressionSyntax parenthesized => Collect(parenthesized.Expression, power),
            CastExpressionSyntax cast => Collect(cast.Expression, power),
            PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression } minus => Collect(minus.Operand, power),
            BinaryExpressionSyntax { RawKind: (int)SyntaxKind.MultiplyExpression } times => Collect(times.Left, power) && Collect(times.Right, power),
            BinaryExpressionSyntax { RawKind: (int)SyntaxKind.DivideExpression } over => Collect(over.Left, power) && Collect(over.Right, -power),
            InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.ValueText: "Pow" }, ArgumentList.Arguments: { Count: 2 } arguments }
                when semantics.GetConstantValue(arguments[1].Expression, cancellation) is { HasValue: true, Value: int or double } exponent
                    && Convert.ToDouble(exponent.Value, CultureInfo.InvariantCulture) is var number && number == Math.Round(number) && Math.Abs(number) < 9 =>
                Collect(arguments[0].Expression, power * (int)number),
            MemberAccessExpressionSyntax access when semantics.GetSymbolInfo(access, cancellation).Symbol is IPropertySymbol property && Types.IsQuantity(property.ContainingType)
                && Sources.Property(property) is { } unit => Add(new Factor(access.Name, property.ContainingType, unit, power)),
            _ => semantics.GetConstantValue(expression, cancellation).HasValue,
        };

        bool Add(Factor factor)
        {
            factors.Add(factor);
            return true;
        }
    }

    // One member, wherever it stands, read in another unit.
    private static Dictionary<SimpleNameSyntax, string>? One(List<Factor> factors, double ratio)
    {
        foreach (IGrouping<string, Factor> same in factors.GroupBy(f => f.Type.Name + "." + f.Name.Identifier.ValueText))
        {
            Factor first = same.First();
            int power = same.Sum(f => f.Power);
            foreach ((string name, Unit unit) in Members(first.Type).OrderByDescending(m => m.Unit.Scale.Equals(Scale.One)))
            {
                UnitMatch match = UnitMatch.Between(first.Unit, unit);
                if (power != 0 && match.DimensionsAgree && Math.Abs(Math.Pow(match.Ratio.Value, power) - ratio) <= Tolerance * ratio)
                {
                    return same.ToDictionary(f => f.Name, _ => name);
                }
            }
        }

        return null;
    }

    private static Dictionary<SimpleNameSyntax, string>? All(List<Factor> factors)
    {
        Dictionary<SimpleNameSyntax, string> names = [];
        foreach (Factor factor in factors.Where(f => !f.Unit.Scale.Equals(Scale.One)))
        {
            string? name = Members(factor.Type).Where(m => m.Unit.Scale.Equals(Scale.One) && m.Unit.Dimension.Equals(factor.Unit.Dimension)).Select(m => m.Name).FirstOrDefault();
            if (name is null)
            {
                return null;
            }

            names.Add(factor.Name, name);
        }

        return names;
    }

    private static IEnumerable<(string Name, Unit Unit)> Members(INamedTypeSymbol quantity) => quantity.GetMembers().OfType<IPropertySymbol>()
        .Where(p => !p.IsStatic && Types.IsNumeric(p.Type) && Sources.Property(p) is not null)
        .Select(p => (p.Name, Sources.Property(p)!));

    private sealed class Factor(SimpleNameSyntax name, INamedTypeSymbol type, Unit unit, int power)
    {
        internal SimpleNameSyntax Name { get; } = name;

        internal INamedTypeSymbol Type { get; } = type;

        internal Unit Unit { get; } = unit;

        internal int Power { get; } = power;
    }
}
