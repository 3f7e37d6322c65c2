using Momentum.Dispersion;

namespace Momentum.Tests.Dispersion;

/// <summary>An offset drawn from a law is distributed as the law says.</summary>
public class ScatterLaws
{
    private const int Count = 200_000;

    public static TheoryData<string, ScatterLaw> Laws => new()
    {
        { "normal", ScatterLaw.Normal(2, 2) },
        { "normal, wider above", ScatterLaw.Normal(1, 3) },
        { "normal, above only", ScatterLaw.Normal(0, 3) },
        { "normal, cut off at two sigma below", ScatterLaw.Normal(2, 2).Within(-4, double.PositiveInfinity) },
        { "normal, cut off at the nominal value", ScatterLaw.Normal(2, 2).Within(0, 3) },
        { "uniform", ScatterLaw.Uniform(2, 2) },
        { "uniform, above only", ScatterLaw.Uniform(0, 0.2) },
        { "samples", ScatterLaw.Samples([3, -1, -2, 0.5]) },
        { "none", ScatterLaw.None },
    };

    [Theory]
    [MemberData(nameof(Laws))]
    public void Mean_and_standard_deviation_of_the_draws_are_those_stated_of_the_law(string kind, ScatterLaw law)
    {
        double[] values = Draw(law);
        double mean = values.Average();
        double deviation = Math.Sqrt(values.Average(v => (v - mean) * (v - mean)));

        // Four standard errors; of a deviation below 1 / sqrt(n) of it for all of these laws.
        Assert.True(Math.Abs(mean - law.Mean) <= (4 * law.StandardDeviation / Math.Sqrt(Count)) + 1e-12, kind);
        Assert.True(Math.Abs(deviation - law.StandardDeviation) <= (4 * law.StandardDeviation / Math.Sqrt(Count)) + 1e-12, kind);
        Assert.All(values, v => Assert.InRange(v, law.Least, law.Most));
    }

    [Fact]
    public void Half_of_the_draws_of_unequal_standard_deviations_lie_on_either_side_each_side_with_its_own()
    {
        double[] values = Draw(ScatterLaw.Normal(1, 3));

        Assert.Equal(0.5, values.Count(v => v > 0) / (double)Count, 4 * 0.5 / Math.Sqrt(Count));
        Assert.Equal(3, Math.Sqrt(values.Where(v => v > 0).Average(v => v * v)), 0.03);
        Assert.Equal(1, Math.Sqrt(values.Where(v => v < 0).Average(v => v * v)), 0.01);
    }

    // The normal law beyond four sigma holds 3.2e-5 (tables of the normal distribution, from memory).
    [Fact]
    public void Limits_beyond_four_sigma_leave_the_standard_deviation_within_one_per_cent()
    {
        ScatterLaw law = ScatterLaw.Normal(1, 1).Within(-4, double.PositiveInfinity);

        Assert.Equal(1, law.StandardDeviation, 0.01);
        Assert.Equal(3.2e-5, law.CutOff, 1e-6);
    }

    [Fact]
    public void Limits_that_contradict_an_even_scatter_or_samples_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ScatterLaw.Uniform(2, 2).Within(-1, 5));
        Assert.Throws<ArgumentException>(() => ScatterLaw.Samples([-2, 1]).Within(-1, 5));
        Assert.Throws<ArgumentException>(() => ScatterLaw.Normal(1, 1).Within(1, 5));
        Assert.Throws<ArgumentException>(() => ScatterLaw.Samples([1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScatterLaw.Normal(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ScatterLaw.Uniform(1, double.NaN));
    }

    [Fact]
    public void Laws_are_equal_by_value()
    {
        Assert.Equal(ScatterLaw.Samples([2, -1]), ScatterLaw.Samples([-1, 2]));
        Assert.Equal(ScatterLaw.Normal(1, 2).Within(-1, 9), ScatterLaw.Normal(1, 2).Within(-1, 9));
        Assert.NotEqual(ScatterLaw.Normal(1, 2), ScatterLaw.Uniform(1, 2));
        Assert.Equal(ScatterLaw.None, ScatterLaw.Normal(0, 0));
    }

    [Theory]
    [InlineData(0.8, 2)]
    [InlineData(-0.6, 2)]
    [InlineData(-0.3, 4)]
    [InlineData(1, 3)]
    public void Correlated_inputs_keep_their_own_law_and_have_the_stated_coefficient(double coefficient, int count)
    {
        InputDraws[] streams = [.. Enumerable.Range(0, count).Select(i => InputDraws.Named($"input {i}"))];
        ScatterLaw law = ScatterLaw.Normal(1, 1);
        double[][] values = [.. streams.Select(_ => new double[Count])];
        double[] levels = new double[count];
        for (int i = 0; i < Count; i++)
        {
            for (int k = 0; k < count; k++)
            {
                levels[k] = streams[k].Level(3, i);
            }

            CorrelatedLevels.Mix(levels, coefficient);
            for (int k = 0; k < count; k++)
            {
                values[k][i] = law.At(levels[k]);
            }
        }

        Assert.Equal(coefficient, values[0].Zip(values[1], (x, y) => x * y).Average(), 4 * Math.Sqrt(2.0 / Count));
        Assert.Equal(coefficient, values[^1].Zip(values[0], (x, y) => x * y).Average(), 4 * Math.Sqrt(2.0 / Count));
        Assert.All(values, v => Assert.Equal(1, Math.Sqrt(v.Average(x => x * x)), 4 / Math.Sqrt(2.0 * Count)));
    }

    [Fact]
    public void A_coefficient_that_a_group_cannot_have_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CorrelatedLevels.Require(-0.6, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => CorrelatedLevels.Require(1.1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => CorrelatedLevels.Require(0.5, 1));
    }

    // Pinned, from an independent computation of hash and finaliser: the draws of a case must not change because another
    // input came or the program did.
    [Theory]
    [InlineData("vehicle.mass", 1UL, 0L, 0.6621027887911932)]
    [InlineData("vehicle.mass", 1UL, 1L, 0.8267182062069987)]
    [InlineData("despin.weight_mass[1]", 77UL, 123456789L, 0.017228615794634805)]
    public void A_named_stream_gives_the_same_numbers_for_ever(string name, ulong seed, long number, double expected) =>
        Assert.Equal(expected, InputDraws.Named(name).Level(seed, number));

    [Fact]
    public void Streams_of_different_names_are_unrelated()
    {
        InputDraws one = InputDraws.Named("despin.weight_mass");
        InputDraws other = InputDraws.Named("despin.weight_mass each 0");
        double sum = 0;
        for (int i = 0; i < Count; i++)
        {
            sum += (one.Level(1, i) - 0.5) * (other.Level(1, i) - 0.5);
        }

        Assert.Equal(0, 12 * sum / Count, 4 / Math.Sqrt(Count));
    }

    private static double[] Draw(ScatterLaw law)
    {
        var stream = InputDraws.Named("draws");
        return [.. Enumerable.Range(0, Count).Select(i => law.At(stream.Level(7, i)))];
    }
}
