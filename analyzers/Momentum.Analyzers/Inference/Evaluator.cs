using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.FlowAnalysis;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>What one operation gives, in the state before it; changes the state where the operation assigns.</summary>
internal sealed class Evaluator(CompilationModel model, Flow flow, ControlFlowGraph? graph, FlowState state, int level)
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
            flow.Meet(new Meeting(Role.Assign, value, declared, site, symbol.Name));

            // After a contradiction the stated unit holds, so that one mistake is reported once; a name does not
            // overrule what the code does.
            if (!value.IsConcrete || (declared.Evidence >= value.Evidence && Agreements.Of(value, declared) == Agreement.Disagree))
            {
                value = declared.HasUnit ? declared : value;
            }
            else if (Agreements.Of(value, declared) == Agreement.ByHand)
            {
                value = declared;
            }
        }

        return value.Kept();
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
                flow.Write(field.Field, value, isUpdate);
                break;
            case IPropertyReferenceOperation { Property.IsIndexer: false } property when CompilationModel.Backing(property.Property) is { } backing:
                if (property.Instance is IFlowCaptureReferenceOperation made && IsFixed(property.Property))
                {
                    state[made.Id] = (state[made.Id] ?? Inferred.Unknown).WithMember(property.Property.OriginalDefinition, value);
                }

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
            case BinaryOperatorKind.Remainder:
                if (compound.Type?.SpecialType == SpecialType.System_String)
                {
                    return Inferred.Unknown;
                }

                result = Sum(left, right, compound.Target.Syntax, compound.Value.Syntax, compound.OperatorKind == BinaryOperatorKind.Subtract);
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
            flow.Meet(new Meeting(Role.Assign, result, declared, compound.Value.Syntax, symbol.Name));
        }

        Store(compound.Target, result, isUpdate: true);
        return result;
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
            bool known = i < value.Elements.Length;
            SyntaxNode part = site is TupleExpressionSyntax syntax && i < syntax.Arguments.Count ? syntax.Arguments[i].Expression : site;
            _ = Deconstruct(tuple.Elements[i], known ? value.Elements[i] : Inferred.Unknown, part);
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

    private Inferred Create(IObjectCreationOperation creation)
    {
        Dictionary<IParameterSymbol, Inferred> arguments = Arguments(creation.Arguments, out Dictionary<IParameterSymbol, SyntaxNode> sites);
        EvaluateAll(creation.Initializer?.Initializers ?? ImmutableArray<IOperation>.Empty);
        if (Types.IsQuantity(creation.Type) && creation.Constructor is { Parameters.Length: 2 } constructor && UnitArgument(creation.Arguments) is { } unit)
        {
            return Into(unit, constructor, arguments, sites, new Origin(creation.Syntax, OriginKind.Factory));
        }

        if (creation.Constructor is { } called)
        {
            _ = Pass(called, creation.Arguments, arguments, sites, creation.Syntax);
        }

        // A lazy value is what its function gives.
        if (creation.Type is INamedTypeSymbol { Name: "Lazy" } && arguments.Values.FirstOrDefault(v => v.Callable is not null) is { } function)
        {
            return Call(function.Callable!, ImmutableArray<Inferred>.Empty, ImmutableArray<SyntaxNode>.Empty);
        }

        // A collection of numbers starts empty: what is put in first says what it holds.
        return creation.Type is INamedTypeSymbol { Name: "List" or "Dictionary" or "SortedDictionary" or "Queue" or "Stack" or "HashSet" } collection
            && Types.IsNumeric(collection.TypeArguments.LastOrDefault()) && creation.Arguments.All(a => Types.IsInteger(a.Value.Type))
                ? Inferred.Bare(0)
                : Kept(creation, arguments);
    }

    // What a new object holds from its constructor's arguments on.
    private Inferred Kept(IObjectCreationOperation creation, Dictionary<IParameterSymbol, Inferred> arguments)
    {
        Inferred made = Inferred.Unknown;
        if (creation.Constructor?.OriginalDefinition is not { } constructor || !arguments.Values.Any(v => v.HasUnit || v.IsStructured))
        {
            return made;
        }

        foreach (IParameterSymbol parameter in constructor.Parameters)
        {
            if (creation.Type is { IsRecord: true } record && arguments.TryGetValue(parameter, out Inferred? value)
                && record.OriginalDefinition.GetMembers(parameter.Name).OfType<IPropertySymbol>().FirstOrDefault(IsFixed) is { } property)
            {
                made = made.WithMember(property, value);
            }
        }

        foreach (FieldWrite write in model.Of(constructor, level - 1).Writes)
        {
            if (IsFixed(write.Field))
            {
                made = made.WithMember((write.Field.AssociatedSymbol ?? write.Field).OriginalDefinition, write.Value.With(arguments));
            }
        }

        return made;
    }

    private Inferred Invoke(IInvocationOperation invocation)
    {
        IMethodSymbol method = invocation.TargetMethod;
        Inferred instance = Evaluate(invocation.Instance);
        if (MathFunctions.IsMath(method))
        {
            ImmutableArray<Inferred> values = ImmutableArray.CreateRange(invocation.Arguments, static (argument, evaluator) => evaluator.Evaluate(argument.Value), this);
            return MathFunctions.Evaluate(flow, invocation, values);
        }

        // By far the most frequent call: a quantity made from one number.
        if (invocation.Arguments.Length == 1 && Sources.Factory(method) is { } unit)
        {
            IOperation number = invocation.Arguments[0].Value;
            return Into(unit, method, Evaluate(number), number.Syntax, new Origin(invocation.Syntax, OriginKind.Factory));
        }

        Dictionary<IParameterSymbol, Inferred> arguments = Arguments(invocation.Arguments, out Dictionary<IParameterSymbol, SyntaxNode> sites);
        if (method.MethodKind == MethodKind.DelegateInvoke)
        {
            return instance.Callable is { } callable ? Call(callable, Values(invocation, arguments), invocation.Arguments.Select(a => a.Value.Syntax).ToImmutableArray()) : Inferred.Unknown;
        }

        Origin origin = new(invocation.Syntax, OriginKind.Factory);
        if (Quantity(invocation, instance, arguments, sites, origin) is { } quantity)
        {
            return quantity;
        }

        if (Sources.FromFramework(method.ContainingType) && Sequence(invocation, instance, arguments) is { } sequence)
        {
            return sequence;
        }

        return Pass(method, invocation.Arguments, arguments, sites, invocation.Syntax);
    }

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
                Inferred component = si is not null ? Inferred.In(si, Evidence.Typed, escape, context) : Inferred.Unknown.WithContext(context, escape);
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
                : Inferred.Unknown.WithContext(own, origin);
            flow.Meet(new Meeting(Role.Argument, argument.Value, expected, sites[argument.Key], $"{type.Name}.{method.Name}"));
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
        string target = method.MethodKind == MethodKind.Constructor ? $"new {method.ContainingType.Name}" : $"{method.ContainingType.Name}.{method.Name}";
        flow.Meet(new Meeting(Role.Argument, value, Inferred.In(unit, Evidence.Typed, origin), site, target));
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

    // What passes elements through unchanged: LINQ, spans, collections.
    private Inferred? Sequence(IInvocationOperation invocation, Inferred instance, Dictionary<IParameterSymbol, Inferred> arguments)
    {
        IMethodSymbol method = invocation.TargetMethod;
        ImmutableArray<Inferred> values = Values(invocation, arguments);
        bool extension = method.IsStatic && method.ContainingType.Name is "Enumerable" or "MemoryExtensions" or "ImmutableArray" or "Array" or "CollectionExtensions" && values.Length > 0;
        Inferred source = extension ? values[0] : instance;
        Inferred? function = values.FirstOrDefault(v => v.Callable is not null);
        switch (method.Name)
        {
            case "Select" or "ConvertAll" or "SelectMany" or "Sum" or "Max" or "Min" or "Average":
                return function is null ? source : Map(source);
            case "Zip" when values.Length > 1:
                return function is null ? Inferred.Tuple(ImmutableArray.Create(source, values[1])) : Map(source, values[1]);
            case "Aggregate" when function is not null && values.Length <= 3:
                Inferred seed = values.Length > 2 ? values[1] : source;
                return seed.HasUnit || !seed.Elements.IsEmpty ? Inferred.Join(seed, Map(seed, source)) : Map(seed, source);
            case "Where" or "OrderBy" or "OrderByDescending" or "ThenBy" or "ThenByDescending" or "TakeWhile" or "SkipWhile":
                _ = function is null ? null : Map(source);
                return source;
            case "Any" or "All" or "Count" or "ForEach":
                _ = function is null ? null : Map(source);
                return Inferred.Bare(double.NaN);
            case "Take" or "Skip" or "First" or "FirstOrDefault" or "Last" or "LastOrDefault" or "Single" or "SingleOrDefault" or "Reverse" or "Order" or "OrderDescending"
                or "ToArray" or "ToList" or "AsSpan" or "Slice" or "ElementAt" or "Distinct" or "GetValueOrDefault" or "ToImmutableArray" or "Clone" or "ConfigureAwait"
                or "GetEnumerator" or "GetAsyncEnumerator" or "DefaultIfEmpty" or "Append" or "Prepend" or "Dequeue" or "Pop" or "Peek" or "AsReadOnly" or "GetAwaiter" or "GetResult" or "AsEnumerable":
                return source;
            case "Add" or "Enqueue" or "Push" or "Insert" or "Fill" when (extension ? invocation.Arguments[0].Value : invocation.Instance) is { } list && Types.IsNumeric(invocation.Arguments[invocation.Arguments.Length - 1].Value.Type):
                return Added(list, values[values.Length - 1], invocation);
            case "TryGetValue" or "TryDequeue" or "TryPop" or "TryPeek":
                Store(invocation.Arguments[invocation.Arguments.Length - 1].Value, source.FromVariable(false));
                return Inferred.Unknown;
            case "FromResult":
                return values[0];
            default:
                return null;
        }

        Inferred Map(params Inferred[] inputs)
        {
            SyntaxNode site = (extension ? invocation.Arguments[0].Value : invocation.Instance)?.Syntax ?? invocation.Syntax;
            return Call(function!.Callable!, ImmutableArray.Create(inputs), inputs.Select(_ => site).ToImmutableArray());
        }
    }

    private Inferred Added(IOperation list, Inferred value, IInvocationOperation invocation)
    {
        if (Symbol(Place(list)) is { } symbol && Declared(symbol) is { } declared)
        {
            flow.Meet(new Meeting(Role.Assign, value, declared, invocation.Arguments[invocation.Arguments.Length - 1].Value.Syntax, symbol.Name));
        }
        else
        {
            Element(list, value);
        }

        return Inferred.Unknown;
    }

    /// <summary>Passes arguments to a method or constructor: against what its parameters state, and into its body.</summary>
    private Inferred Pass(
        IMethodSymbol method,
        ImmutableArray<IArgumentOperation> operations,
        Dictionary<IParameterSymbol, Inferred> arguments,
        Dictionary<IParameterSymbol, SyntaxNode> sites,
        SyntaxNode call)
    {
        bool carriesUnit = false;
        foreach (KeyValuePair<IParameterSymbol, Inferred> argument in arguments)
        {
            carriesUnit |= argument.Value.HasUnit;
            if (Declared(argument.Key) is { } declared)
            {
                flow.Meet(new Meeting(Role.Argument, argument.Value, declared, sites[argument.Key], argument.Key.Name));
            }
        }

        Inferred? stated = Declared(method);
        bool overridable = method.IsVirtual || method.IsAbstract || (method.IsOverride && !method.IsSealed);
        Summary summary = overridable || !(carriesUnit || operations.Any(o => o.Parameter?.RefKind == RefKind.Out) || (stated is not { Evidence: Evidence.Typed } && (method.ReturnType.IsTupleType || Types.BearsNumbers(method.ReturnType)))) ? Summary.Empty : Body(method, arguments);
        Inferred result = Demand(summary, arguments, sites, call);
        foreach (IArgumentOperation argument in operations)
        {
            if (argument.Parameter is { RefKind: RefKind.Out } parameter && summary.Outs.TryGetValue(parameter.OriginalDefinition, out Inferred? left) && Declared(parameter) is null)
            {
                Store(argument.Value, left.With(arguments));
            }
        }

        return stated is { Evidence: Evidence.Typed } ? stated : result.HasUnit || !result.Elements.IsEmpty ? result : stated ?? Inferred.Unknown;
    }

    private Summary Body(IMethodSymbol method, Dictionary<IParameterSymbol, Inferred>? arguments = null)
    {
        Dictionary<IParameterSymbol, Inferred>? given = arguments is null ? null : Structured(arguments);
        if (method.MethodKind != MethodKind.LocalFunction)
        {
            return model.Of(method, level - 1, given);
        }

        if (level <= 0)
        {
            return Summary.Empty;
        }

        try
        {
            return new Flow(model, graph!.GetLocalFunctionControlFlowGraphInScope(method.OriginalDefinition, model.Cancellation), method.OriginalDefinition, level - 1, state.Copy(), given).Run();
        }
        catch (ArgumentOutOfRangeException)
        {
            // A local function of an outer body, called from a lambda: its graph is not at hand here.
            return Summary.Empty;
        }
    }

    private static Dictionary<IParameterSymbol, Inferred>? Structured(Dictionary<IParameterSymbol, Inferred> arguments)
    {
        Dictionary<IParameterSymbol, Inferred>? structured = null;
        foreach (KeyValuePair<IParameterSymbol, Inferred> argument in arguments)
        {
            if (argument.Value.IsStructured)
            {
                (structured ??= new(SymbolEqualityComparer.Default)).Add(argument.Key, argument.Value);
            }
        }

        return structured;
    }

    private Inferred Demand(Summary summary, Dictionary<IParameterSymbol, Inferred> arguments, Dictionary<IParameterSymbol, SyntaxNode> sites, SyntaxNode call)
    {
        foreach (Meeting demand in summary.Demands)
        {
            List<IParameterSymbol> named = demand.Actual.Parameters.Concat(demand.Expected.Parameters).Select(p => p.Key).Where(arguments.ContainsKey).Distinct<IParameterSymbol>(SymbolEqualityComparer.Default).ToList();
            if (named.Count == 0)
            {
                continue;
            }

            SyntaxNode site = sites.TryGetValue(named[0], out SyntaxNode? found) ? found : call;
            Role role = demand.Role == Role.AngleArgument ? demand.Role : Role.Argument;
            flow.Meet(new Meeting(role, demand.Actual.With(arguments), demand.Expected.With(arguments), site, named[0].Name) { Inside = demand.Inside ?? demand.Site.GetLocation() });
        }

        return summary.Result.With(arguments);
    }

    private Inferred Call(Summary callable, ImmutableArray<Inferred> values, ImmutableArray<SyntaxNode> syntax)
    {
        Dictionary<IParameterSymbol, Inferred> arguments = new(SymbolEqualityComparer.Default);
        Dictionary<IParameterSymbol, SyntaxNode> sites = new(SymbolEqualityComparer.Default);
        for (int i = 0; i < Math.Min(values.Length, callable.Parameters.Length); i++)
        {
            IParameterSymbol parameter = callable.Parameters[i];
            arguments[parameter] = values[i];
            sites[parameter] = syntax[i];
            if (Declared(parameter) is { } declared)
            {
                flow.Meet(new Meeting(Role.Argument, values[i], declared, syntax[i], parameter.Name));
            }
        }

        if (level > 0 && callable.Again is { } again && Structured(arguments) is { } given)
        {
            callable = again(given, level - 1);
            flow.Absorb(callable);
        }

        return Demand(callable, arguments, sites, syntax.FirstOrDefault() ?? graph!.OriginalOperation.Syntax);
    }

    // A method by its name: what it is known to take and give, else what its body does.
    private Inferred Delegate(IMethodReferenceOperation reference)
    {
        IMethodSymbol method = reference.Method.OriginalDefinition;
        if (method.Parameters.Length > 0 && Contract(method, new Origin(reference.Syntax, OriginKind.Contract)) is { } contract)
        {
            Meeting demand = new(contract.Role, Inferred.Of(method.Parameters[0]), contract.Taken, reference.Syntax, $"{method.ContainingType.Name}.{method.Name}");
            return Inferred.Delegate(new Summary(method.Parameters, contract.Given, demand));
        }

        Summary summary = Body(method);
        Inferred? stated = Declared(method);
        return !ReferenceEquals(summary, Summary.Empty) ? Inferred.Delegate(summary)
            : stated is not null || method.Parameters.Any(p => Declared(p) is not null) ? Inferred.Delegate(new Summary(method.Parameters, stated ?? Inferred.Unknown))
            : Inferred.Unknown;
    }

    private static (Role Role, Inferred Taken, Inferred Given)? Contract(IMethodSymbol method, Origin origin) =>
        MathFunctions.Contract(method, origin) is { } angle ? (Role.AngleArgument, angle.Taken, angle.Given)
        : Sources.Factory(method) is { } unit ? (Role.Argument, Inferred.In(unit, Evidence.Typed, origin), Inferred.Unknown)
        : null;

    private Inferred Lambda(IFlowAnonymousFunctionOperation lambda)
    {
        ControlFlowGraph body = graph!.GetAnonymousFunctionControlFlowGraph(lambda, model.Cancellation);
        FlowState outer = state.Copy();
        Summary summary = new Flow(model, body, lambda.Symbol, level, outer.Copy()).Run();
        summary.Again = (given, depth) => new Flow(model, body, lambda.Symbol, depth, outer.Copy(), given).Run();
        flow.Absorb(summary);
        return Inferred.Delegate(summary);
    }

    private static ImmutableArray<Inferred> Values(IInvocationOperation invocation, Dictionary<IParameterSymbol, Inferred> arguments) =>
        invocation.Arguments.Select(a => a.Parameter is { } p && arguments.TryGetValue(p.OriginalDefinition, out Inferred? value) ? value : Inferred.Unknown).ToImmutableArray();

    private Dictionary<IParameterSymbol, Inferred> Arguments(ImmutableArray<IArgumentOperation> operations, out Dictionary<IParameterSymbol, SyntaxNode> sites)
    {
        Dictionary<IParameterSymbol, Inferred> values = new(SymbolEqualityComparer.Default);
        sites = new(SymbolEqualityComparer.Default);
        foreach (IArgumentOperation argument in operations)
        {
            if (argument.Parameter is not { } parameter)
            {
                _ = Evaluate(argument.Value);
                continue;
            }

            parameter = parameter.OriginalDefinition;
            Inferred value = Evaluate(argument.Value);
            if (parameter.RefKind is RefKind.Out or RefKind.Ref)
            {
                Store(argument.Value, Declared(parameter) ?? Inferred.Unknown);
                value = parameter.RefKind == RefKind.Out ? Inferred.Unknown : value;
                if (parameter.RefKind == RefKind.Out && Declared(parameter) is { } given && Symbol(argument.Value) is { } into && Declared(into) is { } stated)
                {
                    flow.Meet(new Meeting(Role.Assign, given, stated, argument.Value.Syntax, into.Name));
                }
            }

            values[parameter] = value;
            sites[parameter] = argument.Value.Syntax;
        }

        return values;
    }
}
