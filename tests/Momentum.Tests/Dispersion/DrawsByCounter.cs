using MathNet.Numerics.Distributions;
using Momentum.Dispersion;

namespace Momentum.Tests.Dispersion;

/// <summary>The draws are what they claim to be distributed like, and unrelated to one another.</summary>
public class DrawsByCounter
{
    private const int Count = 100_000;

    // Kolmogorov's test: the largest departure of the sample's distribution from the claimed one exceeds 1.95/sqrt(n) with
    // probability 0.001 (asymptotic formula 2 exp(-2 x²), from memory). The seeds are fixed, so this never fails by chance.
    [Theory]
    [InlineData(1UL, 0)]
    [InlineData(2UL, 7)]
    [InlineData(ulong.MaxValue, 3)]
    public void Normal_draws_are_normal(ulong seed, int input)
    {
        double[] values = [.. Enumerable.Range(0, Count).Select(i => CounterRandom.Offset(ScatterShape.Normal, CounterRandom.Uniform(seed, i, input)))];
        Array.Sort(values);

        double worst = 0;
        for (int i = 0; i < Count; i++)
        {
            double expected = Normal.CDF(0, 1, values[i]);
            worst = Math.Max(worst, Math.Max(Math.Abs(expected - ((double)i / Count)), Math.Abs(expected - ((i + 1.0) / Count))));
        }

        Assert.InRange(worst, 0, 1.95 / Math.Sqrt(Count));
    }

    [Fact]
    public void Uniform_draws_fill_the_limits_evenly()
    {
        double[] values = [.. Enumerable.Range(0, Count).Select(i => CounterRandom.Offset(ScatterShape.Uniform, CounterRandom.Uniform(5, i, 2)))];

        Assert.All(values, value => Assert.InRange(value, -1, 1));
        // Standard errors: 1/sqrt(3 n) of the mean, sqrt(4/45/n) of the mean square; four of each.
        Assert.Equal(0, values.Average(), 4 / Math.Sqrt(3.0 * Count));
        Assert.Equal(1.0 / 3, values.Average(value => value * value), 4 * Math.Sqrt(4.0 / 45 / Count));
    }

    [Theory]
    [InlineData(1UL, 0L, 0, 1UL, 1L, 0)]
    [InlineData(1UL, 0L, 0, 1UL, 0L, 1)]
    [InlineData(1UL, 0L, 0, 2UL, 0L, 0)]
    [InlineData(1UL, 0L, 15, 1UL, 1L, 0)]
    public void Neighbouring_cases_inputs_and_seeds_are_uncorrelated(
        ulong seed, long index, int input, ulong otherSeed, long otherIndex, int otherInput)
    {
        double sum = 0;
        for (int i = 0; i < Count; i++)
        {
            sum += (CounterRandom.Uniform(seed, index + i, input) - 0.5) * (CounterRandom.Uniform(otherSeed, otherIndex + i, otherInput) - 0.5);
        }

        // The correlation's standard error is 1/sqrt(n); four of it.
        Assert.Equal(0, 12 * sum / Count, 4 / Math.Sqrt(Count));
    }

    [Fact]
    public void A_draw_never_reaches_its_ends()
    {
        for (int i = 0; i < Count; i++)
        {
            Assert.InRange(CounterRandom.Uniform(9, i, 0), double.Epsilon, 1 - 1e-16);
        }
    }
}
