using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace Momentum.Analyzers.Inference;

// Arithmetic, comparisons, conversions and patterns.
internal sealed partial class Evaluator
{
    private Inferred Convert(IConversionOperation conversion)
    {
        if (conversion.Operand.ConstantValue is { HasValue: true, Value: null } && Types.BearsNumbers(conversion.Type))
        {
            return Inferred.Bare(0);
        }

        Inferred operand = Evaluate(conversion.Operand);
        // UnitsNet takes its numbers through a conversion of its own.
        return conversion.OperatorMethod is null || conversion.Type?.Name is "QuantityValue" or "ReadOnlySpan" or "Span" || Types.IsNumeric(conversion.Type) ? operand : operand.OnlyContext();
    }

    private Inferred Unary(IUnaryOperation unary)
    {
        Inferred operand = Evaluate(unary.Operand);
        return unary.OperatorKind switch
        {
            UnaryOperatorKind.Minus => operand.Negated(),
            UnaryOperatorKind.Plus => operand,
            _ => Inferred.Unknown,
        };
    }

    private Inferred Binary(IBinaryOperation binary)
    {
        Inferred left = Evaluate(binary.LeftOperand);
        Inferred right = Evaluate(binary.RightOperand);
        switch (binary.OperatorKind)
        {
            case BinaryOperatorKind.Add:
            case BinaryOperatorKind.Subtract:
                if (binary.Type?.SpecialType == SpecialType.System_String)
                {
                    return Inferred.Unknown;
                }

                return Sum(left, right, binary.LeftOperand.Syntax, binary.RightOperand.Syntax, binary.OperatorKind == BinaryOperatorKind.Subtract);
            case BinaryOperatorKind.Multiply:
            case BinaryOperatorKind.Divide:
                if (binary.OperatorMethod is not null && Types.IsQuantity(binary.Type))
                {
                    return Scaled(left, right);
                }

                Inferred product = binary.OperatorKind == BinaryOperatorKind.Multiply ? left.Times(right) : left.Over(right);
                if (product is Measured { Factors.IsEmpty: false, IsComputed: false })
                {
                    flow.Observe(binary, product);
                }

                return product;
            case BinaryOperatorKind.Remainder:
                return Remainder(left, right, binary.LeftOperand.Syntax, binary.RightOperand.Syntax, Types.IsInteger(binary.Type));
            case BinaryOperatorKind.Equals:
            case BinaryOperatorKind.NotEquals:
                flow.Observe(binary, left is Measured { IsConcrete: true, Evidence: Evidence.Typed } ? left : right);
                Compare(left, right, binary.LeftOperand.Syntax, binary.RightOperand.Syntax);
                return Inferred.Unknown;
            case BinaryOperatorKind.LessThan:
            case BinaryOperatorKind.LessThanOrEqual:
            case BinaryOperatorKind.GreaterThan:
            case BinaryOperatorKind.GreaterThanOrEqual:
                Compare(left, right, binary.LeftOperand.Syntax, binary.RightOperand.Syntax);
                return Inferred.Unknown;
            default:
                return Inferred.Unknown;
        }
    }

    // A typed product keeps its own unit; the frame of the one framed factor stays.
    private static Inferred Scaled(Inferred left, Inferred right) => left.Context.IsNone ? right.OnlyContext() : right.Context.IsNone ? left.OnlyContext() : Inferred.Unknown;

    private Inferred Sum(Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax, bool difference)
    {
        flow.Meet(Role.Sum, right, left, rightSyntax, null, leftSyntax);
        if (left is BareNumber one && right is BareNumber other)
        {
            return new BareNumber(double.NaN, one.IsVariable || other.IsVariable);
        }

        if (left is Measured { IsConcrete: true } first && right is Measured { IsConcrete: true } second)
        {
            if (difference && first.Unit!.IsTemperaturePoint && second.Unit!.Equals(first.Unit))
            {
                return Inferred.Unknown;
            }

            // Whichever was not multiplied by bare numbers says the unit best.
            Measured best = first.Evidence == second.Evidence && !first.Factors.IsEmpty && second.Factors.IsEmpty ? second
                : second.Evidence > first.Evidence && Agreements.Of(first, second) != Agreement.Disagree ? second
                : first;
            return best.WithContextOf(left, right);
        }

        Inferred known = left.IsConcrete ? left : right.IsConcrete ? right : left.HasUnit ? left : right.HasUnit ? right : left.Context.IsNone ? right.OnlyContext() : left.OnlyContext();
        return known.WithContextOf(left, right);
    }

    // What is left over is in the same unit. Of whole numbers it is as a rule the next smaller unit of a mixed measure:
    // hours = minutes % 60 takes apart what a name can not say.
    private Inferred Remainder(Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax, bool whole)
    {
        flow.Meet(Role.Remainder, right, left, rightSyntax, null, leftSyntax);
        return whole && left is not Measured { Evidence: Evidence.Typed } ? Inferred.Unknown : left;
    }

    private void Compare(Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax) =>
        flow.Meet(Role.Compare, right, left, rightSyntax, null, leftSyntax);

    private Inferred Matched(IIsPatternOperation pattern)
    {
        Match(pattern.Pattern, Evaluate(pattern.Value));
        return Inferred.Unknown;
    }

    // What a pattern names holds what it was matched with.
    private void Match(IPatternOperation? pattern, Inferred value)
    {
        switch (pattern)
        {
            case IDeclarationPatternOperation { DeclaredSymbol: { } declared }:
                state[declared] = value;
                break;
            case IRecursivePatternOperation recursive:
                if (recursive.DeclaredSymbol is { } whole)
                {
                    state[whole] = value;
                }

                foreach (IPropertySubpatternOperation property in recursive.PropertySubpatterns)
                {
                    Match(property.Pattern, Evaluate(property.Member));
                }

                for (int i = 0; i < recursive.DeconstructionSubpatterns.Length; i++)
                {
                    Match(recursive.DeconstructionSubpatterns[i], (value as TupleValue)?[i] ?? Inferred.Unknown);
                }

                break;
            case IBinaryPatternOperation both:
                Match(both.LeftPattern, value);
                Match(both.RightPattern, value);
                break;
        }
    }
}
