namespace Momentum.Tests.Designs;

/// <summary>The numbers that one random design is made of: the same for the same seed and number, so that a design can be made again.</summary>
internal sealed class Draw(int seed, int number)
{
    private readonly Random _random = new(HashCode(seed, number));

    /// <summary>Whether something of that chance comes to pass.</summary>
    internal bool Chance(double probability) => _random.NextDouble() < probability;

    internal double Between(double low, double high) => low + ((high - low) * _random.NextDouble());

    /// <summary>Evenly on a logarithmic scale.</summary>
    internal double Ratio(double low, double high) => Math.Exp(Between(Math.Log(low), Math.Log(high)));

    internal T Of<T>(params ReadOnlySpan<T> choices) => choices[_random.Next(choices.Length)];

    // Not System.HashCode, which differs from process to process.
    private static int HashCode(int seed, int number) => unchecked((number * -1640531527) ^ (seed * 668265263));
}
