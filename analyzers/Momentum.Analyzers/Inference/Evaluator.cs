using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
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
                Store(increment.Target, stepped.IsNumber ? Inferred.Bare(double.NaN) : stepped);
                return stepped;
            case IDeconstructionAssignmentOperation deconstruction:
                return Deconstruct(deconstruction.Target, Evaluate(deconstruction.Value), deconstruction.Value.Syntax);
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
            case IFlowAnonymousFunctionOperation lambda:
                return Lambda(lambda);
            case IDelegateCreationOperation creation:
                return creation.Target is IMethodReferenceOperation method ? Delegate(method.Method) : Evaluate(creation.Target);
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
                Pattern(pattern);
                return Inferred.Unknown;
            default:
                EvaluateAll(operation.ChildOperations);
                return Inferred.Unknown;
        }
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

        return Declared(field) ?? model.Of(field, level);
    }

    private Inferred Property(IPropertyReferenceOperation reference)
    {
        Inferred instance = Evaluate(reference.Instance);
        EvaluateAll(reference.Arguments.Select(a => a.Value));
        IPropertySymbol property = reference.Property;
        if (Sources.Property(property) is { } unit)
        {
            Origin origin = new(reference.Syntax.GetLocation(), OriginKind.Escape);
            return Inferred.In(unit, Evidence.Typed, origin, instance.Context);
        }

        if (Types.Frame(property.ContainingType) is { } frame && property.Name is "X" or "Y" or "Z")
        {
            Origin origin = new(reference.Syntax.GetLocation(), OriginKind.Escape);
            return Inferred.Unknown.WithContext(new Context(frame), origin);
        }

        if (property.IsIndexer)
        {
            return Declared(property) ?? instance;
        }

        if (property.Name is "Length" or "Count" && Types.IsInteger(property.Type))
        {
            return Inferred.Bare(double.NaN);
        }

        // A nullable's value is the value.
        if (property.Name == "Value" && property.ContainingType.OriginalDefinition.SpecialType == SpecialType.System_Nullable_T)
        {
            return instance;
        }

        if (Types.IsQuantity(property.Type) && !instance.Context.IsNone)
        {
            return instance.OnlyContext();
        }

        return Declared(property)
            ?? (CompilationModel.Backing(property) is { } backing ? model.Of(backing, level) : null)
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

        return left.IsConcrete ? left : right.IsConcrete ? right : left.HasUnit ? left : right.HasUnit ? right : left.Context.IsNone ? right.OnlyContext() : left.OnlyContext();
    }

    private void Compare(Inferred left, Inferred right, SyntaxNode leftSyntax, SyntaxNode rightSyntax) =>
        flow.Meet(new Meeting(Role.Compare, right, left, rightSyntax, string.Empty) { Other = leftSyntax });

    private void Pattern(IIsPatternOperation pattern)
    {
        Inferred value = Evaluate(pattern.Value);
        if (pattern.Pattern is IDeclarationPatternOperation { DeclaredSymbol: { } declared })
        {
            state[declared] = value;
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
            if (!value.HasUnit || (declared.Evidence >= value.Evidence && Agreements.Of(value, declared) == Agreement.Disagree))
            {
                value = declared.HasUnit ? declared : value;
            }
            else if (Agreements.Of(value, declared) == Agreement.ByHand)
            {
                value = declared;
            }
        }

        return value;
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

    private void Store(IOperation target, Inferred value)
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
                flow.Write(field.Field, value);
                break;
            case IPropertyReferenceOperation { Property.IsIndexer: false } property when CompilationModel.Backing(property.Property) is { } backing:
                flow.Write(backing, value);
                break;
            case IDeclarationExpressionOperation declaration:
                Store(declaration.Expression, value);
                break;
            case IArrayElementReferenceOperation { ArrayReference: { } array }:
                Element(array, value);
                break;
            case IPropertyReferenceOperation { Property.IsIndexer: true, Instance: { } instance }:
                Element(instance, value);
                break;
        }
    }

    // One element says what all are, unless another says otherwise.
    private void Element(IOperation array, Inferred value)
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
            flow.Write(field, value);
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

        Store(compound.Target, result);
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
            SyntaxNode part = site is Microsoft.CodeAnalysis.CSharp.Syntax.TupleExpressionSyntax syntax && i < syntax.Arguments.Count ? syntax.Arguments[i].Expression : site;
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
            return Into(unit, constructor, arguments, sites, new Origin(creation.Syntax.GetLocation(), OriginKind.Factory));
        }

        if (creation.Constructor is { } called)
        {
            _ = Pass(called, creation.Arguments, arguments, sites, creation.Syntax);
        }

        // A collection of numbers starts empty: what is put in first says what it holds.
        return creation.Type is INamedTypeSymbol { Name: "List" or "Dictionary" or "SortedDictionary" or "Queue" or "Stack" or "HashSet" } collection
            && Types.IsNumeric(collection.TypeArguments.LastOrDefault()) && creation.Arguments.All(a => Types.IsInteger(a.Value.Type))
                ? Inferred.Bare(0)
                : Inferred.Unknown;
    }

    private Inferred Invoke(IInvocationOperation invocation)
    {
        IMethodSymbol method = invocation.TargetMethod;
        Inferred instance = Evaluate(invocation.Instance);
        Dictionary<IParameterSymbol, Inferred> arguments = Arguments(invocation.Arguments, out Dictionary<IParameterSymbol, SyntaxNode> sites);
        if (MathFunctions.IsMath(method))
        {
            return MathFunctions.Evaluate(flow, invocation, Values(invocation, arguments));
        }

        if (method.MethodKind == MethodKind.DelegateInvoke)
        {
            return instance.Callable is { } callable ? Call(callable, Values(invocation, arguments), invocation.Arguments.Select(a => a.Value.Syntax).ToImmutableArray()) : Inferred.Unknown;
        }

        Origin origin = new(invocation.Syntax.GetLocation(), OriginKind.Factory);
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
                return Inferred.In(unit, Evidence.Typed, new Origin(invocation.Syntax.GetLocation(), OriginKind.Escape), instance.Context);
            case "From" when method.IsStatic && UnitArgument(invocation.Arguments) is { } unit:
                return Into(unit, method, arguments, sites, origin);
            case "Convert" when invocation.Arguments.Length == 3 && UnitArgument(invocation.Arguments, 1) is { } from && UnitArgument(invocation.Arguments, 2) is { } to:
                _ = Into(from, method, arguments, sites, origin);
                return Inferred.In(to, Evidence.Typed, new Origin(invocation.Syntax.GetLocation(), OriginKind.Escape));
            case "FromSi" or "Of" when method.IsStatic && Types.IsOurs(method.ContainingType) && method.ContainingType.TypeArguments.Length > 0:
                return Components(method, arguments, sites, origin);
            case "CopySiTo" when invocation.Arguments.Length == 1 && Types.Frame(method.ContainingType) is { } frame:
                Inferred component = Sources.Si(method.ContainingType.TypeArguments[0]) is { } si
                    ? Inferred.In(si, Evidence.Typed, new Origin(invocation.Syntax.GetLocation(), OriginKind.Escape), new Context(frame))
                    : Inferred.Unknown.WithContext(new Context(frame), new Origin(invocation.Syntax.GetLocation(), OriginKind.Escape));
                _ = Assign(invocation.Arguments[0].Value is IConversionOperation conversion ? conversion.Operand : invocation.Arguments[0].Value, component, invocation.Syntax);
                if (Symbol(invocation.Arguments[0].Value is IConversionOperation c ? c.Operand : invocation.Arguments[0].Value) is ILocalSymbol local)
                {
                    state[local] = component;
                }

                return Inferred.Unknown;
            default:
                return null;
        }
    }

    // Components that go back into a vector: each in the SI unit of its scalar, along the axes of its frame.
    private Inferred Components(IMethodSymbol method, Dictionary<IParameterSymbol, Inferred> arguments, Dictionary<IParameterSymbol, SyntaxNode> sites, Origin origin)
    {
        INamedTypeSymbol type = method.ContainingType;
        Unit? si = method.Name == "FromSi" ? Sources.Si(type.TypeArguments[0]) : null;
        string? frame = Types.Frame(type);
        Inferred expected = si is not null ? Inferred.In(si, Evidence.Typed, origin, new Context(frame)) : frame is null ? Inferred.Unknown : Inferred.Unknown.WithContext(new Context(frame), origin);
        foreach (KeyValuePair<IParameterSymbol, Inferred> argument in arguments)
        {
            flow.Meet(new Meeting(Role.Argument, argument.Value, expected, sites[argument.Key], $"{type.Name}.{method.Name}"));
        }

        return Inferred.Unknown;
    }

    // A number that goes into a quantity; what comes out keeps the frame.
    private Inferred Into(Unit unit, IMethodSymbol method, Dictionary<IParameterSymbol, Inferred> arguments, Dictionary<IParameterSymbol, SyntaxNode> sites, Origin origin)
    {
        IParameterSymbol first = method.OriginalDefinition.Parameters[0];
        if (!arguments.TryGetValue(first, out Inferred? value))
        {
            return Inferred.Unknown;
        }

        string target = method.MethodKind == MethodKind.Constructor ? $"new {method.ContainingType.Name}" : $"{method.ContainingType.Name}.{method.Name}";
        flow.Meet(new Meeting(Role.Argument, value, Inferred.In(unit, Evidence.Typed, origin), sites[first], target));
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

    // What passes elements through unchanged: LINQ, spans, lists.
    private Inferred? Sequence(IInvocationOperation invocation, Inferred instance, Dictionary<IParameterSymbol, Inferred> arguments)
    {
        IMethodSymbol method = invocation.TargetMethod;
        ImmutableArray<Inferred> values = Values(invocation, arguments);
        bool extension = method.ContainingType.Name is "Enumerable" or "MemoryExtensions" or "ImmutableArray" && values.Length > 0;
        Inferred source = extension ? values[0] : instance;
        Inferred? function = values.FirstOrDefault(v => v.Callable is not null);
        Inferred mapped = function is null ? source : Call(function.Callable!, ImmutableArray.Create(source), ImmutableArray.Create(invocation.Syntax));
        return method.Name switch
        {
            "Select" or "ConvertAll" or "SelectMany" => mapped,
            "Sum" or "Max" or "Min" or "Average" => mapped,
            "Where" or "OrderBy" or "Take" or "Skip" or "First" or "FirstOrDefault" or "Last" or "LastOrDefault" or "Single" or "Reverse" or "TakeWhile" or "SkipWhile"
                or "ToArray" or "ToList" or "AsSpan" or "Slice" or "ElementAt" or "Distinct" or "GetValueOrDefault" or "Append" or "ToImmutableArray" or "Clone" or "ConfigureAwait" => source,
            "Add" when invocation.Instance is { } list && values.Length == 1 => Added(list, values[0]),
            "FromResult" => values[0],
            _ => null,
        };
    }

    private Inferred Added(IOperation list, Inferred value)
    {
        if (Symbol(Place(list)) is { } symbol && Declared(symbol) is { } declared)
        {
            flow.Meet(new Meeting(Role.Assign, value, declared, list.Parent?.Syntax ?? list.Syntax, symbol.Name));
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
        Summary summary = overridable || !(carriesUnit || operations.Any(o => o.Parameter?.RefKind == RefKind.Out) || (stated is null && (method.ReturnType.IsTupleType || Types.BearsNumbers(method.ReturnType)))) ? Summary.Empty : Body(method);
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

    private Summary Body(IMethodSymbol method)
    {
        if (method.MethodKind != MethodKind.LocalFunction)
        {
            return model.Of(method, level - 1);
        }

        if (level <= 0)
        {
            return Summary.Empty;
        }

        try
        {
            return new Flow(model, graph!.GetLocalFunctionControlFlowGraphInScope(method.OriginalDefinition, model.Cancellation), method.OriginalDefinition, level - 1, state.Copy()).Run();
        }
        catch (ArgumentOutOfRangeException)
        {
            // A local function of an outer body, called from a lambda: its graph is not at hand here.
            return Summary.Empty;
        }
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
            flow.Meet(new Meeting(Role.Argument, demand.Actual.With(arguments), demand.Expected.With(arguments), site, named[0].Name) { Inside = demand.Inside ?? demand.Site.GetLocation() });
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

        return Demand(callable, arguments, sites, syntax.FirstOrDefault() ?? graph!.OriginalOperation.Syntax);
    }

    private Inferred Delegate(IMethodSymbol method) => Body(method) is { } summary && !ReferenceEquals(summary, Summary.Empty) ? Inferred.Delegate(summary) : Inferred.Unknown;

    private Inferred Lambda(IFlowAnonymousFunctionOperation lambda)
    {
        ControlFlowGraph body = graph!.GetAnonymousFunctionControlFlowGraph(lambda, model.Cancellation);
        Summary summary = new Flow(model, body, lambda.Symbol, level, state.Copy()).Run();
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
