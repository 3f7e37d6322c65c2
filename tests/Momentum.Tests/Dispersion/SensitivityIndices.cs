using Momentum.Dispersion;

namespace Momentum.Tests.Dispersion;

/// <summary>Shares of the variance against functions whose shares are known.</summary>
public class SensitivityIndices
{
    // T. Ishigami, T. Homma, An importance quantification technique in uncertainty analysis for computer models, 1990: the
    // function, from memory; with a = 7 and b = 0.1 its indices follow on paper: V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2.
    private static readonly double[] _ishigamiFirst = [0.31391, 0.44241, 0];
    private static readonly double[] _ishigamiTotal = [0.55759, 0.44241, 0.24368];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void The_shares_of_the_function_of_Ishigami_and_Homma_are_those_published(int input)
    {
        SensitivityIndex found = Of(Ishigami, 3, input, cases: 40_000, seed: 1);

        // Three half-widths of the interval at 68 %: never by chance, since the seed is fixed.
        Assert.Equal(_ishigamiFirst[input], found.FirstOrder, 2 * found.FirstOrderError);
        Assert.Equal(_ishigamiTotal[input], found.Total, 2 * found.TotalError);
        Assert.InRange(found.TotalError, 0, 0.02);
    }

    // I. M. Sobol's g-function (Mathematics and Computers in Simulation 55, 2001, from memory): with V_i = 1/(3 (1 + a_i)²)
    // the variance is the product of (1 + V_i) less one, and what an input has alone V_i over it.
    [Fact]
    public void The_shares_of_the_function_of_Sobol_are_those_that_follow_on_paper()
    {
        double[] a = [0, 1, 4.5, 9];
        double[] part = [.. a.Select(x => 1 / (3 * (1 + x) * (1 + x)))];
        double all = part.Aggregate(1.0, (product, v) => product * (1 + v)) - 1;
        for (int input = 0; input < a.Length; input++)
        {
            SensitivityIndex found = Of(x => x.Select((u, i) => (Math.Abs((4 * u) - 2) + a[i]) / (1 + a[i])).Aggregate((p, q) => p * q), a.Length, input, 40_000, 2);
            double total = part[input] * part.Where((_, i) => i != input).Aggregate(1.0, (product, v) => product * (1 + v)) / all;

            Assert.Equal(part[input] / all, found.FirstOrder, (2 * found.FirstOrderError) + 1e-4);
            Assert.Equal(total, found.Total, (2 * found.TotalError) + 1e-4);
        }
    }

    [Fact]
    public void The_intervals_hold_the_truth_as_often_as_they_say()
    {
        const int Runs = 400;
        int first = 0;
        int total = 0;
        for (ulong seed = 0; seed < Runs; seed++)
        {
            SensitivityIndex found = Of(Ishigami, 3, 0, cases: 300, seed: 100 + seed);
            first += Math.Abs(found.FirstOrder - _ishigamiFirst[0]) <= found.FirstOrderError ? 1 : 0;
            total += Math.Abs(found.Total - _ishigamiTotal[0]) <= found.TotalError ? 1 : 0;
        }

        // 95 % less three standard errors of the count, and a point for what the delta method leaves out.
        double least = 0.95 - (3 * Math.Sqrt(0.95 * 0.05 / Runs)) - 0.01;
        Assert.InRange((double)first / Runs, least, 1);
        Assert.InRange((double)total / Runs, least, 1);
    }

    [Fact]
    public void Of_a_linear_result_each_input_has_its_part_of_the_variance_and_nothing_together()
    {
        double sum = 0;
        double[] weights = [3, 2, 1];
        for (int input = 0; input < 3; input++)
        {
            SensitivityIndex found = Of(x => x.Zip(weights, (u, w) => u * w).Sum(), 3, input, 20_000, 3);
            Assert.Equal(weights[input] * weights[input] / 14, found.Total, 0.01);
            sum += found.FirstOrder;
        }

        Assert.Equal(1, sum, 0.03);
    }

    [Fact]
    public void Components_count_by_the_sum_of_their_variances()
    {
        double[] first = new double[2000];
        double[] second = new double[2000];
        double[] exchanged = new double[2000];
        InputDraws x = InputDraws.Named("x");
        InputDraws y = InputDraws.Named("y");
        for (int i = 0; i < 1000; i++)
        {
            // (2 x, y): four fifths of the variance are x's.
            (first[2 * i], first[(2 * i) + 1]) = (2 * x.Level(1, i), y.Level(1, i));
            (second[2 * i], second[(2 * i) + 1]) = (2 * x.Level(2, i), y.Level(2, i));
            (exchanged[2 * i], exchanged[(2 * i) + 1]) = (2 * x.Level(2, i), y.Level(1, i));
        }

        SensitivityIndex found = SensitivityIndex.Of(first, second, exchanged, components: 2);

        Assert.Equal(0.8, found.Total, 2 * found.TotalError);
        Assert.Equal(0.8, found.FirstOrder, 2 * found.FirstOrderError);
    }

    [Fact]
    public void Sets_that_do_not_go_together_are_refused()
    {
        Assert.Throws<ArgumentException>(() => SensitivityIndex.Of(new double[20], new double[20], new double[19]));
        Assert.Throws<ArgumentException>(() => SensitivityIndex.Of(new double[8], new double[8], new double[8]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SensitivityIndex.Of(new double[20], new double[20], new double[20], confidence: 1));
        Assert.Equal(default, SensitivityIndex.Of(new double[20], new double[20], new double[20]) with { Confidence = 0 });
    }

    private static double Ishigami(double[] level)
    {
        double[] x = [.. level.Select(u => Math.PI * ((2 * u) - 1))];
        double s = Math.Sin(x[1]);
        return Math.Sin(x[0]) + (7 * s * s) + (0.1 * Math.Pow(x[2], 4) * Math.Sin(x[0]));
    }

    private static SensitivityIndex Of(Func<double[], double> function, int inputs, int input, int cases, ulong seed)
    {
        InputDraws[] streams = [.. Enumerable.Range(0, inputs).Select(i => InputDraws.Named($"x{i}"))];
        double[] first = new double[cases];
        double[] second = new double[cases];
        double[] exchanged = new double[cases];
        for (int i = 0; i < cases; i++)
        {
            double[] a = [.. streams.Select(s => s.Level(seed, i))];
            double[] b = [.. streams.Select(s => s.Level(seed + 1_000_000, i))];
            first[i] = function(a);
            second[i] = function(b);
            a[input] = b[input];
            exchanged[i] = function(a);
        }

        return SensitivityIndex.Of(first, second, exchanged);
    }
}
