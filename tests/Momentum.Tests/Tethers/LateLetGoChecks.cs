using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Numerics;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>One weight late: conservation, limits, and an independent simulation in Cartesian coordinates.</summary>
[Properties(Arbitrary = [typeof(AnyDesign)], MaxTest = 100, QuietOnSuccess = true)]
public class LateLetGoChecks
{
    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(72 * Math.PI / 30));

    private static readonly Mass _hubMass = Mass.FromKilograms(182);

    private static DespinDesign Design(LetGo letGo, double gramsPerMetre = 0) => _hub.Carrying(
        Mass.FromGrams(310), Length.FromMeters(4.9), letGo, LinearDensity.FromGramsPerMeter(gramsPerMetre));

    [Property]
    public void No_delay_changes_nothing(DespinDesign design)
    {
        if (((LetGo.CordAngleRule)design.LetGo).CordAngle.Radians == Math.PI)
        {
            return; // Already at the other tangent.
        }

        DespinMotion motion = design.Deploy();
        LateDeparture late = motion.WithOneWeightLate(Duration.Zero, Mass.FromKilograms(100));

        double scale = design.Hub.Spin.RadiansPerSecond + Math.Abs(motion.FinalSpin.RadiansPerSecond);
        Assert.Equal(motion.FinalSpin.RadiansPerSecond, late.FinalSpin.RadiansPerSecond, 1e-12 * scale);

        // The weight's velocity is a sum of two that may almost cancel; each is up to the rim's speed or the weight's own.
        Assert.Equal(0, late.HubDrift.MetersPerSecond, 1e-12 * (motion.Departures[0].Speed.MetersPerSecond + (scale * design.Hub.Radius.Meters)));
    }

    // The pull acts on a hub that is free to move: angular momentum about the common centre of mass and energy.
    [Property]
    public void Energy_closes_over_the_delay(DespinDesign design)
    {
        DespinMotion motion = design.Deploy();
        Mass hubMass = Mass.FromKilograms(2 * design.Hub.SpinInertia.KilogramSquareMeters / Math.Pow(design.Hub.Radius.Meters, 2));
        try
        {
            // It throws if energy does not close to 1e-10.
            LateDeparture late = motion.WithOneWeightLate(motion.LetGoTime * 0.05, hubMass);
            Assert.InRange(late.Closure, 0, 1e-10);
        }
        catch (ComputationRefusedException refused) when (refused.Message.Contains("wrap") || Extreme(design))
        {
        }
    }

    // A complete de-spin has weights whose inertia about the axis, cords out, is about that of the hub. A hundred times as much
    // is beyond any vehicle, and there a refusal is the honest answer to what a double cannot hold.
    private static bool Extreme(DespinDesign design) =>
        design.WeightCount * (design.WeightMass.Kilograms + (design.CordLineDensity.KilogramsPerMeter * design.CordLength.Meters)) *
        Math.Pow(design.Hub.Radius.Meters + design.CordLength.Meters, 2) > 100 * design.Hub.SpinInertia.KilogramSquareMeters;

    // Newton's equations of a disc and a point on a string, string tension by the constraint; nothing shared with the library.
    [Theory]
    [InlineData(0.0, 0.05)]
    [InlineData(0.0, 0.35)]
    [InlineData(60.0, 0.002)]
    [InlineData(90.0, 0.01)]
    [InlineData(90.0, 0.18)]
    public void Cartesian_simulation_agrees(double angle, double delay)
    {
        DespinMotion motion = Design(LetGo.AtCordAngle(Angle.FromDegrees(angle))).Deploy();
        DespinState state = motion.At(motion.LetGoTime);
        Position<Inertial> weight = state.WeightPosition(0);
        Position<Inertial> root = state.CordRoot(0)!.Value;
        var system = new DiscAndPoint(182, 18.4, 0.31, 0.43);
        var integrator = new OdeIntegrator<DiscAndPoint, NoEvents, DormandPrince853>(system, default, OdeTolerances.Of(1e-13, 1e-13));
        integrator.Start(
            0,
            [
                0, 0, Math.Atan2(root.Y.Meters, root.X.Meters), weight.X.Meters, weight.Y.Meters,
                0, 0, state.Spin.RadiansPerSecond,
                motion.Departures[0].Velocity.X.MetersPerSecond, motion.Departures[0].Velocity.Y.MetersPerSecond,
            ]);
        integrator.Run(delay);

        LateDeparture late = motion.WithOneWeightLate(Duration.FromSeconds(delay), _hubMass);

        // Two integrations at 1e-13 a step, and a constraint that is held by its second derivative only.
        Assert.Equal(integrator.State[7], late.FinalSpin.RadiansPerSecond, 1e-9);
        Assert.Equal(double.Hypot(integrator.State[5], integrator.State[6]), late.HubDrift.MetersPerSecond, 1e-9);
        Assert.InRange(late.HubDrift.MetersPerSecond, 1e-4, 1);
    }

    // On a hub too heavy to be moved aside, the one weight left pulls half as hard as two would.
    [Fact]
    public void A_very_heavy_hub_feels_the_one_weight_as_if_on_a_fixed_axis()
    {
        DespinMotion motion = Design(LetGo.Radial, 7.4).Deploy();
        DespinState last = motion.At(motion.LetGoTime);
        const double Step = 1e-4;
        LateDeparture late = motion.WithOneWeightLate(Duration.FromSeconds(Step), Mass.FromKilograms(1e12));

        Assert.Equal(0, late.HubDrift.MetersPerSecond, 1e-9);

        // At radial the moment vanishes, so the spin changes in second order only.
        Assert.Equal(last.Spin.RadiansPerSecond, late.FinalSpin.RadiansPerSecond, 1e-5);
        Assert.True(late.FinalSpin > last.Spin);
    }

    // I dw/dt = -F R cos a with the tension of the weight that is left, whose mass counts reduced by the hub's.
    [Fact]
    public void Spin_changes_by_the_moment_of_the_one_cord()
    {
        DespinMotion motion = Design(LetGo.Tangent).Deploy();
        const double Step = 1e-6;
        LateDeparture late = motion.WithOneWeightLate(Duration.FromSeconds(Step), Mass.FromKilograms(1e12));
        DespinState last = motion.At(motion.LetGoTime);

        // At the tangent F (1 + m R²/I) = m L O² with O the cord's turning rate; for two weights both sides have 2 m.
        double both = 2 * last.CordTension.Newtons * (1 + (0.62 * 0.43 * 0.43 / 18.4));
        double one = both / 2 / (1 + (0.31 * 0.43 * 0.43 / 18.4));
        double expected = -one * 0.43 / 18.4 * Step;
        Assert.Equal(1, (late.FinalSpin - last.Spin).RadiansPerSecond / expected, 1e-4);
    }

    [Fact]
    public void Late_let_go_during_unwinding_carries_on_into_the_swing_and_closes()
    {
        DespinMotion motion = Design(LetGo.AtSpin(_hub.Spin * 0.3), 7.4).Deploy();
        Assert.Equal(CordPhase.Unwinding, motion.LetGoPhase);

        LateDeparture early = motion.WithOneWeightLate(Duration.FromMilliseconds(1), _hubMass);
        LateDeparture swung = motion.WithOneWeightLate(Duration.FromSeconds(0.4), _hubMass);

        Assert.Equal(0, early.CordAngle.Radians);
        Assert.True(swung.CordAngle > Angle.Zero);
        Assert.True(swung.FinalSpin < early.FinalSpin);
        Assert.InRange(swung.Closure, 0, 1e-11);
    }

    // From radial it takes 0.19 s at these rates, whatever the hub turns in that time.
    [Theory]
    [InlineData(170, 5)]
    [InlineData(90, 0.2)]
    public void A_cord_that_would_wrap_back_is_refused(double angle, double delay) =>
        Assert.Contains("wrap", Assert.Throws<ComputationRefusedException>(
            () => Design(LetGo.AtCordAngle(Angle.FromDegrees(angle))).Deploy().WithOneWeightLate(Duration.FromSeconds(delay), _hubMass)).Message);

    [Fact]
    public void A_negative_delay_and_a_massless_hub_are_refused_by_name()
    {
        DespinMotion motion = Design(LetGo.Radial).Deploy();
        Assert.Equal("delay", Assert.Throws<ArgumentOutOfRangeException>(
            () => motion.WithOneWeightLate(Duration.FromSeconds(-1), _hubMass)).ParamName);
        Assert.Equal("hubMass", Assert.Throws<ArgumentOutOfRangeException>(
            () => motion.WithOneWeightLate(Duration.Zero, Mass.Zero)).ParamName);
    }

    private readonly struct DiscAndPoint(double hub, double inertia, double weight, double radius) : IOdeSystem
    {
        public int Dimension => 10;

        public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
        {
            (double sine, double cosine) = Math.SinCos(state[2]);
            double dx = state[3] - state[0] - (radius * cosine);
            double dy = state[4] - state[1] - (radius * sine);
            double spin = state[7];
            double vx = state[8] - state[5] + (radius * spin * sine);
            double vy = state[9] - state[6] - (radius * spin * cosine);
            double length = double.Hypot(dx, dy);
            double ux = dx / length;
            double uy = dy / length;
            double along = (ux * cosine) + (uy * sine);
            double across = (uy * cosine) - (ux * sine);
            double tension = ((((vx * vx) + (vy * vy)) / length) + (radius * spin * spin * along)) /
                ((1 / weight) + (1 / hub) + (radius * radius * across * across / inertia));
            derivatives[0] = state[5];
            derivatives[1] = state[6];
            derivatives[2] = spin;
            derivatives[3] = state[8];
            derivatives[4] = state[9];
            derivatives[5] = tension * ux / hub;
            derivatives[6] = tension * uy / hub;
            derivatives[7] = tension * radius * across / inertia;
            derivatives[8] = -tension * ux / weight;
            derivatives[9] = -tension * uy / weight;
        }
    }
}
