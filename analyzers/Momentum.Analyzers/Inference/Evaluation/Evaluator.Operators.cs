using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

// Arithmetic, comparisons, conversions and patterns.
internal sealed partial class Evaluator
{
    private static readonly Unit _kelvin = QuantityMembers.Read("Temperature", "Kelvins")!;

    // Temperatures on a scale with an offset, times a bare number: no unit any more, but known for the gas law they may be in.
    private Dictionary<IOperation, Measured>? _scaledPoints;

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

                Absolute(binary.LeftOperand, left, right);
                Absolute(binary.RightOperand, right, left);
                if ((left, right) is (BareNumber, Measured { Unit.IsPoint: true }) or (Measured { Unit.IsPoint: true }, BareNumber))
                {
                    (_scaledPoints ??= [])[binary] = (Measured)(left is Measured ? left : right);
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

    // In a product with a mass, a pressure or an energy, as in a gas law, only a temperature above absolute zero makes sense.
    private void Absolute(IOperation operand, Inferred temperature, Inferred other)
    {
        while (operand is IParenthesizedOperation or IConversionOperation)
        {
            operand = operand is IParenthesizedOperation parenthesized ? parenthesized.Operand : ((IConversionOperation)operand).Operand;
        }

        if ((temperature as Measured ?? (_scaledPoints?.TryGetValue(operand, out Measured? scaled) == true ? scaled : null)) is { Unit.Kind: Kind.CelsiusPoint or Kind.FahrenheitPoint, Evidence: Evidence.Typed } point
            && other is Measured { IsConcrete: true, Evidence: Evidence.Typed, Unit: { IsPoint: false } unit } && unit.Dimension.Mass != 0 && unit.Dimension.Temperature <= 0)
        {
            SyntaxNode site = operand.Syntax;
            flow.Meet(Role.Product, point, Inferred.In(_kelvin, Evidence.Typed, new Origin(site, OriginKind.Contract)), site, null, other: site.Parent);
        }
    }

    // A typed product keeps its own unit; the frame of the one framed factor stays.
    private static Inferred Scaled(Inferred left, Inferred right) => left.Context.IsNone ? right.OnlyContext() : right.Context.IsNone ? left.OnlyContext() : Inferred.Unknown;

    private Inferred Sum(Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax, bool difference)
    {
        Meet(Role.Sum, left, right, leftSyntax, rightSyntax);
        if (left is BareNumber one && right is BareNumber other)
        {
            return new BareNumber(double.NaN, one.IsVariable || other.IsVariable);
        }

        if (left is Measured { IsConcrete: true } first && right is Measured { IsConcrete: true } second)
        {
            if (difference && first.Unit!.IsPoint && second.Unit!.Equals(first.Unit))
            {
                return Inferred.Unknown;
            }

            // Of two temperatures comes a difference; of a temperature and a difference a temperature.
            if (first.Unit!.Kind == Kind.AbsoluteTemperature || second.Unit!.Kind == Kind.AbsoluteTemperature)
            {
                Measured temperature = first.Unit.Kind == Kind.AbsoluteTemperature ? first : second;
                return second.Unit!.Kind == first.Unit.Kind
                    ? difference ? temperature.In(temperature.Unit!.As(temperature.Unit.Dimension, Kind.TemperatureDifference)) : Inferred.Unknown
                    : temperature.WithContextOf(left, right);
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
        Meet(Role.Remainder, left, right, leftSyntax, rightSyntax);
        return whole && left is not Measured { Evidence: Evidence.Typed } ? Inferred.Unknown : left;
    }

    private void Compare(Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax) =>
        Meet(Role.Compare, left, right, leftSyntax, rightSyntax);

    private void Meet(Role role, Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax) =>
        flow.Meet(role, Turn(right, left, rightSyntax) ?? right, Turn(left, right, leftSyntax) ?? left, rightSyntax, null, leftSyntax);

    // A quarter, a half or a whole turn beside an angle: 180 is in degrees and pi in radians, whoever wrote them.
    private static Measured? Turn(Inferred number, Inferred angle, SyntaxNode syntax)
    {
        if (number is not BareNumber { IsVariable: false } bare || angle is not Measured { IsConcrete: true, Factors.IsEmpty: true, Blurred: false } measured
            || !measured.Unit!.Dimension.Equals(Dimension.Of(angle: 1)))
        {
            return null;
        }

        double size = Math.Abs(bare.Value);
        string? unit = size is 90 or 180 or 270 or 360 ? "deg" : size is > 1.5 and < 6.3 && Literals.Near(size / (Math.PI / 2), Math.Round(size / (Math.PI / 2)), 1e-6) ? "rad" : null;
        return unit is not null && UnitText.Read(unit) is { } turn && measured.Unit.Equals(UnitText.Read(unit == "deg" ? "rad" : "deg"))
            ? Inferred.In(turn, Evidence.Typed, new Origin(syntax, OriginKind.Contract))
            : null;
    }

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
