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

    // One row a kind of operation; what has no row is looked through for what it holds.
    private Inferred Find(IOperation? operation) => operation switch
    {
        null => Inferred.Unknown,
        ILocalReferenceOperation local => Read(local.Local, local.Type, local),
        IParameterReferenceOperation parameter => Read(parameter.Parameter, parameter.Type, parameter),
        IConversionOperation conversion => Convert(conversion),
        ILiteralOperation literal => Constant(literal.ConstantValue),
        IPropertyReferenceOperation property => Property(property),
        IFieldReferenceOperation field => Field(field),
        IInvocationOperation invocation => Invoke(invocation),
        IBinaryOperation binary => Binary(binary),
        IFlowCaptureReferenceOperation capture => state[capture.Id] ?? Inferred.Unknown,
        IFlowCaptureOperation capture => Capture(capture),
        IExpressionStatementOperation statement => Statement(statement),
        ISimpleAssignmentOperation assignment => Assign(assignment.Target, Evaluate(assignment.Value), assignment.Value.Syntax),
        IVariableDeclaratorOperation declarator => Declare(declarator),
        IUnaryOperation unary => Unary(unary),
        IParenthesizedOperation parenthesized => Evaluate(parenthesized.Operand),
        ICompoundAssignmentOperation compound => Compound(compound),
        IIncrementOrDecrementOperation increment => Step(increment),
        IArrayElementReferenceOperation element => After(element.Indices, element.ArrayReference),
        IImplicitIndexerReferenceOperation element => After([element.Argument], element.Instance),
        ITranslatedQueryOperation query => Evaluate(query.Operation),
        IObjectCreationOperation creation => Create(creation),
        ITupleOperation tuple => new TupleValue(ImmutableArray.CreateRange(tuple.Elements, static (e, evaluator) => evaluator.Evaluate(e), this)),
        IDeconstructionAssignmentOperation deconstruction => Deconstruct(deconstruction),
        IArrayCreationOperation { Initializer: null } array => After(array.DimensionSizes, Inferred.Bare(0)),
        IArrayCreationOperation { Initializer: { } initializer } => Common(initializer.ElementValues),
        IArrayInitializerOperation initializer => Common(initializer.ElementValues),
        IAnonymousObjectCreationOperation anonymous => Anonymous(anonymous),
        IFlowAnonymousFunctionOperation lambda => Lambda(lambda),
        IDelegateCreationOperation { Target: IMethodReferenceOperation method } => Delegate(method),
        IDelegateCreationOperation creation => Evaluate(creation.Target),
        IDefaultValueOperation when Types.BearsNumbers(operation.Type) => Inferred.Bare(0),
        IReturnOperation { ReturnedValue: { } returned } => Yield(returned),
        IAwaitOperation awaited => Evaluate(awaited.Operation),
        IDeclarationExpressionOperation declaration => Evaluate(declaration.Expression),
        IIsPatternOperation pattern => Matched(pattern),
        { Kind: OperationKind.None, Syntax: StackAllocArrayCreationExpressionSyntax or ImplicitStackAllocArrayCreationExpressionSyntax } => Allocated(operation),
        _ => After(operation.ChildOperations, Inferred.Unknown),
    };

    private Inferred After(IEnumerable<IOperation> first, IOperation then)
    {
        EvaluateAll(first);
        return Evaluate(then);
    }

    private Inferred After(IEnumerable<IOperation> first, Inferred then)
    {
        EvaluateAll(first);
        return then;
    }

    private Inferred Capture(IFlowCaptureOperation capture)
    {
        state[capture.Id] = Evaluate(capture.Value);
        flow.Places[capture.Id] = capture.Value;
        return Inferred.Unknown;
    }

    private Inferred Statement(IExpressionStatementOperation statement)
    {
        Inferred unused = Evaluate(statement.Operation);
        if (statement.Operation is IInvocationOperation { Instance: not null })
        {
            flow.Observe(statement.Operation, unused);
        }

        return unused;
    }

    private Inferred Declare(IVariableDeclaratorOperation declarator)
    {
        if (declarator.GetVariableInitializer() is { } start)
        {
            state[declarator.Symbol] = Settle(declarator.Symbol, Evaluate(start.Value), start.Value.Syntax);
        }

        return Inferred.Unknown;
    }

    private Inferred Yield(IOperation returned)
    {
        flow.Return(Evaluate(returned), returned);
        return Inferred.Unknown;
    }

    private Inferred Anonymous(IAnonymousObjectCreationOperation anonymous) => anonymous.Initializers.OfType<ISimpleAssignmentOperation>().Aggregate(
        Inferred.Unknown,
        (all, member) => member.Target is IPropertyReferenceOperation property ? all.WithMember(property.Property, Evaluate(member.Value)) : all);

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
}
