using FsCheck.Xunit;
using Momentum.Numerics;

namespace Momentum.Tests.Numerics;

public class EventLocationTests
{
    private static readonly OdeTolerances _tight = OdeTolerances.Of(3e-14, 1e-15);

    private static OdeIntegrator<TSystem, Levels, DormandPrince853> Integrator<TSystem>(TSystem system, EventDirection direction, bool terminal, params double[] levels)
        where TSystem : struct, IOdeSystem
    {
        return new OdeIntegrator<TSystem, Levels, DormandPrince853>(system, new Levels(0, levels, new EventRule(direction, terminal)), _tight);
    }

    [Fact]
    public void Terminal_events_of_a_sine_lie_at_the_multiples_of_pi()
    {
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Either, true, 0.0);
        integrator.Start(0.0, [0.0, 1.0]);
        for (int n = 1; n <= 20; n++)
        {
            Assert.Equal(StepResult.EventReached, integrator.Run(100.0));

            // The located time is as good as the solution; the function itself vanishes to the resolution of the time.
            Assert.Equal(n * Math.PI, integrator.Time, 1e-14 * (10 + (n * Math.PI)));
            Assert.InRange(Math.Abs(integrator.State[0]), 0.0, 4e-16 * n * Math.PI);
            Assert.Equal(integrator.Time, integrator.Events[0].Time);
        }
    }

    [Theory]
    [InlineData(EventDirection.Rising, 2.0 * Math.PI)]
    [InlineData(EventDirection.Falling, Math.PI)]
    public void Direction_selects_the_zero(EventDirection direction, double expected)
    {
        var integrator = Integrator(new Oscillator(1.0), direction, true, 0.0);
        integrator.Start(0.0, [0.0, 1.0]);
        Assert.Equal(StepResult.EventReached, integrator.Run(10.0));
        Assert.Equal(expected, integrator.Time, 2e-13);
    }

    [Property(MaxTest = 100)]
    public void Any_level_of_a_sine_is_found_where_the_arcsine_says(short step)
    {
        double level = step / 32768.0 * 0.999;
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Falling, true, level);
        integrator.Start(0.0, [0.0, 1.0]);
        Assert.Equal(StepResult.EventReached, integrator.Run(10.0));
        double expected = Math.PI - Math.Asin(level);

        // An error e of the state moves the time by e / |slope|, and the slope at the level is sqrt(1 - level²).
        Assert.Equal(expected, integrator.Time, 2e-14 / Math.Sqrt(1.0 - (level * level)));
    }

    [Fact]
    public void Passing_events_are_listed_in_order_of_time_with_all_functions_together()
    {
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Either, false, 0.5, 0.0, -0.5);
        integrator.Start(0.0, [0.0, 1.0]);
        List<LocatedEvent> found = [];
        StepResult result;
        do
        {
            result = integrator.Step(2.0 * Math.PI);
            found.AddRange(integrator.Events);
        }
        while (result == StepResult.StepTaken);

        Assert.Equal(StepResult.EndReached, result);
        Assert.Equal([0, 0, 1, 2, 2], found.Where(e => e.Time < 6.2).Select(e => e.Index));
        double[] expected = [1, 5, 6, 7, 11];
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i] * Math.PI / 6.0, found[i].Time, 1e-12);
        }
    }

    [Fact]
    public void Zeros_of_the_Van_der_Pol_oscillation_agree_with_SciPy()
    {
        // SciPy 1.10.1: solve_ivp(lambda t,y: [y[1], 2*(1-y[0]**2)*y[1]-y[0]], (0,20), [2,0], method='DOP853', rtol=3e-14,
        //   atol=1e-15, events=lambda t,y: y[0]). SciPy finds its roots with a tolerance of 4 roundings on its dense output.
        double[] expected = [2.867673906067528, 6.6826052227714765, 10.49754246194035, 14.312479701777683, 18.127416941615095];
        var integrator = Integrator(new VanDerPol(2.0), EventDirection.Either, true, 0.0);
        integrator.Start(0.0, [2.0, 0.0]);
        foreach (double time in expected)
        {
            Assert.Equal(StepResult.EventReached, integrator.Run(20.0));
            Assert.Equal(time, integrator.Time, 2e-12);
        }

        Assert.Equal(StepResult.EndReached, integrator.Run(20.0));
        Assert.Equal(-1.7283079289532874, integrator.State[0], 1e-11);
        Assert.Equal(0.3978815958040569, integrator.State[1], 1e-11);
    }

    [Fact]
    public void Two_functions_with_the_same_zero_are_reported_together_once()
    {
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Either, true, 0.25, 0.25);
        integrator.Start(0.0, [0.0, 1.0]);
        Assert.Equal(StepResult.EventReached, integrator.Run(2.0));
        Assert.Equal([0, 1], integrator.Events.ToArray().Select(e => e.Index));
        Assert.Equal(Math.Asin(0.25), integrator.Time, 1e-14);
        Assert.Equal(StepResult.EndReached, integrator.Run(2.0));
    }

    [Fact]
    public void A_terminal_event_hides_what_comes_later_until_the_run_goes_on()
    {
        // 0.9 and 0.900001 are crossed within one step; the second must not be lost.
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Rising, true, 0.9, 0.900001);
        integrator.Start(0.0, [0.0, 1.0]);
        Assert.Equal(StepResult.EventReached, integrator.Run(1.5));
        Assert.Equal(0, Assert.Single(integrator.Events.ToArray()).Index);
        Assert.Equal(StepResult.EventReached, integrator.Run(1.5));
        Assert.Equal(1, Assert.Single(integrator.Events.ToArray()).Index);
        Assert.Equal(Math.Asin(0.900001), integrator.Time, 1e-13);
        Assert.Equal(StepResult.EndReached, integrator.Run(1.5));
    }

    [Fact]
    public void A_zero_at_the_start_is_no_event_even_if_rounding_leaves_it_on_the_other_side()
    {
        foreach (double off in new[] { 0.0, 1e-17, -1e-17 })
        {
            var integrator = Integrator(new Oscillator(1.0), EventDirection.Either, true, 0.0);
            integrator.Start(0.0, [off, 1.0]);
            Assert.Equal(StepResult.EventReached, integrator.Run(10.0));
            Assert.Equal(Math.PI, integrator.Time, 1e-13);
        }
    }

    [Fact]
    public void Two_zeros_within_one_step_are_seen_by_the_looks_between()
    {
        // A step at this loose tolerance is some two units long; the level 0.8 is passed up and down within 1.3 of them.
        var integrator = new OdeIntegrator<Oscillator, Levels, DormandPrince853>(new Oscillator(1.0), new Levels(0, [0.8], default), OdeTolerances.Of(1e-6, 1e-6), new StepLimits { FirstStep = 2.5, EventSamples = 16 });
        integrator.Start(0.0, [0.0, 1.0]);
        List<double> times = [];
        while (integrator.Step(3.0) == StepResult.StepTaken)
        {
            times.AddRange(integrator.Events.ToArray().Select(e => e.Time));
        }

        times.AddRange(integrator.Events.ToArray().Select(e => e.Time));
        Assert.Equal(2, times.Count);
        Assert.Equal(Math.Asin(0.8), times[0], 1e-5);
        Assert.Equal(Math.PI - Math.Asin(0.8), times[1], 1e-5);
    }

    [Property(MaxTest = 200)]
    public void Two_zeros_are_seen_where_no_even_look_lies_between_them(short start, byte depth)
    {
        // From the sine's zero of any phase, the level is passed for a part of the step down to a thousandth.
        double phase = start / 32768.0;
        double level = Math.Cos(0.001 + (depth / 512.0));
        var integrator = new OdeIntegrator<Oscillator, Levels, DormandPrince853>(
            new Oscillator(1.0), new Levels(0, [level], new EventRule(EventDirection.Falling, true)), _tight, new StepLimits { EventSamples = 2 });
        integrator.Start(0.0, [Math.Sin(phase), Math.Cos(phase)]);
        Assert.Equal(StepResult.EventReached, integrator.Run(6.0));
        Assert.Equal(Math.PI - Math.Asin(level) - phase, integrator.Time, 2e-14 / Math.Sqrt(1.0 - (level * level)));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(1e-16)]
    [InlineData(-1e-16)]
    public void A_function_that_starts_before_its_event_is_back_at_it_within_the_first_look(double off)
    {
        // y = t³ - s t² stands on zero at the start, is below it for the time s, and rises ever after: to within rounding it
        // could be taken for one that has left its zero upward.
        foreach (double dip in new[] { 0.3, 1e-2, 1e-4, 1e-7 })
        {
            var integrator = new OdeIntegrator<Cubic, Levels, DormandPrince853>(
                new Cubic(dip), new Levels(0, [0.0], new EventRule(EventDirection.Rising, true, true)), _tight, new StepLimits { EventSamples = 2 });
            integrator.Start(0.0, [off]);
            Assert.Equal(StepResult.EventReached, integrator.Run(5.0));

            // What is off at the start moves the zero by its cube root at most, where the dip is less than that.
            Assert.Equal(dip, integrator.Time, (1e-3 * dip) + (2 * Math.Cbrt(Math.Abs(off))));
        }
    }

    [Fact]
    public void A_function_that_never_was_before_its_event_has_it_at_the_start()
    {
        var integrator = new OdeIntegrator<Oscillator, Levels, DormandPrince853>(
            new Oscillator(1.0), new Levels(0, [0.0], new EventRule(EventDirection.Rising, true, true)), _tight, default);
        integrator.Start(0.0, [1e-17, 1.0]);
        Assert.Equal(StepResult.EventReached, integrator.Run(5.0));
        Assert.Equal(0.0, integrator.Time);
    }

    [Fact]
    public void Events_are_found_backward_in_time()
    {
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Either, true, 0.0);
        integrator.Start(4.0, [Math.Sin(4.0), Math.Cos(4.0)]);
        Assert.Equal(StepResult.EventReached, integrator.Run(0.5));
        Assert.Equal(Math.PI, integrator.Time, 1e-13);
        Assert.Equal(StepResult.EndReached, integrator.Run(0.5));
    }

    [Fact]
    public void Dense_output_covers_the_step_that_an_event_cut()
    {
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Either, true, 0.0);
        integrator.Start(0.0, [0.0, 1.0]);
        integrator.Run(10.0);
        double middle = 0.5 * (integrator.PreviousTime + integrator.Time);
        double[] state = new double[2];
        integrator.Interpolate(middle, state);
        Assert.Equal(Math.Sin(middle), state[0], 1e-12);
    }

    [Fact]
    public void An_event_function_that_is_not_a_number_is_refused()
    {
        var integrator = Integrator(new Oscillator(1.0), EventDirection.Either, true, double.NaN);
        Assert.Throws<IntegrationRefusedException>(() => integrator.Start(0.0, [0.0, 1.0]));
    }
}
