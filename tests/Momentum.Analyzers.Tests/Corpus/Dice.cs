namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>A random sequence that is the same on every machine and in every version of the framework (SplitMix64).</summary>
internal sealed class Dice(ulong seed)
{
    private ulong _state = seed;

    internal int Below(int limit)
    {
        _state += 0x9E3779B97F4A7C15;
        ulong mixed = _state;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return (int)((mixed ^ (mixed >> 31)) % (ulong)limit);
    }

    internal T Of<T>(IReadOnlyList<T> choices) => choices[Below(choices.Count)];
}
