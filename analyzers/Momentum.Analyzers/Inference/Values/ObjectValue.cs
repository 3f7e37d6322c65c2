using System.Collections.Immutable;
using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>What an object at hand holds: a record, an anonymous object, a new object with what its constructor keeps.</summary>
internal sealed class ObjectValue : Inferred
{
    private readonly ImmutableDictionary<ISymbol, Inferred> _members;

    private ObjectValue(ImmutableDictionary<ISymbol, Inferred> members) => _members = members;

    internal static ObjectValue Empty { get; } = new(ImmutableDictionary.Create<ISymbol, Inferred>(SymbolEqualityComparer.Default));

    internal bool IsEmpty => _members.IsEmpty;

    /// <summary>What a member holds; null where it is not known.</summary>
    internal Inferred? this[ISymbol member] => _members.TryGetValue(member.OriginalDefinition, out Inferred? value) ? value : null;

    internal Inferred Join(ObjectValue other)
    {
        Inferred both = Unknown;
        foreach (KeyValuePair<ISymbol, Inferred> member in _members)
        {
            both = other[member.Key] is { } theirs ? both.WithMember(member.Key, Join(member.Value, theirs)) : both;
        }

        return both;
    }

    internal override Inferred WithMember(ISymbol member, Inferred value) =>
        value.HasUnit || value.IsStructured ? new ObjectValue(_members.SetItem(member.OriginalDefinition, value.FromVariable(false)))
        : _members.ContainsKey(member.OriginalDefinition) ? new ObjectValue(_members.Remove(member.OriginalDefinition))
        : this;

    internal override Inferred With(IReadOnlyDictionary<IParameterSymbol, Inferred> arguments) =>
        _members.Aggregate(Unknown, (all, member) => all.WithMember(member.Key, member.Value.With(arguments)));

    private protected override bool Same(Inferred other) =>
        other is ObjectValue theirs && _members.Count == theirs._members.Count && _members.All(m => theirs[m.Key] is { } value && m.Value.SameAs(value));
}
