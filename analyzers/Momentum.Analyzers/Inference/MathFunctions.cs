using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>What the functions of <c>Math</c>, <c>MathF</c> and the floating types do with units.</summary>
internal static class MathFunctions
{
    private static readonly Unit _radian = UnitText.Read("rad")!;
    private static readonly Unit _degree = UnitText.Read("deg")!;

    internal static bool IsMath(IMethodSymbol method) =>
        method.IsStatic && method.ContainingType is { ContainingNamespace.Name: "System", Name: "Math" or "MathF" or "Double" or "Single" or "Decimal" };

    internal static Inferred Evaluate(Flow flow, IInvocationOperation call, ImmutableArray<Inferred> arguments)
    {
        string name = call.TargetMethod.Name;
        Origin origin = new(call.Syntax, OriginKind.Contract);
        Inferred first = arguments.Length > 0 ? arguments[0] : Inferred.Unknown;
        if (Contract(call.TargetMethod, origin) is { } contract)
        {
            Angle(flow, call, first, contract.Taken);
            return contract.Given;
        }

        switch (name)
        {
            case "SinCos":
                Angle(flow, call, first, Inferred.In(_radian, Evidence.Typed, origin));
                return new TupleValue(ImmutableArray.Create<Inferred>(Inferred.In(Unit.One, Evidence.Typed, origin), Inferred.In(Unit.One, Evidence.Typed, origin)));
            case "Asin" or "Acos" or "Atan":
                return Inferred.In(_radian, Evidence.Typed, origin);
            case "Atan2":
                Alike(flow, call, arguments);
                return Inferred.In(_radian, Evidence.Typed, origin);
            case "Abs" or "Round" or "Floor" or "Ceiling" or "Truncate" or "BitIncrement" or "BitDecrement" or "CopySign":
                return first;
            case "Min" or "Max" or "Clamp" or "MaxMagnitude" or "MinMagnitude" or "IEEERemainder" or "MinNumber" or "MaxNumber" or "Hypot":
                return Alike(flow, call, arguments);
            case "Log" or "Log10" or "Log2" or "Exp" or "Sinh" or "Cosh" or "Tanh" or "LogP1" or "ExpM1":
                Ratio(flow, call, 0, first);
                return Inferred.Unknown;
            case "Sqrt":
                Ratio(flow, call, 0, first);
                return first.Power(Dimension.Whole / 2);
            case "Cbrt":
                return first.Power(Dimension.Whole / 3);
            case "Pow" when arguments.Length == 2 && arguments[1] is Measured { Unit: not null } exponent:
                Ratio(flow, call, 1, exponent);
                return Inferred.Unknown;
            case "Pow" when arguments.Length == 2 && arguments[1] is BareNumber { Value: var power } && Math.Abs(power) <= 6 && Literals.Near(power * Dimension.Whole, Math.Round(power * Dimension.Whole), 1e-9):
                return first.Power((int)Math.Round(power * Dimension.Whole));
            case "FusedMultiplyAdd" when arguments.Length == 3:
                Inferred product = first.Times(arguments[1]);
                flow.Meet(Role.Sum, arguments[2], product, call.Arguments[2].Value.Syntax, null, call.Arguments[0].Value.Syntax);
                return product.HasUnit ? product : arguments[2];
            case "Lerp" when arguments.Length == 3:
                return Alike(flow, call, arguments.RemoveAt(2));
            case "ReciprocalEstimate":
                return first.Power(-Dimension.Whole);
            default:
                return Inferred.Unknown;
        }
    }

    /// <summary>What a function of one angle takes and gives; null for any other function.</summary>
    internal static (Measured Taken, Measured Given)? Contract(IMethodSymbol method, Origin origin)
    {
        (Unit Taken, Unit Given)? units = IsMath(method)
            ? method.Name switch
            {
                "Sin" or "Cos" or "Tan" => (_radian, Unit.One),
                "DegreesToRadians" => (_degree, _radian),
                "RadiansToDegrees" => (_radian, _degree),
                _ => null,
            }
            : null;
        return units is { } known ? (Inferred.In(known.Taken, Evidence.Typed, origin), Inferred.In(known.Given, Evidence.Typed, origin)) : null;
    }

    private static void Angle(Flow flow, IInvocationOperation call, Inferred value, Inferred taken) => flow.Meet(Role.AngleArgument, value, taken, call.Arguments[0].Value.Syntax, call.TargetMethod);

    // Of two units of one dimension only the ratio in one unit is a pure number.
    private static void Ratio(Flow flow, IInvocationOperation call, int at, Inferred value)
    {
        if (value is Measured { IsComputed: true, Evidence: Evidence.Typed, Blurred: false, Factors.IsEmpty: true, Unit.IsRatioOfLike: true })
        {
            IOperation argument = call.Arguments[at].Value;
            flow.Meet(Role.Argument, value, Inferred.In(Unit.One, Evidence.Typed, new Origin(call.Syntax, OriginKind.Contract)), argument.Syntax, call.TargetMethod);
        }
    }

    private static Inferred Alike(Flow flow, IInvocationOperation call, ImmutableArray<Inferred> arguments)
    {
        Inferred? common = null;
        IOperation? other = null;
        for (int i = 0; i < arguments.Length; i++)
        {
            if (!arguments[i].HasUnit)
            {
                continue;
            }

            if (common is null)
            {
                common = arguments[i];
                other = call.Arguments[i].Value;
            }
            else
            {
                flow.Meet(Role.Compare, arguments[i], common, call.Arguments[i].Value.Syntax, call.TargetMethod, other!.Syntax);
            }
        }

        return common ?? Inferred.Unknown;
    }
}
