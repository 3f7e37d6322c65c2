using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.FlowAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>Runs one body forward over its control-flow graph until nothing changes, and collects what meets.</summary>
internal sealed class Flow
{
    // A unit settles in two rounds or is given up; the bound is for code that raises a power in a loop.
    private const int MostRounds = 4;
    private const int MostDemands = 16;

    private readonly CompilationModel _model;
    private readonly ControlFlowGraph? _graph;
    private readonly ISymbol _owner;
    private readonly int _level;
    private readonly FlowState _entry;
    private readonly List<Meeting> _meetings = [];
    private readonly List<Meeting> _demands = [];
    private readonly List<FieldWrite> _writes = [];
    private readonly List<Observation> _observations = [];
    private readonly ImmutableArray<IParameterSymbol> _parameters;
    private Inferred? _result;

    internal Flow(CompilationModel model, ControlFlowGraph? graph, ISymbol owner, int level, FlowState? outer = null, IReadOnlyDictionary<IParameterSymbol, Inferred>? given = null)
    {
        _model = model;
        _graph = graph;
        _owner = owner;
        _level = level;
        _entry = outer ?? new FlowState();
        _parameters = (owner as IMethodSymbol)?.Parameters ?? ImmutableArray<IParameterSymbol>.Empty;
        foreach (IParameterSymbol parameter in _parameters)
        {
            _entry[parameter] = given is not null && given.TryGetValue(parameter, out Inferred? structured) ? structured : model.Declarations.Of(parameter) ?? (Types.BearsNumbers(parameter.Type) ? Inferred.Of(parameter) : Inferred.Unknown);
        }
    }

    /// <summary>Runs statements that follow one another without a branch.</summary>
    internal Summary Run(ImmutableArray<IOperation> statements)
    {
        Evaluator evaluator = new(_model, this, null, _entry, _level);
        foreach (IOperation statement in statements)
        {
            _model.Cancellation.ThrowIfCancellationRequested();
            _ = evaluator.Evaluate(statement);
        }

        return Summarize(_entry);
    }

    /// <summary>Runs the control-flow graph.</summary>
    internal Summary Run()
    {
        BasicBlock[] blocks = [.. _graph!.Blocks];
        FlowState?[] entries = new FlowState?[blocks.Length];
        FlowState?[] exits = new FlowState?[blocks.Length];
        entries[0] = _entry;
        bool changed = true;
        for (int round = 0; changed && round < MostRounds; round++)
        {
            changed = false;
            _meetings.Clear();
            _demands.Clear();
            _writes.Clear();
            _observations.Clear();
            _result = null;
            foreach (BasicBlock block in blocks)
            {
                _model.Cancellation.ThrowIfCancellationRequested();
                FlowState? entry = entries[block.Ordinal] ?? HandlerEntry(block, entries, exits);
                if (entry is null)
                {
                    continue;
                }

                entries[block.Ordinal] = entry;
                FlowState state = entry.Copy();
                Evaluator evaluator = new(_model, this, _graph, state, _level);
                foreach (IOperation operation in block.Operations)
                {
                    _ = evaluator.Evaluate(operation);
                }

                if (block.BranchValue is { } branch)
                {
                    Inferred value = evaluator.Evaluate(branch);
                    if (block.FallThroughSuccessor?.Semantics == ControlFlowBranchSemantics.Return)
                    {
                        Return(value, branch);
                    }
                }

                if (block.ConditionalSuccessor is not null)
                {
                    state.ForgetChoices();
                }

                exits[block.Ordinal] = state;
                changed |= Flood(block.FallThroughSuccessor, state, entries, block.Ordinal) | Flood(block.ConditionalSuccessor, state, entries, block.Ordinal);
            }
        }

        LocalFunctions(exits);
        return Summarize(exits[exits.Length - 1]);
    }

    private Summary Summarize(FlowState? exit) => new(
            _parameters,
            _result ?? Inferred.Unknown,
            _meetings.ToImmutableArray(),
            _demands.ToImmutableArray(),
            _writes.ToImmutableArray(),
            _observations.ToImmutableArray(),
            Outs(exit));

    /// <summary>What the compiler's temporaries that stand for a place were made from.</summary>
    internal Dictionary<CaptureId, IOperation> Places { get; } = [];

    /// <summary>Notes that two values meet where one unit is needed; of a conditional expression, that each of its arms does.</summary>
    internal void Meet(Role role, Inferred actual, Inferred expected, SyntaxNode site, ISymbol? target, SyntaxNode? other = null, Location? inside = null)
    {
        switch (actual, expected)
        {
            case (Measured one, Measured two) when Meeting.IsNeeded(one, two):
                Keep(new Meeting(role, one, two, site, target) { Other = other, Inside = inside });
                break;
            case (Choice choice, Measured):
                foreach (Measured arm in choice.Arms)
                {
                    Meet(role, arm, expected, Place(arm, site), target, other, inside);
                }

                break;
            case (Measured, Choice choice):
                foreach (Measured arm in choice.Arms)
                {
                    Meet(role, actual, arm, site, target, other, inside);
                }

                break;
        }
    }

    private void Keep(Meeting meeting)
    {
        if (meeting.IsSymbolic)
        {
            if (_demands.Count < MostDemands)
            {
                _demands.Add(meeting);
            }
        }
        else if (meeting.IsWorthKeeping)
        {
            _meetings.Add(meeting);
        }
    }

    // An arm is reported where its unit was read, where that is inside the expression.
    private static SyntaxNode Place(Measured arm, SyntaxNode site) =>
        arm.From.Length == 1 && arm.From[0] is { Kind: OriginKind.Escape } origin && origin.Location.SourceTree == site.SyntaxTree && site.Span.Contains(origin.Location.SourceSpan)
            ? site.FindNode(origin.Location.SourceSpan, getInnermostNodeForTie: true)
            : site;

    /// <summary>Notes an expression for the rules that judge one by itself.</summary>
    internal void Observe(IOperation operation, Inferred value) => _observations.Add(new Observation(operation, value, _owner));

    /// <summary>Notes what a statement puts into a field, or adds to it.</summary>
    internal void Write(IFieldSymbol field, Inferred value, bool isUpdate) => _writes.Add(new(field.OriginalDefinition, value.FromVariable(false), isUpdate));

    /// <summary>Takes over what a lambda or local function found, as far as it does not hang on its own parameters.</summary>
    internal void Absorb(Summary inner)
    {
        _meetings.AddRange(inner.Meetings);
        foreach (Meeting demand in inner.Demands)
        {
            if (!demand.Actual.Parameters.Concat(demand.Expected.Parameters).Any(p => inner.Parameters.Contains(p.Key, SymbolEqualityComparer.Default)))
            {
                Keep(demand);
            }
        }

        _writes.AddRange(inner.Writes);
        _observations.AddRange(inner.Observations);
    }

    /// <summary>Notes a returned value.</summary>
    internal void Return(Inferred value, IOperation operation)
    {
        _result = _result is null ? value.Kept() : Inferred.Join(_result, value);
        if (_owner is IMethodSymbol { MethodKind: not (MethodKind.LambdaMethod or MethodKind.PropertySet) } && _model.Declarations.Of(_owner) is { } declared
            && (declared.Evidence == Evidence.Typed || !NameUnits.Converts(_owner.Name)))
        {
            Meet(Role.Return, value, declared, operation.Syntax, _owner);
        }
    }

    private ImmutableDictionary<IParameterSymbol, Inferred> Outs(FlowState? exit)
    {
        return exit is null || !_parameters.Any(p => p.RefKind == RefKind.Out)
            ? ImmutableDictionary<IParameterSymbol, Inferred>.Empty
            : _parameters
                .Where(p => p.RefKind == RefKind.Out && exit[p] is not null)
                .ToImmutableDictionary<IParameterSymbol, IParameterSymbol, Inferred>(p => p, p => exit[p]!.FromVariable(false), SymbolEqualityComparer.Default);
    }

    // A local function may be called from anywhere, so it sees what its outer variables hold at any time.
    private void LocalFunctions(FlowState?[] exits)
    {
        if (_graph!.LocalFunctions.IsEmpty)
        {
            return;
        }

        FlowState any = new();
        foreach (FlowState? exit in exits)
        {
            if (exit is not null)
            {
                _ = any.Join(exit);
            }
        }

        foreach (IMethodSymbol function in _graph.LocalFunctions)
        {
            Absorb(new Flow(_model, _graph.GetLocalFunctionControlFlowGraph(function, _model.Cancellation), function, _level, any.Copy()).Run());
        }
    }

    private static bool Flood(ControlFlowBranch? branch, FlowState state, FlowState?[] entries, int from)
    {
        if (branch?.Destination is not { } destination)
        {
            return false;
        }

        if (entries[destination.Ordinal] is { } entry)
        {
            // Forward edges are followed in this round anyway; only an edge backwards asks for another.
            return entry.Join(state) && destination.Ordinal <= from;
        }

        entries[destination.Ordinal] = state.Copy();
        return false;
    }

    // A handler or a finally may be entered from anywhere in its try.
    private static FlowState? HandlerEntry(BasicBlock block, FlowState?[] entries, FlowState?[] exits)
    {
        ControlFlowRegion region = block.EnclosingRegion;
        while (region.EnclosingRegion is { } outer && region.FirstBlockOrdinal == block.Ordinal
            && region.Kind is not (ControlFlowRegionKind.Catch or ControlFlowRegionKind.Filter or ControlFlowRegionKind.Finally or ControlFlowRegionKind.FilterAndHandler))
        {
            region = outer;
        }

        if (region.FirstBlockOrdinal != block.Ordinal || region.EnclosingRegion is not { } both)
        {
            return null;
        }

        FlowState? entry = null;
        for (int i = both.FirstBlockOrdinal; i < block.Ordinal; i++)
        {
            foreach (FlowState? state in new[] { entries[i], exits[i] })
            {
                if (state is null)
                {
                    continue;
                }

                if (entry is null)
                {
                    entry = state.Copy();
                }
                else
                {
                    _ = entry.Join(state);
                }
            }
        }

        return entry;
    }
}
