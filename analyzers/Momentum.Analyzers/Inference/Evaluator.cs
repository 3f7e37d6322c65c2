using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.FlowAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace Momentum.Analyzers.Inference;

/// <summary>What one operation gives, in the state before it; changes the state where the operation assigns.</summary>
internal sealed partial class Evaluator(CompilationModel model, Flow flow, ControlFlowGraph? graph, FlowState state, int level)
{
    // Deeper than this nobody writes by hand, and the stack of a compiler thread is small.
    private const int DeepestExpression = 500;

    private int _depth;

    internal Inferred Evaluate(IOperation? operation)
    {
        if (_depth >= DeepestExpression)
        {
            return Inferred.Unknown;
        }

        _depth++;
        Inferred value = Find(operation);
        _depth--;
        return value;
    }

    private Inferred Find(IOperation? operation)
    {
        switch (operation)
        {
            case null:
                return Inferred.Unknown;
            case ILiteralOperation literal:
                return Constant(literal.ConstantValue);
            case IDefaultValueOperation or IConversionOperation { Operand.ConstantValue: { HasValue: true, Value: null } } when Types.BearsNumbers(operation.Type):
                return Inferred.Bare(0);
            case ILocalReferenceOperation local:
                return Read(local.Local, local.Type, local);
            case IParameterReferenceOperation parameter:
                return Read(parameter.Parameter, parameter.Type, parameter);
            case IFieldReferenceOperation field:
                return Field(field);
            case IPropertyReferenceOperation property:
                return Property(property);
            case IArrayElementReferenceOperation element:
                EvaluateAll(element.Indices);
                return Evaluate(element.ArrayReference);
            case IFlowCaptureOperation capture:
                state[capture.Id] = Evaluate(capture.Value);
                flow.Places[capture.Id] = capture.Value;
                return Inferred.Unknown;
            case IFlowCaptureReferenceOperation capture:
                return state[capture.Id] ?? Inferred.Unknown;
            case IConversionOperation conversion:
                return Convert(conversion);
            case IUnaryOperation unary:
                Inferred operand = Evaluate(unary.Operand);
                return unary.OperatorKind switch
                {
                    UnaryOperatorKind.Minus => operand.Negated(),
                    UnaryOperatorKind.Plus => operand,
                    _ => Inferred.Unknown,
                };
            case IBinaryOperation binary:
                return Binary(binary);
            case ISimpleAssignmentOperation assignment:
                return Assign(assignment.Target, Evaluate(assignment.Value), assignment.Value.Syntax);
            case ICompoundAssignmentOperation compound:
                return Compound(compound);
            case IIncrementOrDecrementOperation increment:
                Inferred stepped = Evaluate(increment.Target);
                Store(increment.Target, stepped.IsNumber ? Inferred.Bare(double.NaN) : stepped, isUpdate: true);
                return stepped;
            case IDeconstructionAssignmentOperation deconstruction:
                Inferred parts = Evaluate(deconstruction.Value);
                return Deconstruct(deconstruction.Target, deconstruction.Value.Type?.Name == "KeyValuePair" ? Inferred.Tuple(ImmutableArray.Create(Inferred.Unknown, parts)) : parts, deconstruction.Value.Syntax);
            case ITupleOperation tuple:
                return Inferred.Tuple(tuple.Elements.Select(Evaluate).ToImmutableArray());
            case IArrayCreationOperation array:
                EvaluateAll(array.DimensionSizes);
                return array.Initializer is null ? Inferred.Bare(0) : Evaluate(array.Initializer);
            case IArrayInitializerOperation initializer:
                return Common(initializer.ElementValues);
            case IInvocationOperation invocation:
                return Invoke(invocation);
            case IObjectCreationOperation creation:
                return Create(creation);
            case IAnonymousObjectCreationOperation anonymous:
                return anonymous.Initializers.OfType<ISimpleAssignmentOperation>().Aggregate(
                    Inferred.Unknown,
                    (all, member) => member.Target is IPropertyReferenceOperation property ? all.WithMember(property.Property.OriginalDefinition, Evaluate(member.Value)) : all);
            case IFlowAnonymousFunctionOperation lambda:
                return Lambda(lambda);
            case IDelegateCreationOperation creation:
                return creation.Target is IMethodReferenceOperation method ? Delegate(method) : Evaluate(creation.Target);
            case IVariableDeclaratorOperation declarator:
                if (declarator.GetVariableInitializer() is { } start)
                {
                    state[declarator.Symbol] = Settle(declarator.Symbol, Evaluate(start.Value), start.Value.Syntax);
                }

                return Inferred.Unknown;
            case IReturnOperation { ReturnedValue: { } returned } yielded:
                flow.Return(Evaluate(returned), returned);
                return Inferred.Unknown;
            case IAwaitOperation awaited:
                return Evaluate(awaited.Operation);
            case IExpressionStatementOperation statement:
                Inferred unused = Evaluate(statement.Operation);
                if (statement.Operation is IInvocationOperation { Instance: not null })
                {
                    flow.Observe(statement.Operation, unused);
                }

                return unused;
            case IParenthesizedOperation parenthesized:
                return Evaluate(parenthesized.Operand);
            case IDeclarationExpressionOperation declaration:
                return Evaluate(declaration.Expression);
            case IIsPatternOperation pattern:
                Match(pattern.Pattern, Evaluate(pattern.Value));
                return Inferred.Unknown;
            case { Kind: OperationKind.None, Syntax: StackAllocArrayCreationExpressionSyntax or ImplicitStackAllocArrayCreationExpressionSyntax }:
                return Allocated(operation);
            default:
                EvaluateAll(operation.ChildOperations);
                return Inferred.Unknown;
        }
    }

    // The compiler has no operation of its own for stackalloc: its children are the size, where it is written, and the elements.
    private Inferred Allocated(IOperation allocation)
    {
        ImmutableArray<IOperation> elements = allocation.ChildOperations.Where(o => o.Syntax.Parent is InitializerExpressionSyntax).ToImmutableArray();
        return elements.IsEmpty ? Inferred.Bare(0) : Common(elements);
    }

    private static Inferred Constant(Optional<object?> constant) =>
        constant is { HasValue: true, Value: double or float or int or long or decimal or short or byte or uint or ulong or ushort or sbyte }
            ? Inferred.Bare(System.Convert.ToDouble(constant.Value, System.Globalization.CultureInfo.InvariantCulture))
            : Inferred.Unknown;

    private void EvaluateAll(IEnumerable<IOperation> operations)
    {
        foreach (IOperation operation in operations)
        {
            _ = Evaluate(operation);
        }
    }

    private Inferred Read(ISymbol variable, ITypeSymbol? type, IOperation reference)
    {
        Inferred value = state[variable] ?? (variable is IParameterSymbol parameter ? model.Declarations.Of(parameter) : null) ?? Inferred.Unknown;
        if (Declared(variable) is { } declared && !(value.HasUnit && value.Evidence >= declared.Evidence))
        {
            return declared;
        }

        return reference.ConstantValue.HasValue && Constant(reference.ConstantValue) is { Number: { } number } && Literals.IsConversion(number)
            ? Inferred.Bare(number)
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

        if (reference.ConstantValue.HasValue && Constant(reference.ConstantValue) is { Number: { } number } constant)
        {
            return Declared(field) ?? (Literals.IsConversion(number) ? constant : constant.FromVariable(false));
        }

        if (reference.Instance?.Type is INamedTypeSymbol { IsTupleType: true } tuple)
        {
            int index = tuple.TupleElements.Select(e => (e.CorrespondingTupleField ?? e).Name).ToList().IndexOf((field.CorrespondingTupleField ?? field).Name);
            return index >= 0 && index < instance.Elements.Length && !instance.Elements[index].IsUnknown
                ? instance.Elements[index]
                : Declared(field) ?? Inferred.Unknown;
        }

        return Member(instance, field) ?? Known(Declared(field), field);
    }

    // What the code puts into a field is better evidence than its name.
    private Inferred Known(Inferred? declared, IFieldSymbol field)
    {
        if (declared is { HasUnit: true, Evidence: Evidence.Typed })
        {
            return declared;
        }

        Inferred found = model.Of(field, level);
        return declared is null ? found
            : !found.IsConcrete ? declared
            : declared.Context.IsNone ? found
            : found.WithContext(declared.Context, declared.Origins[0]);
    }

    // A record's or an anonymous object's own value, where the object is at hand; an attribute says more.
    private Inferred? Member(Inferred instance, ISymbol member) =>
        instance.Members.TryGetValue(member.OriginalDefinition, out Inferred? kept) && Declared(member) is not { Evidence: Evidence.Typed } ? kept : null;

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
            return Inferred.Unknown.WithContext(new Context(frame), origin);
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
        return summary.Result.Parameters.IsEmpty ? summary.Result.WithoutFactors() : Inferred.Unknown;
    }

    private Inferred? Declared(ISymbol symbol) => model.Declarations.Of(symbol) is { } declared && (declared.HasUnit || !declared.Context.IsNone) ? declared : null;

    private Inferred Convert(IConversionOperation conversion)
    {
        Inferred operand = Evaluate(conversion.Operand);
        // UnitsNet takes its numbers through a conversion of its own.
        return conversion.OperatorMethod is null || conversion.Type?.Name is "QuantityValue" or "ReadOnlySpan" or "Span" || Types.IsNumeric(conversion.Type) ? operand : operand.OnlyContext();
    }

    private Inferred Binary(IBinaryOperation binary)
    {
        Inferred left = Evaluate(binary.LeftOperand);
        Inferred right = Evaluate(binary.RightOperand);
        switch (binary.OperatorKind)
        {
            case BinaryOperatorKind.Add:
            case BinaryOperatorKind.Subtract:
            case BinaryOperatorKind.Remainder:
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
                if (!product.Factors.IsEmpty && !product.IsComputed)
                {
                    flow.Observe(binary, product);
                }

                return product;
            case BinaryOperatorKind.Equals:
            case BinaryOperatorKind.NotEquals:
                flow.Observe(binary, left.IsConcrete && left.Evidence == Evidence.Typed ? left : right);
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
        flow.Meet(new Meeting(Role.Sum, right, left, rightSyntax, string.Empty) { Other = leftSyntax });
        if (left.IsNumber && right.IsNumber)
        {
            return left.IsVariable || right.IsVariable ? Inferred.Bare(double.NaN).FromVariable(false) : Inferred.Bare(double.NaN);
        }

        if (left.IsConcrete && right.IsConcrete)
        {
            if (difference && left.Unit!.IsTemperaturePoint && right.Unit!.Equals(left.Unit))
            {
                return Inferred.Unknown;
            }

            // Whichever was not multiplied by bare numbers says the unit best.
            Inferred best = left.Evidence == right.Evidence && !left.Factors.IsEmpty && right.Factors.IsEmpty ? right
                : right.Evidence > left.Evidence && Agreements.Of(left, right) != Agreement.Disagree ? right
                : left;
            return best.WithContextOf(left, right);
        }

        Inferred known = left.IsConcrete ? left : right.IsConcrete ? right : left.HasUnit ? left : right.HasUnit ? right : left.Context.IsNone ? right.OnlyContext() : left.OnlyContext();
        return known.WithContextOf(left, right);
    }

    private void Compare(Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax) =>
        flow.Meet(new Meeting(Role.Compare, right, left, rightSyntax, string.Empty) { Other = leftSyntax });

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
                    Match(recursive.DeconstructionSubpatterns[i], i < value.Elements.Length ? value.Elements[i] : Inferred.Unknown);
                }

                break;
            case IBinaryPatternOperation both:
                Match(both.LeftPattern, value);
                Match(both.RightPattern, value);
                break;
        }
    }
}
