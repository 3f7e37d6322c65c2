using MathNet.Numerics.Distributions;

namespace Momentum.Dispersion;

/// <summary>
/// Random numbers by counter: the number is a function of seed, case and input, whatever thread asks for it and in what order.
/// </summary>
/// <remarks>
/// The finaliser is that of SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, Fast splittable pseudorandom number generators,
/// OOPSLA 2014, from memory), applied to the counter twice so that neighbouring counters and seeds are unrelated.
/// </remarks>
internal static class CounterRandom
{
    private const ulong Golden = 0x9E3779B97F4A7C15;

    // Counters a case, one for each input; and the highest number of a case, far from where the counters would overflow.
    private const int Inputs = 16;
    private const long LastCase = 1L << 58;

    /// <summary>Refuses a number that no case has.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    internal static void RequireCase(long number, string name)
    {
        if (number is < 0 or > LastCase)
        {
            throw new ArgumentOutOfRangeException(name, number, "Cases are numbered from 0 to 2^58.");
        }
    }

    /// <summary>A number between 0 and 1, neither included.</summary>
    internal static double Uniform(ulong seed, long number, int input)
    {
        ulong counter = Mix(seed + Golden) + (Golden * (((ulong)number * Inputs) + (ulong)input + 1));
        return ((Mix(Mix(counter)) >> 11) + 0.5) * (1.0 / (1UL << 53));
    }

    /// <summary>A number between 0 and 1, neither included, of an input that draws several.</summary>
    /// <param name="seed">Chooses the draws.</param>
    /// <param name="number">Number of the case.</param>
    /// <param name="stream">The input's own stream, zero or more.</param>
    /// <param name="item">Which of the input's numbers, zero or more.</param>
    internal static double Uniform(ulong seed, long number, int stream, int item)
    {
        // Streams beyond the counters of a case, and numbers beyond the first, take a seed of their own.
        ulong block = ((ulong)item << 32) + (ulong)(stream / Inputs);
        return Uniform(block == 0 ? seed : seed ^ Mix(block * Golden), number, stream % Inputs);
    }

    /// <summary>The offset from nominal that a probability level stands for, in units of the width.</summary>
    internal static double Offset(ScatterShape shape, double level) => shape switch
    {
        ScatterShape.Normal => Normal.InvCDF(0, 1, level),
        ScatterShape.Uniform => (2 * level) - 1,
        _ => 0,
    };

    private static ulong Mix(ulong value)
    {
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EB;
        return value ^ (value >> 31);
    }
}
