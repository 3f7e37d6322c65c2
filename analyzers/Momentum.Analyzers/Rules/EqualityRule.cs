using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Inference;

namespace Momentum.Analyzers.Rules;

/// <summary>
/// Floating-point measured values compared with == or !=. A comparison with a literal or with zero is a guard and let be; so
/// is one inside the members that define equality, and of points and directions, which are compared to see whether they are
/// one and the same.
/// </summary>
internal sealed class EqualityRule : IObservationRule
{
    public DiagnosticDescriptor Descriptor => Descriptors.Equality;

    public Diagnostic? Judge(Observation observation, Conversions conversions) =>
        observation.Operation is IBinaryOperation { OperatorKind: BinaryOperatorKind.Equals or BinaryOperatorKind.NotEquals } comparison
        && IsMeasured(comparison.LeftOperand, observation.Value) && IsMeasured(comparison.RightOperand, observation.Value)
        && !observation.Owner.Name.StartsWith("Equals", StringComparison.Ordinal)
        && observation.Owner.Name is not ("op_Equality" or "op_Inequality" or "GetHashCode" or "CompareTo")
            ? Diagnostic.Create(Descriptor, comparison.Syntax.GetLocation(), comparison.Syntax.ToString())
            : null;

    private static bool IsMeasured(IOperation operand, Inferred better)
    {
        while (operand is IConversionOperation { OperatorMethod: null } conversion)
        {
            operand = conversion.Operand;
        }

        if (operand.ConstantValue.HasValue || operand is IDefaultValueOperation or ILiteralOperation
            || operand is IPropertyReferenceOperation { Property: { IsStatic: true, Name: "Zero" } })
        {
            return false;
        }

        return operand.Type is { IsValueType: true } type
            && ((type.SpecialType is SpecialType.System_Double or SpecialType.System_Single && better is Measured { IsConcrete: true, Evidence: Evidence.Typed })
                || (Types.IsQuantity(type) && type.Name is not ("Position" or "Direction" or "PointInertia" or "MassProperties")));
    }
}
