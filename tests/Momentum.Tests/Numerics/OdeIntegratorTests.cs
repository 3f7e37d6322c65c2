using FsCheck.Xunit;
using Momentum.Numerics;

namespace Momentum.Tests.Numerics;

public class OdeIntegratorTests
{
    private static readonly OdeTolerances _tight = OdeTolerances.Of(3e-14, 1e-15);

    private static OdeIntegrator<TSystem, NoEvents, DormandPrince853> Integrator<TSystem>(TSystem system, OdeTolerances? tolerances = null, StepLimits limits = default)
        where TSystem : struct, IOdeSystem
    {
        return new OdeIntegrator<TSystem, NoEvents, DormandPrince853>(system, default, tolerances ?? _tight, limits);
    }

    [Fact]
    public void Arenstorf_orbit_closes_after_its_period()
    {
        // Initial values and period as in Hairer, Nørsett and Wanner, section II.0 (from memory, not read). A Taylor series of order 60
        // with 45 digits, run outside this project, closes to 1e-26 with them, and gives the state at half the period below.
        // The orbit passes the Moon three times and magnifies errors by about 1e6.
        const double Period = 17.0652165601579625588917206249;
        var integrator = Integrator(new ThreeBodies());
        integrator.Start(0.0, [0.994, 0.0, 0.0, -2.00158510637908252240537862224]);
        Assert.Equal(StepResult.EndReached, integrator.Run(Period / 2.0));
        double[] half = [-1.2448220520265679791, 0.0, 0.0, 0.55399030814221770873];
        for (int i = 0; i < 4; i++)
        {
            Assert.Equal(half[i], integrator.State[i], 1e-9);
        }

        integrator.Run(Period);
        Assert.Equal(Period, integrator.Time);
        Assert.Equal(0.994, integrator.State[0], 1e-9);
        Assert.Equal(0.0, integrator.State[1], 1e-8);
    }

    [Fact]
    public void Forced_rigid_body_of_the_textbook_agrees_with_SciPy()
    {
        // The Euler equations of Hairer, Nørsett and Wanner, section II.10, with a torque between 3π and 4π (statement from memory).
        // Reference: SciPy 1.10.1, solve_ivp(method='DOP853', rtol=3e-14, atol=1e-15) over the three pieces:
        //   I = [0.5, 2, 3]; y0 = [1, 0, 0.9]; f = [(I2-I3)/I1*y2*y3, (I3-I1)/I2*y3*y1, ((I1-I2)*y1*y2 + f3)/I3]
        var integrator = Integrator(new EulerBody(0.5, 2.0, 3.0));
        integrator.Start(0.0, [1.0, 0.0, 0.9]);
        integrator.Run(3.0 * Math.PI);
        integrator.System.TorqueIsOn = true;
        integrator.Start(integrator.Time, integrator.State);
        integrator.Run(4.0 * Math.PI);
        integrator.System.TorqueIsOn = false;
        integrator.Start(integrator.Time, integrator.State);
        integrator.Run(20.0);
        Assert.Equal(-0.9011799837228501, integrator.State[0], 1e-12);
        Assert.Equal(0.34266842294817995, integrator.State[1], 1e-12);
        Assert.Equal(0.995510116901064, integrator.State[2], 1e-12);
    }

    [Fact]
    public void Free_rigid_body_agrees_with_the_Jacobi_solution()
    {
        // I = (1, 2, 3), rates (1, 0, 1): Jacobi elliptic solution as in Landau and Lifshitz, section 37 (own evaluation, ten digits).
        var integrator = Integrator(new EulerBody(1.0, 2.0, 3.0));
        integrator.Start(0.0, [1.0, 0.0, 1.0]);
        integrator.Run(5.0);
        Assert.Equal(-0.1643504298, integrator.State[0], 1e-10);
        Assert.Equal(-0.9864020155, integrator.State[1], 1e-10);
        Assert.Equal(0.8219916998, integrator.State[2], 1e-10);
        integrator.Run(10.0);
        Assert.Equal(-0.9210699984, integrator.State[0], 1e-10);
        Assert.Equal(0.3893970441, integrator.State[1], 1e-10);
        Assert.Equal(0.9744006606, integrator.State[2], 1e-10);
    }

    [Fact]
    public void Lorenz_attractor_agrees_with_SciPy()
    {
        // SciPy 1.10.1: solve_ivp(lambda t,y: [10*(y[1]-y[0]), y[0]*(28-y[2])-y[1], y[0]*y[1]-8/3*y[2]], (0,5), [1,1,1],
        //   method='DOP853', rtol=3e-14, atol=1e-15). Errors grow by exp(0.9 · 5), about 100.
        var integrator = Integrator(new Lorenz());
        integrator.Start(0.0, [1.0, 1.0, 1.0]);
        integrator.Run(5.0);
        Assert.Equal(-6.512113699419425, integrator.State[0], 1e-11);
        Assert.Equal(-6.974042788416625, integrator.State[1], 1e-11);
        Assert.Equal(23.924129572103563, integrator.State[2], 1e-11);
    }

    [Property(MaxTest = 40)]
    public void Harmonic_motion_keeps_phase_and_energy(byte frequencyStep, byte phaseStep)
    {
        double frequency = Math.Pow(10.0, (frequencyStep / 51.0) - 2.0);
        double phase = phaseStep * (Math.PI / 128.0);
        double end = 20.0 / frequency;
        var integrator = Integrator(new Oscillator(frequency));
        integrator.Start(0.0, [Math.Sin(phase), Math.Cos(phase)]);
        integrator.Run(end);

        // About 60 steps, each true to 3e-14 and rather better.
        Assert.Equal(Math.Sin(phase + 20.0), integrator.State[0], 1e-12);
        Assert.Equal(Math.Cos(phase + 20.0), integrator.State[1], 1e-12);
    }

    [Fact]
    public void Running_backward_returns_to_the_start()
    {
        var integrator = Integrator(new VanDerPol(0.5));
        integrator.Start(1.0, [2.0, 0.0]);
        integrator.Run(4.0);
        integrator.Start(integrator.Time, integrator.State);
        integrator.Run(1.0);
        Assert.Equal(1.0, integrator.Time);
        Assert.Equal(2.0, integrator.State[0], 1e-11);
        Assert.Equal(0.0, integrator.State[1], 1e-11);
    }

    [Fact]
    public void Tighter_tolerances_give_smaller_errors()
    {
        double previous = double.PositiveInfinity;
        foreach (double tolerance in new[] { 1e-4, 1e-6, 1e-8, 1e-10, 1e-12 })
        {
            var integrator = Integrator(new Oscillator(1.0), OdeTolerances.Of(tolerance, tolerance));
            integrator.Start(0.0, [0.0, 1.0]);
            integrator.Run(50.0);
            double error = Math.Abs(integrator.State[0] - Math.Sin(50.0));

            // A global error of a hundred times the local tolerance over some 20 to 100 steps is the most to expect.
            Assert.InRange(error, 0.0, Math.Min(previous, 100.0 * tolerance));
            previous = error;
        }
    }

    [Fact]
    public void Every_component_follows_the_same_arithmetic_whatever_its_place()
    {
        // Eleven equal oscillators in one state of 22: the vector lanes and the rest must give the same bits.
        var many = Integrator(new ManyOscillators());
        double[] start = new double[22];
        for (int i = 0; i < 22; i += 2)
        {
            start[i + 1] = 1.0;
        }

        many.Start(0.0, start);
        many.Run(7.0);
        for (int i = 2; i < 22; i++)
        {
            Assert.Equal(many.State[i % 2], many.State[i]);
        }
    }

    private readonly record struct ManyOscillators : IOdeSystem
    {
        public int Dimension
        {
            get { return 22; }
        }

        public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
        {
            for (int i = 0; i < 22; i += 2)
            {
                derivatives[i] = state[i + 1];
                derivatives[i + 1] = -state[i];
            }
        }
    }

    [Fact]
    public void The_same_input_gives_the_same_bits()
    {
        double[] Once(OdeIntegrator<Lorenz, NoEvents, DormandPrince853> integrator)
        {
            integrator.Start(0.0, [1.0, 1.0, 1.0]);
            integrator.Run(20.0);
            return [.. integrator.State.ToArray(), integrator.AcceptedSteps];
        }

        var reused = Integrator(new Lorenz());
        double[] first = Once(reused);
        Assert.Equal(first, Once(reused));
        Assert.Equal(first, Once(Integrator(new Lorenz())));
    }

    [Fact]
    public void Interpolation_meets_the_ends_of_the_step_exactly_and_refuses_times_outside_it()
    {
        var integrator = Integrator(new Oscillator(1.0));
        integrator.Start(0.0, [0.0, 1.0]);
        integrator.Step(10.0);
        double[] before = integrator.State.ToArray();
        integrator.Step(10.0);
        double[] state = new double[2];
        integrator.Interpolate(integrator.PreviousTime, state);
        Assert.Equal(before, state);
        integrator.Interpolate(integrator.Time, state);
        Assert.Equal(integrator.State.ToArray(), state);
        Assert.Throws<ArgumentOutOfRangeException>(() => integrator.Interpolate(Math.BitIncrement(integrator.Time), state));
        Assert.Throws<ArgumentOutOfRangeException>(() => integrator.Interpolate(Math.BitDecrement(integrator.PreviousTime), state));
        Assert.Throws<ArgumentOutOfRangeException>(() => integrator.Interpolate(double.NaN, state));
        Assert.Throws<ArgumentException>(() => integrator.Interpolate(integrator.Time, new double[3]));
    }

    [Fact]
    public void End_time_is_met_exactly_and_then_no_step_is_made()
    {
        var integrator = Integrator(new Oscillator(1.0));
        integrator.Start(0.0, [0.0, 1.0]);
        Assert.Equal(StepResult.EndReached, integrator.Run(0.1 + 0.2));
        Assert.Equal(0.1 + 0.2, integrator.Time);
        int steps = integrator.AcceptedSteps;
        Assert.Equal(StepResult.EndReached, integrator.Step(0.1 + 0.2));
        Assert.Equal(steps, integrator.AcceptedSteps);
    }

    [Fact]
    public void Steps_restarts_interpolation_and_events_allocate_nothing()
    {
        var integrator = new OdeIntegrator<VanDerPol, Levels, DormandPrince853>(new VanDerPol(2.0), new Levels(0, [0.0, 1.0], new EventRule(EventDirection.Either, true)), _tight);
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

    [Fact]
    public void A_singularity_is_refused_and_the_last_state_stays()
    {
        var integrator = Integrator(new BlowUp());
        integrator.Start(0.0, [1.0]);
        var refused = Assert.Throws<IntegrationRefusedException>(() => integrator.Run(2.0));
        Assert.NotEqual(IntegrationRefusal.TooManySteps, refused.Refusal);
        Assert.Equal(integrator.Time, refused.Time);
        Assert.InRange(refused.Time, 0.999, 1.0 + 1e-9);
        Assert.True(double.IsFinite(integrator.State[0]));
    }

    [Fact]
    public void Derivatives_that_are_not_numbers_are_refused()
    {
        var integrator = Integrator(new NotANumberBeyondOne());
        integrator.Start(0.0, [0.0]);
        var refused = Assert.Throws<IntegrationRefusedException>(() => integrator.Run(2.0));
        Assert.Equal(IntegrationRefusal.NotFinite, refused.Refusal);
        Assert.Equal(1.0, integrator.Time, 1e-12);
        Assert.Equal(IntegrationRefusal.NotFinite, Assert.Throws<IntegrationRefusedException>(() => integrator.Start(1.5, [0.0])).Refusal);
        Assert.Throws<InvalidOperationException>(() => integrator.Step(2.0));
    }

    [Fact]
    public void Too_many_steps_are_refused()
    {
        var integrator = Integrator(new Oscillator(1.0), _tight, new StepLimits { MaximumSteps = 10 });
        integrator.Start(0.0, [0.0, 1.0]);
        var refused = Assert.Throws<IntegrationRefusedException>(() => integrator.Run(1000.0));
        Assert.Equal(IntegrationRefusal.TooManySteps, refused.Refusal);
        Assert.Contains("10 steps", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Wrong_arguments_are_named()
    {
        var integrator = Integrator(new Oscillator(1.0));
        Assert.Throws<InvalidOperationException>(() => integrator.Step(1.0));
        Assert.Throws<ArgumentException>("state", () => integrator.Start(0.0, [1.0]));
        Assert.Throws<ArgumentException>("state", () => integrator.Start(0.0, [1.0, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>("time", () => integrator.Start(double.PositiveInfinity, [1.0, 0.0]));
        integrator.Start(0.0, [1.0, 0.0]);
        Assert.Throws<ArgumentOutOfRangeException>("endTime", () => integrator.Step(double.NaN));
        Assert.Throws<ArgumentException>("tolerances", () => Integrator(new Oscillator(1.0), OdeTolerances.PerComponent(0.0, [1.0, 1.0, 1.0])));
    }

    [Theory]
    [InlineData(-1e-6)]
    [InlineData(1e-16)]
    [InlineData(0.5)]
    [InlineData(double.NaN)]
    public void Relative_tolerance_outside_its_range_is_refused(double relative)
    {
        Assert.Throws<ArgumentOutOfRangeException>(nameof(relative), () => OdeTolerances.Of(relative, 1e-9));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Absolute_tolerance_outside_its_range_is_refused(double absolute)
    {
        Assert.Throws<ArgumentOutOfRangeException>(nameof(absolute), () => OdeTolerances.PerComponent(1e-9, [1.0, absolute]));
    }

    [Fact]
    public void Step_limits_state_their_defaults_and_refuse_nonsense()
    {
        StepLimits limits = default;
        Assert.Equal(double.PositiveInfinity, limits.MaximumStep);
        Assert.Equal(0.0, limits.FirstStep);
        Assert.Equal(1_000_000, limits.MaximumSteps);
        Assert.Equal(4, limits.EventSamples);
        Assert.Throws<ArgumentOutOfRangeException>(() => new StepLimits { MaximumStep = 0.0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new StepLimits { FirstStep = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>(() => new StepLimits { MaximumSteps = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => new StepLimits { EventSamples = 65 });
    }
}
