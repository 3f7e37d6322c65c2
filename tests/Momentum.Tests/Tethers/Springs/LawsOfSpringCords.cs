using FsCheck.Fluent;
using FsCheck.Xunit;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests.Tethers.Springs;

/// <summary>What any planar de-spin with spring cords must obey. A design may be refused; a result must obey.</summary>
[Properties(Arbitrary = [typeof(AnySpringCordDesign)], MaxTest = 100, QuietOnSuccess = true)]
public class LawsOfSpringCords
{
    // Else the laws below would hold of nothing.
    [Fact]
    public void Most_of_these_designs_come_to_let_go() =>
        Assert.InRange(AnySpringCordDesign.Designs().Generator.Sample(100).Count(design => Deployed(design) is not null), 60, 100);

    // A hundred times the error of a step; thousands of steps add up.
    [Property]
    public void Angular_momentum_and_energy_with_stretch_and_damping_are_constant(SpringCordDesign design)
    {
        if (Deployed(design) is not { } motion)
        {
            return;
        }

        Assert.InRange(motion.Ledger.AngularMomentumClosure, 0, 1e-11);
        Assert.InRange(motion.Ledger.EnergyClosure, 0, 1e-11);
    }

    // Lengths by 2, masses by 10, spin by 3: inertia by 40, spring rate by 90, times by 1/3, forces by 180.
    [Property]
    public void Scaling_lengths_masses_and_spin_scales_the_rest(SpringCordDesign design)
    {
        if (Deployed(design) is not { } small)
        {
            return;
        }

        SpringCordMotion large = new DespinHub(design.Hub.SpinInertia * 40, design.Hub.Radius * 2, design.Hub.Spin * 3).CarryingOnSprings(
            design.WeightMass * 10, design.CordLength * 2, design.SpringRate * 90, design.LetGo, design.DampingRatio, design.WeightCount).Deploy();

        // The same numbers but for rounding of the inputs, which a spring of a thousand swings carries on.
        Near(3 * small.FinalSpin.RadiansPerSecond, large.FinalSpin.RadiansPerSecond, large.Design.Hub.Spin.RadiansPerSecond, 1e-9);
        Near(small.LetGoTime.Seconds / 3, large.LetGoTime.Seconds, large.LetGoTime.Seconds, 1e-9);
        Near(180 * small.PeakTension.Tension.Newtons, large.PeakTension.Tension.Newtons, large.PeakTension.Tension.Newtons, 1e-9);
        Near(2 * small.LargestStretch.Meters, large.LargestStretch.Meters, large.LargestStretch.Meters, 1e-9);
        Near(6 * small.Departures[0].Speed.MetersPerSecond, large.Departures[0].Speed.MetersPerSecond, large.Departures[0].Speed.MetersPerSecond, 1e-9);
    }

    // The peaks are located on the dense output, of an order below that of the steps.
    [Property(MaxTest = 40)]
    public void No_instant_has_more_tension_or_stretch_than_the_largest_and_none_pushes(SpringCordDesign design)
    {
        if (Deployed(design) is not { } motion)
        {
            return;
        }

        double tension = motion.PeakTension.Tension.Newtons;
        double stretch = motion.LargestStretch.Meters;
        Assert.All(motion.History(200, motion.LetGoTime), state =>
        {
            Assert.InRange(state.CordTension.Newtons, 0, tension * (1 + 1e-9));
            Assert.InRange(state.Stretch.Meters, 0, stretch * (1 + 1e-9));
        });
        Near(tension, motion.At(motion.PeakTension.Time).CordTension.Newtons, tension, 1e-7);
    }

    // Newton's second law for the hub: its momentum falls by the moment of the cords' pull, read from the cord angle.
    [Property(MaxTest = 40)]
    public void Hub_slows_by_the_moment_of_the_cords_pull(SpringCordDesign design)
    {
        if (Deployed(design) is not { } motion)
        {
            return;
        }

        // A thousandth of a swing of the spring.
        double swing = Math.Sqrt(design.WeightMass.Kilograms / design.SpringRate.NewtonsPerMeter);
        double time = 0.7 * motion.LetGoTime.Seconds;
        double step = 1e-3 * Math.Min(swing, motion.LetGoTime.Seconds);
        if (Math.Abs(time - motion.UnwindTime.Seconds) < 4 * step)
        {
            return; // The cord angle has a kink there.
        }

        IReadOnlyList<SpringCordState> around = motion.History(
            new[] { -2, -1, 0, 1, 2 }.Select(steps => Duration.FromSeconds(time + (steps * step))));
        double[] spin = [.. around.Select(state => state.Spin.RadiansPerSecond)];
        double acceleration = (spin[0] - (8 * spin[1]) + (8 * spin[3]) - spin[4]) / (12 * step);
        double moment = -design.WeightCount * around[2].CordTension.Newtons * design.Hub.Radius.Meters * Math.Cos(around[2].CordAngle.Radians);

        // States are integrated anew, to 1e-13 of the initial spin.
        double noise = 1e-12 * design.Hub.Spin.RadiansPerSecond / step;
        Assert.Equal(moment / design.Hub.SpinInertia.KilogramSquareMeters, acceleration, (1e-6 * Math.Abs(acceleration)) + noise);
    }

    // The velocity of a weight from its places, in inertial axes, is the one whose energy the ledger counts.
    [Property(MaxTest = 40)]
    public void Weights_move_as_their_speed_says(SpringCordDesign design)
    {
        if (Deployed(design) is not { } motion)
        {
            return;
        }

        double swing = Math.Sqrt(design.WeightMass.Kilograms / design.SpringRate.NewtonsPerMeter);
        double step = 1e-3 * Math.Min(swing, motion.LetGoTime.Seconds);
        double time = 0.6 * motion.LetGoTime.Seconds;
        SpringCordState[] around = [.. motion.History(
            new[] { -2, -1, 0, 1, 2 }.Select(steps => Duration.FromSeconds(time + (steps * step))))];
        double X(int i) => around[i].WeightPosition(1).FromOrigin.X.Meters;
        double Y(int i) => around[i].WeightPosition(1).FromOrigin.Y.Meters;
        double x = (X(0) - (8 * X(1)) + (8 * X(3)) - X(4)) / (12 * step);
        double y = (Y(0) - (8 * Y(1)) + (8 * Y(3)) - Y(4)) / (12 * step);
        double speed = around[2].WeightSpeed.MetersPerSecond;
        double noise = 1e-12 * (design.Hub.Radius.Meters + around[2].FreeLength.Meters) / step;

        if (Math.Abs(time - motion.UnwindTime.Seconds) >= 4 * step)
        {
            Assert.Equal(speed, double.Hypot(x, y), (1e-6 * speed) + noise);
        }
    }

    // Final spin and its slope over the initial one are met to 1e-9 and 1e-7 inside; here by deploying, and by another difference.
    [Property(MaxTest = 25)]
    public void Sizing_meets_the_wish_or_refuses_it(SpringCordWish wish)
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(wish.Inertia * 0.4 * 0.25), Length.FromMeters(0.5), RotationalSpeed.FromRadiansPerSecond(6));
        SpringCordDesign design;
        try
        {
            design = hub.SizeSpringCord(
                Mass.FromKilograms(0.2), hub.Spin * wish.Ratio, LetGo.AtCordAngle(Angle.FromRadians(wish.Angle)), wish.DampingRatio);
        }
        catch (ComputationRefusedException)
        {
            // What is asked of ordinary proportions must be met.
            Assert.False(wish.Inertia >= 20 && wish.Ratio <= 0.3 && wish.Angle <= Math.PI / 2, wish.ToString());
            return;
        }

        double Final(double factor) => design.On(new DespinHub(hub.SpinInertia, hub.Radius, hub.Spin * factor)).Deploy().FinalSpin / hub.Spin;
        Assert.Equal(wish.Ratio, Final(1), 1e-8);
        Assert.Equal(0, (Final(1.00005) - Final(0.99995)) / 1e-4, 1e-5);
        Assert.InRange(design.CordLength / hub.Radius, 0.01, 300);
    }

    /// <summary>Five per cent of the spin taken by weights as heavy as the hub: a spring so soft that one per cent more spin keeps the cords on.</summary>
    [Fact]
    public void A_design_on_the_brink_of_not_letting_go_has_no_slope_and_is_refused()
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(0.5864734168309101), Length.FromMeters(0.5), RotationalSpeed.FromRadiansPerSecond(6));

        Assert.Throws<ComputationRefusedException>(() => hub.SizeSpringCord(Mass.FromKilograms(0.2), hub.Spin * 0.95, LetGo.Tangent, 0.001));
    }

    private static SpringCordMotion? Deployed(SpringCordDesign design)
    {
        try
        {
            return design.Deploy();
        }
        catch (ComputationRefusedException)
        {
            return null;
        }
    }

    private static void Near(double expected, double actual, double scale, double relative) =>
        Assert.True(Math.Abs(expected - actual) <= relative * scale, $"expected {expected:R}, actual {actual:R}, scale {scale:R}");
}
