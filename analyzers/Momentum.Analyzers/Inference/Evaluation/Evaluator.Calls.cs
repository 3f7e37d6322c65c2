using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.FlowAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace Momentum.Analyzers.Inference;

// Calls: of methods, constructors, delegates.
internal sealed partial class Evaluator
{
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

        if (creation.Type is { Name: "Vector2" or "Vector3" or "Vector4", ContainingNamespace.Name: "Numerics" })
        {
            return Parts(creation, arguments);
        }

        // A lazy value is what its function gives.
        if (creation.Type is INamedTypeSymbol { Name: "Lazy" } && arguments.Values.OfType<FunctionValue>().FirstOrDefault() is { } function)
        {
            return Call(function.Summary, ImmutableArray<Inferred>.Empty, ImmutableArray<SyntaxNode>.Empty);
        }

        // A collection of numbers starts empty: what is put in first says what it holds.
        return creation.Type is INamedTypeSymbol { Name: "List" or "Dictionary" or "SortedDictionary" or "Queue" or "Stack" or "HashSet" } collection
            && Types.IsNumeric(collection.TypeArguments.LastOrDefault()) && creation.Arguments.All(a => Types.IsInteger(a.Value.Type))
                ? Inferred.Bare(0)
                : Kept(creation, arguments);
    }

    // The elements of a vector, each by itself.
    private static Inferred Parts(IObjectCreationOperation creation, Dictionary<IParameterSymbol, Inferred> arguments)
    {
        Inferred made = Inferred.Unknown;
        foreach (KeyValuePair<IParameterSymbol, Inferred> argument in arguments)
        {
            foreach (string element in argument.Key.Name == "value" ? new[] { "X", "Y", "Z", "W" } : [argument.Key.Name.ToUpperInvariant()])
            {
                made = creation.Type!.GetMembers(element).FirstOrDefault() is { } member ? made.WithMember(member, argument.Value) : made;
            }
        }

        return made;
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
        Release(invocation.Instance);
        if (method.MethodKind == MethodKind.DelegateInvoke)
        {
            return instance is FunctionValue called ? Call(called.Summary, Values(invocation, arguments), invocation.Arguments.Select(a => a.Value.Syntax).ToImmutableArray()) : Inferred.Unknown;
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
                flow.Meet(Role.Argument, argument.Value, declared, sites[argument.Key], argument.Key);
            }
        }

        Measured? stated = Declared(method);
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

        // A method named after a conversion gives what it is named after, whatever its body seems to make of its argument.
        return stated is { Evidence: Evidence.Typed } || (stated is not null && NameUnits.Converts(method.Name)) ? stated : result is TupleValue || result.HasUnit ? result : stated ?? Inferred.Unknown;
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
            if (named.Count == 0 || named.Exists(Declarations.IsSelected))
            {
                continue;
            }

            SyntaxNode site = sites.TryGetValue(named[0], out SyntaxNode? found) ? found : call;
            Role role = demand.Role == Role.AngleArgument ? demand.Role : Role.Argument;
            flow.Meet(role, demand.Actual.With(arguments), demand.Expected.With(arguments), site, named[0], inside: demand.Inside ?? demand.Site.GetLocation());
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
                flow.Meet(Role.Argument, values[i], declared, syntax[i], parameter);
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
            Meeting demand = new(contract.Role, Measured.Of(method.Parameters[0]), contract.Taken, reference.Syntax, method);
            return Inferred.Delegate(new Summary(method.Parameters, contract.Given, demand));
        }

        Summary summary = Body(method);
        Measured? stated = Declared(method);
        return !ReferenceEquals(summary, Summary.Empty) ? Inferred.Delegate(summary)
            : stated is not null || method.Parameters.Any(p => Declared(p) is not null) ? Inferred.Delegate(new Summary(method.Parameters, stated ?? Inferred.Unknown))
            : Inferred.Unknown;
    }

    private static (Role Role, Measured Taken, Inferred Given)? Contract(IMethodSymbol method, Origin origin) =>
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
                    flow.Meet(Role.Assign, given, stated, argument.Value.Syntax, into);
                }
            }

            Release(argument.Value);
            values[parameter] = value;
            sites[parameter] = argument.Value.Syntax;
        }

        return values;
    }
}
