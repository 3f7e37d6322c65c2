using System.Collections.Immutable;
using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>Several values side by side.</summary>
internal sealed class TupleValue : Inferred
{
    internal TupleValue(ImmutableArray<Inferred> elements) => Elements = ImmutableArray.CreateRange(elements, static e => e.Kept());

    internal ImmutableArray<Inferred> Elements { get; }

    /// <summary>One element; nothing known of one that is not there.</summary>
    internal Inferred this[int index] => index >= 0 && index < Elements.Length ? Elements[index] : Unknown;

    internal Inferred Join(TupleValue other) =>
        Elements.Length == other.Elements.Length ? new TupleValue(Elements.Zip(other.Elements, Join).ToImmutableArray()) : Unknown;

    internal override Inferred With(IReadOnlyDictionary<IParameterSymbol, Inferred> arguments) => new TupleValue(ImmutableArray.CreateRange(Elements, static (e, a) => e.With(a), arguments));

    private protected override bool Same(Inferred other) =>
        other is TupleValue tuple && Elements.Length == tuple.Elements.Length && Elements.Zip(tuple.Elements, (a, b) => a.SameAs(b)).All(same => same);
}
