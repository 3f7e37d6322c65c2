using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

// Numbers that go into quantities, vectors and tensors, and come out of them.
internal sealed partial class Evaluator
{
    /// <summary>Members of quantity types, and of this library's vectors.</summary>
    private Inferred? Quantity(
        IInvocationOperation invocation,
        Inferred instance,
        Dictionary<IParameterSymbol, Inferred> arguments,
        Dictionary<IParameterSymbol, SyntaxNode> sites,
        Origin origin)
    {
        IMethodSymbol method = invocation.TargetMethod;
        if (Sources.Factory(method) is { } made)
        {
            return Into(made, method, arguments, sites, origin);
        }

        if (!Types.IsQuantity(method.ContainingType) && method.ContainingType.Name is not ("UnitConverter" or "Quantity"))
        {
            return null;
        }

        switch (method.Name)
        {
            case "As" when Types.IsNumeric(method.ReturnType) && UnitArgument(invocation.Arguments) is { } unit:
                return Inferred.In(unit, Evidence.Typed, new Origin(invocation.Syntax, OriginKind.Escape), instance.Context);
            case "From" when method.IsStatic && UnitArgument(invocation.Arguments) is { } unit:
                return Into(unit, method, arguments, sites, origin);
            case "Convert" when invocation.Arguments.Length == 3 && UnitArgument(invocation.Arguments, 1) is { } from && UnitArgument(invocation.Arguments, 2) is { } to:
                _ = Into(from, method, arguments, sites, origin);
                return Inferred.In(to, Evidence.Typed, new Origin(invocation.Syntax, OriginKind.Escape));
            case "FromSi" or "Of" or "Diagonal" when method.IsStatic && Types.IsOurs(method.ContainingType) && method.ContainingType.TypeArguments.Length > 0:
                return Components(invocation, arguments, sites, origin);
            case "InertiaAbout" when invocation.Arguments.Length == 1:
                return Tensors.About(method.ReturnType, invocation.Arguments[0].Value, origin);
            case "CopySiTo" when invocation.Arguments.Length == 1 && Types.Frame(method.ContainingType) is { } frame:
                Origin escape = new(invocation.Syntax, OriginKind.Escape);
                bool tensor = method.ContainingType.Name == "InertiaTensor";
                Unit? si = tensor ? Tensors.Si : Sources.Si(method.ContainingType.TypeArguments[0]);
                Context context = tensor ? new Context(frame, Tensors.CentreOfMass, Tensors.TensorElement) : instance.Context.Or(new Context(frame));
                Inferred component = si is not null ? Inferred.In(si, Evidence.Typed, escape, context) : Measured.Within(context, escape);
                IOperation destination = invocation.Arguments[0].Value is IConversionOperation conversion ? conversion.Operand : invocation.Arguments[0].Value;
                _ = Assign(destination, component, invocation.Syntax);
                if (Symbol(destination) is ILocalSymbol local)
                {
                    state[local] = component;
                }

                return Inferred.Unknown;
            default:
                return null;
        }
    }

    // Components that go back into a vector, a point or a tensor: each in the unit stated or the SI unit of its scalar, along
    // the axes of its frame; of a tensor, about the centre of mass.
    private Inferred Components(IInvocationOperation invocation, Dictionary<IParameterSymbol, Inferred> arguments, Dictionary<IParameterSymbol, SyntaxNode> sites, Origin origin)
    {
        IMethodSymbol method = invocation.TargetMethod;
        INamedTypeSymbol type = method.ContainingType;
        Unit? unit = method.Name == "FromSi" ? Sources.Si(type.TypeArguments[0]) : UnitArgument(invocation.Arguments);
        Context context = new(Types.Frame(type), type.Name == "InertiaTensor" ? Tensors.CentreOfMass : null);
        string? sign = Tensors.SignArgument(invocation);
        foreach (KeyValuePair<IParameterSymbol, Inferred> argument in arguments)
        {
            Context own = sign is not null && Tensors.IsProduct(argument.Key.Name) ? new Context(context.Frame, context.Point, sign) : context;
            Inferred expected = unit is not null && Types.IsNumeric(argument.Key.Type) ? Inferred.In(unit, Evidence.Typed, origin, own)
                : own.IsNone ? Inferred.Unknown
                : Measured.Within(own, origin);
            flow.Meet(Role.Argument, argument.Value, expected, sites[argument.Key], method);
        }

        return type.Name == "PointInertia" ? Tensors.About(type, invocation.Arguments[0].Value, origin) : Inferred.Unknown;
    }

    // A number that goes into a quantity; what comes out keeps the frame.
    private Inferred Into(Unit unit, IMethodSymbol method, Dictionary<IParameterSymbol, Inferred> arguments, Dictionary<IParameterSymbol, SyntaxNode> sites, Origin origin)
    {
        IParameterSymbol first = method.OriginalDefinition.Parameters[0];
        return arguments.TryGetValue(first, out Inferred? value) ? Into(unit, method, value, sites[first], origin) : Inferred.Unknown;
    }

    private Inferred Into(Unit unit, IMethodSymbol method, Inferred value, SyntaxNode site, Origin origin)
    {
        flow.Meet(Role.Argument, value, Inferred.In(unit, Evidence.Typed, origin), site, method);
        return value.OnlyContext();
    }

    private static Unit? UnitArgument(ImmutableArray<IArgumentOperation> arguments, int from = 0)
    {
        for (int i = from; i < arguments.Length; i++)
        {
            IOperation value = arguments[i].Value;
            while (value is IConversionOperation conversion)
            {
                value = conversion.Operand;
            }

            if (value is IFieldReferenceOperation field && Sources.UnitOf(field.Field) is { } unit)
            {
                return unit;
            }
        }

        return null;
    }
}
