using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Algebra;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>
/// A number read from a quantity and multiplied by the factor that another member of the same quantity has: the typed
/// conversion is exact and says what it is. Powers of ten, simple fractions and standard gravity may mean something else (a
/// weight over gravity is a mass): they are reported only where the result goes into the unit that they convert to.
/// </summary>
internal sealed class ConversionByHandRule : IObservationRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.ConversionByHand;

    public Diagnostic? Judge(Observation observation, Conversions conversions)
    {
        if (observation.Operation is not IBinaryOperation { OperatorKind: BinaryOperatorKind.Multiply or BinaryOperatorKind.Divide } product
            || observation.Value is not Measured { IsConcrete: true, Evidence: Evidence.Typed, IsComputed: false, Factors.IsEmpty: false } value
            || Escape(product) is not { } escape)
        {
            return null;
        }

        double factor = Literals.Product(value.Factors);
        if (IsAmbiguous(factor)
            || conversions.Scaled(escape.Property.ContainingType.Name, value.Unit!, factor) is not { } target)
        {
            return null;
        }

        return Report(product.Syntax, escape.Syntax.GetLocation(), value.Unit!, target.Unit, target.Member);
    }

    /// <summary>What is wrong with a value that a number converts to what its place expects.</summary>
    internal static Diagnostic? Judge(Meeting meeting, Conversions conversions)
    {
        Measured value = meeting.Actual;
        if (meeting.Weaker != Evidence.Typed || value.IsComputed
            || value.Factors.IsEmpty || value.From.Length != 1 || value.Unit!.Dimension.Cycle != meeting.Expected.Unit!.Dimension.Cycle || value.From[0] is not { Kind: OriginKind.Escape } origin
            || origin.Location.SourceTree != meeting.Site.SyntaxTree || !IsProductOf(meeting.Site, origin.Location)
            || !IsAmbiguous(Literals.Product(value.Factors))
            || !conversions.Between(value.Unit!, meeting.Expected.Unit!).TryGetValue(Conversions.ToKey, out string? member))
        {
            return null;
        }

        return Report(meeting.Site, origin.Location, value.Unit!, meeting.Expected.Unit!, member!);
    }

    private static Diagnostic Report(SyntaxNode product, Location escape, Unit from, Unit to, string member) => Diagnostic.Create(
        Descriptors.ConversionByHand,
        product.GetLocation(),
        ImmutableArray.Create(escape),
        ImmutableDictionary<string, string?>.Empty.Add(Conversions.ToKey, member),
        product.ToString(),
        from.Symbol,
        to.Symbol,
        member);

    private static bool IsAmbiguous(double factor) => Literals.IsPure(factor) || IsPowerOfTen(factor) || Literals.Near(factor, 9.80665) || Literals.Near(factor, 1 / 9.80665);

    private static bool IsPowerOfTen(double factor)
    {
        double power = Math.Log10(Math.Abs(factor));
        return Math.Abs(power - Math.Round(power)) < 1e-9;
    }

    // Only a product of the one number that was read and of plain numbers: in a sum, the number belongs to another term.
    private static bool IsProductOf(SyntaxNode site, Location escape) => site switch
    {
        ParenthesizedExpressionSyntax parenthesized => IsProductOf(parenthesized.Expression, escape),
        CastExpressionSyntax cast => IsProductOf(cast.Expression, escape),
        BinaryExpressionSyntax { RawKind: (int)SyntaxKind.MultiplyExpression or (int)SyntaxKind.DivideExpression } product =>
            (IsProductOf(product.Left, escape) && IsPlain(product.Right)) || (IsPlain(product.Left) && IsProductOf(product.Right, escape)),
        _ => site.Span == escape.SourceSpan,
    };

    private static bool IsPlain(SyntaxNode node) => node.DescendantNodesAndSelf().All(n =>
        n is LiteralExpressionSyntax or ParenthesizedExpressionSyntax or NameSyntax or MemberAccessExpressionSyntax or CastExpressionSyntax or PredefinedTypeSyntax or PrefixUnaryExpressionSyntax
            or BinaryExpressionSyntax { RawKind: (int)SyntaxKind.MultiplyExpression or (int)SyntaxKind.DivideExpression });

    // The member of a quantity that stands in the product itself; a variable read elsewhere is not mended here.
    private static IPropertyReferenceOperation? Escape(IOperation operation) => operation switch
    {
        IPropertyReferenceOperation property when Types.IsQuantity(property.Property.ContainingType) && Sources.Property(property.Property) is not null => property,
        IBinaryOperation { OperatorKind: BinaryOperatorKind.Multiply or BinaryOperatorKind.Divide } binary => Escape(binary.LeftOperand) ?? Escape(binary.RightOperand),
        IParenthesizedOperation parenthesized => Escape(parenthesized.Operand),
        IConversionOperation conversion => Escape(conversion.Operand),
        _ => null,
    };
}
