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
    ImmutableArray<KeyValuePair<IFieldSymbol, Inferred>> writes,
    ImmutableArray<Observation> observations,
    ImmutableDictionary<IParameterSymbol, Inferred> outs)
{
    internal static Summary Empty { get; } = new(
        ImmutableArray<IParameterSymbol>.Empty,
        Inferred.Unknown,
        ImmutableArray<Meeting>.Empty,
        ImmutableArray<Meeting>.Empty,
        ImmutableArray<KeyValuePair<IFieldSymbol, Inferred>>.Empty,
        ImmutableArray<Observation>.Empty,
        ImmutableDictionary<IParameterSymbol, Inferred>.Empty);

    internal ImmutableArray<IParameterSymbol> Parameters { get; } = parameters;

    internal Inferred Result { get; } = result;

    internal ImmutableArray<Meeting> Meetings { get; } = meetings;

    internal ImmutableArray<Meeting> Demands { get; } = demands;

    internal ImmutableArray<KeyValuePair<IFieldSymbol, Inferred>> Writes { get; } = writes;

    internal ImmutableArray<Observation> Observations { get; } = observations;

    internal ImmutableDictionary<IParameterSymbol, Inferred> Outs { get; } = outs;
}
