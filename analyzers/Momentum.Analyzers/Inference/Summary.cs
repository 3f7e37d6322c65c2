using System.Collections.Immutable;
using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>What a body of code does with units: found once, used at every call.</summary>
/// <param name="parameters">The parameters that the result and the demands may speak of.</param>
/// <param name="result">What it returns.</param>
/// <param name="meetings">The meetings whose both ends are known.</param>
/// <param name="demands">The meetings that a caller's arguments decide.</param>
/// <param name="writes">What it puts into fields.</param>
/// <param name="observations">Expressions that a rule may find fault with.</param>
/// <param name="outs">What it leaves in its out parameters.</param>
internal sealed class Summary(
    ImmutableArray<IParameterSymbol> parameters,
    Inferred result,
    ImmutableArray<Meeting> meetings,
    ImmutableArray<Meeting> demands,
    ImmutableArray<FieldWrite> writes,
    ImmutableArray<Observation> observations,
    ImmutableDictionary<IParameterSymbol, Inferred> outs)
{
    internal static Summary Empty { get; } = new(
        ImmutableArray<IParameterSymbol>.Empty,
        Inferred.Unknown,
        ImmutableArray<Meeting>.Empty,
        ImmutableArray<Meeting>.Empty,
        ImmutableArray<FieldWrite>.Empty,
        ImmutableArray<Observation>.Empty,
        ImmutableDictionary<IParameterSymbol, Inferred>.Empty);

    /// <summary>A method without a body at hand, of which a contract tells what it takes and gives.</summary>
    internal Summary(ImmutableArray<IParameterSymbol> parameters, Inferred result, params Meeting[] demands)
        : this(parameters, result, Empty.Meetings, demands.ToImmutableArray(), Empty.Writes, Empty.Observations, Empty.Outs)
    {
    }

    internal ImmutableArray<IParameterSymbol> Parameters { get; } = parameters;

    internal Inferred Result { get; } = result;

    internal ImmutableArray<Meeting> Meetings { get; } = meetings;

    internal ImmutableArray<Meeting> Demands { get; } = demands;

    internal ImmutableArray<FieldWrite> Writes { get; } = writes;

    internal ImmutableArray<Observation> Observations { get; } = observations;

    internal ImmutableDictionary<IParameterSymbol, Inferred> Outs { get; } = outs;

    /// <summary>Goes through a lambda's body again for arguments that are more than numbers, looking so many calls deep.</summary>
    internal Func<IReadOnlyDictionary<IParameterSymbol, Inferred>, int, Summary>? Again { get; set; }
}
