using Momentum.Numerics;

namespace Momentum.Tests.Numerics;

/// <summary>What every method of the integrator has to satisfy: the order conditions of its tables, and the orders that it shows when it runs.</summary>
/// <typeparam name="TMethod">The method.</typeparam>
/// <param name="steps">A number of steps over ExponentialOfSine from 0 to 4 at which the error shows its order.</param>
/// <param name="step">A step from 0.3 in which the dense output shows its order.</param>
public abstract class RungeKuttaMethodTests<TMethod>(int steps, double step)
    where TMethod : struct, IRungeKuttaMethod
{
    // Sums of up to 13 terms of size up to about 40, known to half a unit in the last place each.
    private const double Rounding = 5e-14;

    /// <summary>A row of the Runge–Kutta matrix, with its zeros.</summary>
    protected static double[] Row(int row)
    {
        Range range = TMethod.RowStart[row]..TMethod.RowStart[row + 1];
        return Dense(TMethod.Weights[range], TMethod.Stages[range]);
    }

    /// <summary>The weights of the stages in the dense output at a fraction of the step.</summary>
    protected static double[] DenseWeights(double x)
    {
        double[] end = Row(TMethod.StageCount);
        List<double[]> coefficients =
        [
            end,
            [.. end.Select((b, i) => (i == 0 ? 1.0 : 0.0) - b)],
            [.. end.Select((b, i) => (2.0 * b) - (i == 0 ? 1.0 : 0.0) - (i == TMethod.StageCount ? 1.0 : 0.0))],
        ];
        for (int row = 0; row < TMethod.DenseRowStart.Length - 1; row++)
        {
            Range range = TMethod.DenseRowStart[row]..TMethod.DenseRowStart[row + 1];
            coefficients.Add(Dense(TMethod.DenseWeights[range], TMethod.DenseStages[range]));
        }

        double[] weights = new double[TMethod.ExtendedStageCount];
        double factor = 1.0;
        for (int row = 0; row < coefficients.Count; row++)
        {
            factor *= row % 2 == 0 ? x : 1.0 - x;
            for (int i = 0; i < weights.Length; i++)
            {
                weights[i] += factor * coefficients[row][i];
            }
        }

        return weights;
    }

    /// <summary>How far the moment of error weights with a power of the nodes is from zero.</summary>
    protected static double Moment(ReadOnlySpan<double> weights, ReadOnlySpan<byte> stages, int power) => Moment(Dense(weights, stages), power);

    [Fact]
    public void Weights_of_every_stage_sum_to_its_node()
    {
        for (int stage = 0; stage < TMethod.ExtendedStageCount; stage++)
        {
            Assert.Equal(TMethod.Nodes[stage], Row(stage).Sum(), Rounding);
        }
    }

    [Fact]
    public void Stages_use_earlier_stages_only()
    {
        for (int stage = 0; stage < TMethod.ExtendedStageCount; stage++)
        {
            Assert.All(Row(stage)[stage..], weight => Assert.Equal(0.0, weight));
        }
    }

    [Fact]
    public void Quadrature_conditions_hold_up_to_the_order()
    {
        for (int power = 0; power < TMethod.Order; power++)
        {
            Assert.Equal(1.0 / (power + 1), Moment(Row(TMethod.StageCount), power), Rounding);
        }
    }

    [Fact]
    public void Conditions_with_two_levels_hold_up_to_the_order()
    {
        // sum b_i c_i^p sum a_ij c_j^q = 1 / ((q + 1)(p + q + 2)) for p + q + 2 <= order.
        double[] b = Row(TMethod.StageCount);
        for (int q = 1; q <= TMethod.Order - 2; q++)
        {
            for (int p = 0; p + q + 2 <= TMethod.Order; p++)
            {
                double sum = 0.0;
                for (int i = 0; i < TMethod.StageCount; i++)
                {
                    sum += b[i] * Math.Pow(TMethod.Nodes[i], p) * Moment(Row(i), q);
                }

                Assert.Equal(1.0 / ((q + 1) * (p + q + 2)), sum, Rounding);
            }
        }
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    [InlineData(1.0)]
    public void Quadrature_conditions_of_the_dense_output_hold_up_to_its_order(double x)
    {
        // Its weights are up to 500, so that rounding weighs more.
        for (int power = 0; power < TMethod.DenseOrder; power++)
        {
            Assert.Equal(Math.Pow(x, power + 1) / (power + 1), Moment(DenseWeights(x), power), 20.0 * Rounding);
        }
    }

    [Fact]
    public void Global_error_falls_with_the_power_of_the_step_that_the_order_names()
    {
        // The measured order wanders a little around the asymptotic one.
        double order = Math.Log2(ErrorWithFixedStep(steps) / ErrorWithFixedStep(2 * steps));
        Assert.InRange(order, TMethod.Order - 0.5, TMethod.Order + 1.5);
    }

    [Fact]
    public void In_one_step_dense_output_and_end_err_with_one_power_more_than_their_orders()
    {
        (double denseLong, double endLong) = ErrorsOfOneStep(step);
        (double denseShort, double endShort) = ErrorsOfOneStep(0.5 * step);
        Assert.InRange(Math.Log2(denseLong / denseShort), TMethod.DenseOrder + 0.2, TMethod.DenseOrder + 2.5);
        Assert.InRange(Math.Log2(endLong / endShort), TMethod.Order, TMethod.Order + 2.5);
    }

    [Fact]
    public void Error_control_keeps_a_long_oscillation_near_the_tolerance()
    {
        foreach (double tolerance in new[] { 1e-4, 1e-6, 1e-8, 1e-10 })
        {
            var integrator = new OdeIntegrator<Oscillator, NoEvents, TMethod>(new Oscillator(1.0), default, OdeTolerances.Of(tolerance, tolerance));
            integrator.Start(0.0, [0.0, 1.0]);
            integrator.Run(50.0);

            // Errors of single steps add up over some 20 (order 8, loose) to 2000 steps (order 5, tight).
            Assert.InRange(Math.Abs(integrator.State[0] - Math.Sin(50.0)), 0.0, 300.0 * tolerance);
        }
    }

    [Fact]
    public void A_terminal_event_ends_the_step_where_its_function_vanishes()
    {
        var integrator = new OdeIntegrator<Oscillator, Levels, TMethod>(new Oscillator(1.0), new Levels(0, [0.8], new EventRule(EventDirection.Rising, true)), OdeTolerances.Of(1e-12, 1e-12));
        integrator.Start(0.0, [0.0, 1.0]);
        Assert.Equal(StepResult.EventReached, integrator.Run(10.0));
        Assert.Equal(Math.Asin(0.8), integrator.Time, 1e-11);
        Assert.Equal(0.8, integrator.State[0], 1e-15);
    }

    [Fact]
    public void Steps_interpolation_and_events_allocate_nothing()
    {
        var integrator = new OdeIntegrator<VanDerPol, Levels, TMethod>(new VanDerPol(2.0), new Levels(0, [0.0, 1.0], new EventRule(EventDirection.Either, true)), OdeTolerances.Of(1e-9, 1e-9));
        double[] start = [2.0, 0.0];
        double[] state = new double[2];
        Assert.Equal(0, Allocation.Of(() =>
        {
            integrator.Start(0.0, start);
            while (integrator.Step(20.0) != StepResult.EndReached)
            {
                integrator.Interpolate(0.5 * (integrator.PreviousTime + integrator.Time), state);
            }
        }));
    }

    private static double[] Dense(ReadOnlySpan<double> weights, ReadOnlySpan<byte> stages)
    {
        double[] dense = new double[TMethod.ExtendedStageCount];
        for (int i = 0; i < weights.Length; i++)
        {
            dense[stages[i]] = weights[i];
        }

        return dense;
    }

    private static double Moment(double[] weights, int power)
    {
        double sum = 0.0;
        for (int i = 0; i < weights.Length; i++)
        {
            sum += weights[i] * Math.Pow(TMethod.Nodes[i], power);
        }

        return sum;
    }

    /// <summary>Error at t = 4 of y' = y cos t in steps of equal length: the tolerance is too loose to matter.</summary>
    private static double ErrorWithFixedStep(int steps)
    {
        double length = 4.0 / steps;
        var integrator = new OdeIntegrator<ExponentialOfSine, NoEvents, TMethod>(default, default, OdeTolerances.Of(0.0, 1e6), new StepLimits { MaximumStep = length, FirstStep = length });
        integrator.Start(0.0, [1.0]);
        integrator.Run(4.0);
        Assert.Equal(steps, integrator.AcceptedSteps);
        return Math.Abs(integrator.State[0] - Math.Exp(Math.Sin(4.0)));
    }

    private static (double Dense, double End) ErrorsOfOneStep(double length)
    {
        var integrator = new OdeIntegrator<ExponentialOfSine, NoEvents, TMethod>(default, default, OdeTolerances.Of(0.0, 1e6), new StepLimits { FirstStep = length });
        integrator.Start(0.3, [Math.Exp(Math.Sin(0.3))]);
        integrator.Step(0.3 + length);
        double worst = 0.0;
        double[] state = new double[1];
        for (int i = 1; i < 32; i++)
        {
            double t = 0.3 + (length * i / 32.0);
            integrator.Interpolate(t, state);
            worst = Math.Max(worst, Math.Abs(state[0] - Math.Exp(Math.Sin(t))));
        }

        return (worst, Math.Abs(integrator.State[0] - Math.Exp(Math.Sin(0.3 + length))));
    }
}

public sealed class DormandPrince853Tests() : RungeKuttaMethodTests<DormandPrince853>(steps: 8, step: 1.0)
{
    [Theory]
    [InlineData(5)]
    [InlineData(3)]
    public void Error_weights_vanish_on_polynomials_below_the_order_of_the_embedded_solution(int order)
    {
        double At(int power) => order == 5
            ? Moment(DormandPrince853.ErrorWeights, DormandPrince853.ErrorStages, power)
            : Moment(DormandPrince853.SecondErrorWeights, DormandPrince853.SecondErrorStages, power);
        for (int power = 0; power < order; power++)
        {
            Assert.Equal(0.0, At(power), 5e-14);
        }

        Assert.True(Math.Abs(At(order)) > 1e-6, $"The estimate of order {order} would see nothing: {At(order)}.");
    }
}

public sealed class DormandPrince54Tests() : RungeKuttaMethodTests<DormandPrince54>(steps: 32, step: 0.25)
{
    [Fact]
    public void Error_weights_vanish_on_polynomials_below_the_order_of_the_embedded_solution()
    {
        static double At(int power) => Moment(DormandPrince54.ErrorWeights, DormandPrince54.ErrorStages, power);
        for (int power = 0; power < 4; power++)
        {
            Assert.Equal(0.0, At(power), 1e-16);
        }

        Assert.True(Math.Abs(At(4)) > 1e-6);
    }

    [Fact]
    public void Dense_output_is_that_of_SciPy()
    {
        // The matrix P of scipy.integrate, class RK45 (file rk.py, SciPy 1.10.1): weights of the stages in powers of the fraction.
        double[][] table =
        [
            [1.0, -8048581381.0 / 2820520608.0, 8663915743.0 / 2820520608.0, -12715105075.0 / 11282082432.0],
            [0.0, 0.0, 0.0, 0.0],
            [0.0, 131558114200.0 / 32700410799.0, -68118460800.0 / 10900136933.0, 87487479700.0 / 32700410799.0],
            [0.0, -1754552775.0 / 470086768.0, 14199869525.0 / 1410260304.0, -10690763975.0 / 1880347072.0],
            [0.0, 127303824393.0 / 49829197408.0, -318862633887.0 / 49829197408.0, 701980252875.0 / 199316789632.0],
            [0.0, -282668133.0 / 205662961.0, 2019193451.0 / 616988883.0, -1453857185.0 / 822651844.0],
            [0.0, 40617522.0 / 29380423.0, -110615467.0 / 29380423.0, 69997945.0 / 29380423.0],
        ];
        foreach (double x in new[] { 0.1, 0.35, 0.6, 0.95 })
        {
            double[] weights = DenseWeights(x);
            for (int i = 0; i < table.Length; i++)
            {
                double expected = table[i].Select((p, power) => p * Math.Pow(x, power + 1)).Sum();
                Assert.Equal(expected, weights[i], 1e-14);
            }
        }
    }
}

public sealed class UnsoundMethodTests
{
    [Fact]
    public void A_method_whose_tables_do_not_fit_together_is_refused_with_what_does_not_fit()
    {
        var refused = Assert.Throws<NotSupportedException>(() => new OdeIntegrator<Oscillator, NoEvents, Misprinted>(new Oscillator(1.0), default, OdeTolerances.Of(1e-6, 1e-6)));
        Assert.Contains(nameof(Misprinted), refused.Message, StringComparison.Ordinal);
        Assert.Contains("do not sum to its node", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>Heun's method of order 2 with Euler's as the embedded one, and a misprint in its node.</summary>
    private readonly struct Misprinted : IRungeKuttaMethod
    {
        public static int Order => 2;

        public static int DenseOrder => 2;

        public static int ErrorPower => 2;

        public static int StageCount => 2;

        public static int ExtendedStageCount => 3;

        public static ReadOnlySpan<double> Nodes => new double[] { 0.0, 0.5, 1.0 };

        public static ReadOnlySpan<byte> RowStart => [0, 0, 1, 3];

        public static ReadOnlySpan<byte> Stages => [0, 0, 1];

        public static ReadOnlySpan<double> Weights => new double[] { 1.0, 0.5, 0.5 };

        public static ReadOnlySpan<byte> ErrorStages => [0, 1];

        public static ReadOnlySpan<double> ErrorWeights => new double[] { -0.5, 0.5 };

        public static ReadOnlySpan<byte> SecondErrorStages => [];

        public static ReadOnlySpan<double> SecondErrorWeights => [];

        public static double ErrorMeasure(double length, int components, double sum, double secondSum) => length * Math.Sqrt(sum / components);

        public static ReadOnlySpan<byte> DenseRowStart => [0];

        public static ReadOnlySpan<byte> DenseStages => [];

        public static ReadOnlySpan<double> DenseWeights => [];
    }
}
