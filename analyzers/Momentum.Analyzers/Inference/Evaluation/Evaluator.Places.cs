using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.FlowAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace Momentum.Analyzers.Inference;

// What is stored where: locals, fields, elements, tuples.
internal sealed partial class Evaluator
{
    private Inferred Assign(IOperation target, Inferred value, SyntaxNode site)
    {
        target = Place(target);
        switch (target)
        {
            case IArrayElementReferenceOperation element:
                EvaluateAll(element.Indices);
                break;
            case IMemberReferenceOperation { Instance: { } instance }:
                _ = Evaluate(instance);
                break;
        }

        if (Symbol(target) is { } symbol)
        {
            value = Settle(symbol, value, site);
        }

        Store(target, value);
        return value;
    }

    // What a variable holds once a value is stored in it.
    private Inferred Settle(ISymbol symbol, Inferred value, SyntaxNode site)
    {
        if (Declared(symbol) is { } declared)
        {
            flow.Meet(Role.Assign, value, declared, site, symbol);

            // After a contradiction the stated unit holds, so that one mistake is reported once; a name does not
            // overrule what the code does.
            if (value is not Measured { IsConcrete: true } known)
            {
                value = declared.Unit is null ? value : declared;
            }
            else if (Agreements.Of(known, declared) is var agreement
                && (agreement == Agreement.ByHand || (agreement == Agreement.Disagree && declared.Evidence >= known.Evidence)))
            {
                value = declared;
            }
        }

        return symbol is ILocalSymbol ? value : value.Kept();
    }

    // The place that a temporary stands for, where it stands for one.
    private IOperation Place(IOperation target) =>
        target is IFlowCaptureReferenceOperation capture && flow.Places.TryGetValue(capture.Id, out IOperation? place)
            && place is ILocalReferenceOperation or IParameterReferenceOperation or IFieldReferenceOperation or IPropertyReferenceOperation or IArrayElementReferenceOperation
                ? place
                : target;

    private static ISymbol? Symbol(IOperation target) => target switch
    {
        ILocalReferenceOperation local => local.Local,
        IParameterReferenceOperation parameter => parameter.Parameter,
        IFieldReferenceOperation field => field.Field,
        IPropertyReferenceOperation { Property.IsIndexer: false } property => property.Property,
        IPropertyReferenceOperation { Instance: { } instance } => Symbol(instance),
        IArrayElementReferenceOperation element => Symbol(element.ArrayReference),
        IDeclarationExpressionOperation declaration => Symbol(declaration.Expression),
        _ => null,
    };

    private void Store(IOperation target, Inferred value, bool isUpdate = false)
    {
        switch (target)
        {
            case ILocalReferenceOperation local:
                state[local.Local] = value;
                break;
            case IParameterReferenceOperation parameter:
                state[parameter.Parameter] = value;
                break;
            case IFieldReferenceOperation field:
                Keep(field.Instance, field.Field, value);
                flow.Write(field.Field, value, isUpdate);
                break;
            case IPropertyReferenceOperation { Property.IsIndexer: false } property when CompilationModel.Backing(property.Property) is { } backing:
                Keep(property.Instance, property.Property, value);
                flow.Write(backing, value, isUpdate);
                break;
            case IDeclarationExpressionOperation declaration:
                Store(declaration.Expression, value, isUpdate);
                break;
            case IArrayElementReferenceOperation { ArrayReference: { } array }:
                Element(array, value, isUpdate);
                break;
            case IPropertyReferenceOperation { Property.IsIndexer: true, Instance: { } instance }:
                Element(instance, value, isUpdate);
                break;
        }
    }

    // What a new object, or one in a variable of its own, holds from here on.
    private void Keep(IOperation? holder, ISymbol member, Inferred value)
    {
        object? variable = holder switch
        {
            IFlowCaptureReferenceOperation capture when flow.Places.TryGetValue(capture.Id, out IOperation? place) && place is ILocalReferenceOperation local => local.Local,
            IFlowCaptureReferenceOperation capture => capture.Id,
            ILocalReferenceOperation { Local.RefKind: RefKind.None } local => local.Local,
            _ => null,
        };
        if (variable is not null)
        {
            state[variable] = (state[variable] ?? Inferred.Unknown).WithMember(member, value);
        }
    }

    // Whoever is given an object may change what it holds.
    private void Release(IOperation? given)
    {
        while (given is IConversionOperation conversion)
        {
            given = conversion.Operand;
        }

        if (given is ILocalReferenceOperation { Type.IsReferenceType: true } local && state[local.Local] is ObjectValue && local.Type is { IsRecord: false, IsAnonymousType: false })
        {
            state[local.Local] = Inferred.Unknown;
        }
    }

    // What is set once only: there is no other place that could change it.
    private static bool IsFixed(ISymbol member) => member switch
    {
        IFieldSymbol { AssociatedSymbol: IPropertySymbol property } => IsFixed(property),
        IFieldSymbol field => field.IsReadOnly,
        IPropertySymbol property => property.SetMethod is null or { IsInitOnly: true },
        _ => false,
    };

    // One element says what all are, unless another says otherwise.
    private void Element(IOperation array, Inferred value, bool isUpdate = false)
    {
        array = Place(array);
        if (array is IFlowCaptureReferenceOperation capture)
        {
            state[capture.Id] = Inferred.Join(state[capture.Id] ?? Inferred.Unknown, value);
            return;
        }

        if (Symbol(array) is not { } symbol)
        {
            return;
        }

        if (symbol is IFieldSymbol field)
        {
            flow.Write(field, value, isUpdate);
        }
        else if (symbol is ILocalSymbol or IParameterSymbol)
        {
            Inferred before = state[symbol] ?? Inferred.Unknown;
            state[symbol] = Inferred.Join(before, value);
        }
    }

    private Inferred Compound(ICompoundAssignmentOperation compound)
    {
        Inferred left = Evaluate(compound.Target);
        Inferred right = Evaluate(compound.Value);
        Inferred result;
        switch (compound.OperatorKind)
        {
            case BinaryOperatorKind.Add:
            case BinaryOperatorKind.Subtract:
                if (compound.Type?.SpecialType == SpecialType.System_String)
                {
                    return Inferred.Unknown;
                }

                result = Sum(left, right, compound.Target.Syntax, compound.Value.Syntax, compound.OperatorKind == BinaryOperatorKind.Subtract);
                break;
            case BinaryOperatorKind.Remainder:
                result = Remainder(left, right, compound.Target.Syntax, compound.Value.Syntax, Types.IsInteger(compound.Type));
                break;
            case BinaryOperatorKind.Multiply:
                result = left.Times(right);
                break;
            case BinaryOperatorKind.Divide:
                result = left.Over(right);
                break;
            default:
                result = Inferred.Unknown;
                break;
        }

        if (compound.OperatorKind is BinaryOperatorKind.Multiply or BinaryOperatorKind.Divide && Symbol(compound.Target) is { } symbol && Declared(symbol) is { Evidence: Evidence.Typed } declared)
        {
            flow.Meet(Role.Assign, result, declared, compound.Value.Syntax, symbol);
        }

        Store(compound.Target, result, isUpdate: true);
        return result;
    }

    private Inferred Step(IIncrementOrDecrementOperation increment)
    {
        Inferred stepped = Evaluate(increment.Target);
        Store(increment.Target, stepped.IsNumber ? Inferred.Bare(double.NaN) : stepped, isUpdate: true);
        return stepped;
    }

    // An entry of a dictionary stands for its value.
    private Inferred Deconstruct(IDeconstructionAssignmentOperation deconstruction)
    {
        Inferred parts = Evaluate(deconstruction.Value);
        return Deconstruct(
            deconstruction.Target,
            deconstruction.Value.Type?.Name == "KeyValuePair" ? new TupleValue(ImmutableArray.Create(Inferred.Unknown, parts)) : parts,
            deconstruction.Value.Syntax);
    }

    private Inferred Deconstruct(IOperation target, Inferred value, SyntaxNode site)
    {
        if (target is IDeclarationExpressionOperation { Expression: ITupleOperation declared })
        {
            target = declared;
        }

        if (target is not ITupleOperation tuple)
        {
            return Assign(target, value, site);
        }

        for (int i = 0; i < tuple.Elements.Length; i++)
        {
            SyntaxNode part = site is TupleExpressionSyntax syntax && i < syntax.Arguments.Count ? syntax.Arguments[i].Expression : site;
            _ = Deconstruct(tuple.Elements[i], (value as TupleValue)?[i] ?? Inferred.Unknown, part);
        }

        return value;
    }

    private Inferred Common(ImmutableArray<IOperation> values)
    {
        Inferred? common = null;
        foreach (IOperation value in values)
        {
            Inferred next = Evaluate(value);
            common = common is null ? next : Inferred.Join(common, next);
        }

        return common ?? Inferred.Unknown;
    }
}
