using System.Numerics;

namespace Momentum.Dispersion;

/// <summary>
/// The random numbers of one uncertain input, known by its name: a new input never changes the draws of the others.
/// </summary>
/// <remarks>
/// Every number is a function of name, seed and case, whatever thread asks for it and in what order. The name is hashed by
/// FNV-1a, 64 bits (G. Fowler, L. C. Noll, K.-P. Vo, from memory), over its UTF-16 code units. <c>default</c> is the stream of no
/// name. Equality is by the hash.
/// </remarks>
public readonly record struct InputDraws : IEqualityOperators<InputDraws, InputDraws, bool>
{
    private readonly ulong _key;

    private InputDraws(ulong key) => _key = key;

    /// <summary>The stream of a name, such as <c>vehicle.mass</c>.</summary>
    /// <param name="name">The name; capitals matter.</param>
    public static InputDraws Named(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        ulong hash = 14695981039346656037;
        foreach (char unit in name)
        {
            hash = (hash ^ unit) * 1099511628211;
        }

        return new(hash);
    }

    /// <summary>The probability level that a case draws, between 0 and 1, neither included: evenly distributed.</summary>
    /// <param name="seed">Chooses the draws; any number.</param>
    /// <param name="number">Number of the case, from zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    public double Level(ulong seed, long number)
    {
        CounterRandom.RequireCase(number, nameof(number));
        return CounterRandom.Uniform(seed ^ _key, number, 0);
    }
}
