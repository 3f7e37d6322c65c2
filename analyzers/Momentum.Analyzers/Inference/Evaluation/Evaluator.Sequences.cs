using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;

namespace Momentum.Analyzers.Inference;

// What the framework's sequences and collections pass through: LINQ, spans, lists, tasks.
internal sealed partial class Evaluator
{
    // What passes elements through unchanged: LINQ, spans, collections.
    private Inferred? Sequence(IInvocationOperation invocation, Inferred instance, Dictionary<IParameterSymbol, Inferred> arguments)
    {
        IMethodSymbol method = invocation.TargetMethod;
        ImmutableArray<Inferred> values = Values(invocation, arguments);
        bool extension = method.IsStatic && method.ContainingType.Name is "Enumerable" or "MemoryExtensions" or "ImmutableArray" or "Array" or "CollectionExtensions" && values.Length > 0;
        Inferred source = extension ? values[0] : instance;
        FunctionValue? function = values.OfType<FunctionValue>().FirstOrDefault();
        switch (method.Name)
        {
            case "Select" or "ConvertAll" or "SelectMany" or "Sum" or "Max" or "Min" or "Average":
                return function is null ? source : Map(source);
            case "Zip" when values.Length > 1:
                return function is null ? Inferred.Tuple(ImmutableArray.Create(source, values[1])) : Map(source, values[1]);
            case "Aggregate" when function is not null && values.Length <= 3:
                Inferred seed = values.Length > 2 ? values[1] : source;
                return seed is TupleValue || seed.HasUnit ? Inferred.Join(seed, Map(seed, source)) : Map(seed, source);
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
            return Call(function!.Summary, ImmutableArray.Create(inputs), inputs.Select(_ => site).ToImmutableArray());
        }
    }

    private Inferred Added(IOperation list, Inferred value, IInvocationOperation invocation)
    {
        if (Symbol(Place(list)) is { } symbol && Declared(symbol) is { } declared)
        {
            flow.Meet(Role.Assign, value, declared, invocation.Arguments[invocation.Arguments.Length - 1].Value.Syntax, symbol);
        }
        else
        {
            Element(list, value);
        }

        return Inferred.Unknown;
    }
}
