using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace Momentum.Analyzers.Inference;

// What is read: variables, fields, properties, and what stands for them.
internal sealed partial class Evaluator
{
    private Inferred Read(ISymbol variable, ITypeSymbol? type, IOperation reference)
    {
        Inferred value = state[variable] ?? (variable is IParameterSymbol parameter ? model.Declarations.Of(parameter) : null) ?? Inferred.Unknown;
        if (Declared(variable) is { } declared && !(value is Measured { Unit: not null } known && known.Evidence >= declared.Evidence))
        {
            return declared;
        }

        return reference.ConstantValue.HasValue && Constant(reference.ConstantValue) is BareNumber number && Literals.IsConversion(number.Value)
            ? number
            : value.FromVariable(Types.IsInteger(type));
    }

    private Inferred Field(IFieldReferenceOperation reference)
    {
        Inferred instance = Evaluate(reference.Instance);
        IFieldSymbol field = reference.Field;
        if (field.ContainingType is { Name: "Math" or "MathF" or "Double" or "Single" } && field.Name is "PI" or "Tau" or "Pi")
        {
            return Constant(reference.ConstantValue);
        }

        if (reference.ConstantValue.HasValue && Constant(reference.ConstantValue) is BareNumber constant)
        {
            return Declared(field) ?? (Literals.IsConversion(constant.Value) ? constant : constant.FromVariable(false));
        }

        if (reference.Instance?.Type is INamedTypeSymbol { IsTupleType: true } tuple)
        {
            int index = tuple.TupleElements.Select(e => (e.CorrespondingTupleField ?? e).Name).ToList().IndexOf((field.CorrespondingTupleField ?? field).Name);
            return instance is TupleValue parts && !parts[index].IsUnknown ? parts[index] : Declared(field) ?? Inferred.Unknown;
        }

        return Member(instance, field) ?? Known(Declared(field), field);
    }

    // What the code puts into a field is better evidence than its name.
    private Inferred Known(Measured? declared, IFieldSymbol field)
    {
        if (declared is { Unit: not null, Evidence: Evidence.Typed })
        {
            return declared;
        }

        Inferred found = model.Of(field, level);
        return declared is null ? found
            : found is not Measured { IsConcrete: true } known ? declared
            : declared.Context.IsNone ? known
            : known.WithContext(declared.Context, declared.From[0]);
    }

    // A record's or an anonymous object's own value, where the object is at hand; an attribute says more.
    private Inferred? Member(Inferred instance, ISymbol member) =>
        instance is ObjectValue held && held[member] is { } kept && Declared(member) is not { Evidence: Evidence.Typed } ? kept : null;

    private Inferred Property(IPropertyReferenceOperation reference)
    {
        Inferred instance = Evaluate(reference.Instance);
        EvaluateAll(reference.Arguments.Select(a => a.Value));
        IPropertySymbol property = reference.Property;
        if (Sources.Property(property) is { } unit)
        {
            Origin origin = new(reference.Syntax, OriginKind.Escape);
            return Inferred.In(unit, Evidence.Typed, origin, instance.Context);
        }

        if (Types.Frame(property.ContainingType) is { } frame && property.Name is "X" or "Y" or "Z")
        {
            Origin origin = new(reference.Syntax, OriginKind.Escape);
            return Measured.Within(new Context(frame), origin);
        }

        if (Tensors.Component(property, instance, new Origin(reference.Syntax, OriginKind.Escape)) is { } component)
        {
            return component;
        }

        if (property.IsIndexer)
        {
            return Declared(property) ?? instance;
        }

        if (property.Name is "Length" or "Count" && Types.IsInteger(property.Type))
        {
            return Inferred.Bare(double.NaN);
        }

        // What holds values stands for them: a nullable, an enumerator, a dictionary, one of its entries.
        if (property.Name is "Value" or "Current" or "Values" or "Result" && Sources.FromFramework(property.ContainingType))
        {
            return instance;
        }

        if (Types.IsQuantity(property.Type) && !instance.Context.IsNone)
        {
            return instance.OnlyContext();
        }

        return Member(instance, property)
            ?? (CompilationModel.Backing(property) is { } backing ? Known(Declared(property), backing) : Declared(property))
            ?? (property.GetMethod is { IsVirtual: false, IsOverride: false } getter && Types.BearsNumbers(property.Type) ? Getter(getter) : Inferred.Unknown);
    }

    private Inferred Getter(IMethodSymbol getter)
    {
        Summary summary = model.Of(getter, level - 1);
        return summary.Result is Measured { Parameters.IsEmpty: false } ? Inferred.Unknown : summary.Result.WithoutFactors();
    }

    private Measured? Declared(ISymbol symbol) => model.Declarations.Of(symbol);
}
