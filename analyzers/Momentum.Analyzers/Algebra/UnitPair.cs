using System.Collections.Concurrent;
using System.Runtime.CompilerServices;

namespace Momentum.Analyzers.Algebra;

/// <summary>Two units and a power, by identity: the key under which what was made of them is remembered.</summary>
/// <remarks>
/// Code combines the same few units over and over, and exact scales are dear to multiply. Identity, not equality, because
/// equal units may have different names.
/// </remarks>
internal readonly struct UnitPair(Unit left, Unit? right, int sixths) : IEquatable<UnitPair>
{
    // More than any code has; a compiler that stays in memory does not grow without end.
    private const int Most = 10_000;

    private readonly Unit _left = left;
    private readonly Unit? _right = right;
    private readonly int _sixths = sixths;

    /// <summary>What is remembered, or else what is found now.</summary>
    internal T Recall<T>(ConcurrentDictionary<UnitPair, T> memory, Func<Unit, Unit?, int, T> find)
    {
        if (memory.TryGetValue(this, out T? known))
        {
            return known;
        }

        T found = find(_left, _right, _sixths);
        if (memory.Count < Most)
        {
            _ = memory.TryAdd(this, found);
        }

        return found;
    }

    public bool Equals(UnitPair other) => ReferenceEquals(_left, other._left) && ReferenceEquals(_right, other._right) && _sixths == other._sixths;

    public override bool Equals(object? obj) => obj is UnitPair other && Equals(other);

    public override int GetHashCode() => (((RuntimeHelpers.GetHashCode(_left) * 31) + RuntimeHelpers.GetHashCode(_right)) * 31) + _sixths;
}
