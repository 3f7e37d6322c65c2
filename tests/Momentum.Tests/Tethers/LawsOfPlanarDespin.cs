using FsCheck.Xunit;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>What any planar de-spin must obey, whatever its proportions.</summary>
[Properties(Arbitrary = [typeof(AnyDesign)], MaxTest = 300, QuietOnSuccess = true)]
public class LawsOfPlanarDespin
{
    // Conservation laws; the sums are taken over the parts. 1e-12 leaves room for the rounding of weights a thousand
    // times heavier than the hub, where opposite terms a thousand times larger than their sum cancel.
    [Property]
    public void Angular_momentum_and_energy_are_constant(DespinDesign design)
    {
        DeploymentLedger ledger = design.Deploy().Ledger;

        Assert.InRange(ledger.AngularMomentumClosure, 0, 1e-12);
        Assert.InRange(ledger.EnergyClosure, 0, 1e-12);
    }

    // What makes a closed form slow is quadrature that is halved on and on: near a tangent that a short cord passes like a
    // square root, near a radial that a light hub passes like a corner.
    [Property]
    public void The_time_and_turn_of_any_design_are_summed_over_a_few_panels(DespinDesign design)
    {
        var clock = new CordClock(design.Cords, DespinMotion.LetGoCoordinate(design));

        Assert.InRange(clock.Panels, 0, 40);
    }

    [Property]
    public void While_cords_unwind_the_hub_turns_by_the_integral_of_its_spin(DespinDesign design)
    {
        PlanarCords cords = design.Cords;
        double length = cords.Length;

        // Simpson's rule over the share of the cord to the fourth power, which resolves what changes in the first of a long cord.
        const int Strips = 20_000;
        double sum = 0;
        for (int i = 0; i <= Strips; i++)
        {
            double share = (double)i / Strips;
            double free = length * Math.Pow(share, 4);
            double weight = i is 0 or Strips ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * cords.Spin((free - length) / cords.Radius) * 4 * Math.Pow(share, 3) * length / cords.Radius;
        }

        double turn = cords.UnwoundTurn(length);
        Assert.Equal(sum / (3 * Strips), turn, 1e-11 * (1 + (length / cords.Radius)));
    }

    [Property]
    public void Spin_over_initial_spin_and_peak_tension_over_its_square_do_not_depend_on_initial_spin(DespinDesign design)
    {
        DespinMotion slow = design.Deploy();
        DespinMotion fast = new DespinHub(design.Hub.SpinInertia, design.Hub.Radius, design.Hub.Spin * 3).Carrying(
            design.WeightMass, design.CordLength, design.LetGo, design.CordLineDensity, design.WeightCount).Deploy();

        Near(3 * slow.FinalSpin.RadiansPerSecond, fast.FinalSpin.RadiansPerSecond, design.Hub.Spin.RadiansPerSecond);
        Near(9 * slow.PeakTension.Tension.Newtons, fast.PeakTension.Tension.Newtons, fast.PeakTension.Tension.Newtons);
        Near(slow.LetGoTime.Seconds / 3, fast.LetGoTime.Seconds, fast.LetGoTime.Seconds);
        Near(slow.HubTurn.Radians, fast.HubTurn.Radians, 1 + Math.Abs(slow.HubTurn.Radians));
    }

    [Property]
    public void Scaling_lengths_and_masses_scales_the_rest(DespinDesign design)
    {
        // Lengths by 2, masses by 10: inertia by 40, line density by 5, same spins and times, speeds by 2, forces by 20.
        DespinMotion small = design.Deploy();
        DespinMotion large = new DespinHub(design.Hub.SpinInertia * 40, design.Hub.Radius * 2, design.Hub.Spin).Carrying(
            design.WeightMass * 10, design.CordLength * 2, design.LetGo, design.CordLineDensity * 5, design.WeightCount).Deploy();

        Near(small.FinalSpin.RadiansPerSecond, large.FinalSpin.RadiansPerSecond, design.Hub.Spin.RadiansPerSecond);
        Near(small.LetGoTime.Seconds, large.LetGoTime.Seconds, small.LetGoTime.Seconds);
        Near(2 * small.Departures[0].Speed.MetersPerSecond, large.Departures[0].Speed.MetersPerSecond, large.Departures[0].Speed.MetersPerSecond);
        Near(20 * small.PeakTension.Tension.Newtons, large.PeakTension.Tension.Newtons, large.PeakTension.Tension.Newtons);
    }

    [Property]
    public void Spin_is_the_same_at_equal_angles_before_and_after_radial(DespinDesign design)
    {
        double angle = ((LetGo.CordAngleRule)design.LetGo).CordAngle.Radians;
        DespinMotion before = LetGoAt(design, angle).Deploy();
        DespinMotion after = LetGoAt(design, Math.PI - angle).Deploy();

        Near(before.FinalSpin.RadiansPerSecond, after.FinalSpin.RadiansPerSecond, Largest(before, after));
        double radial = LetGoAt(design, Math.PI / 2).Deploy().FinalSpin.RadiansPerSecond;
        Assert.True(radial <= before.FinalSpin.RadiansPerSecond + (1e-12 * Largest(before, after)));
    }

    [Property]
    public void More_cord_or_more_weight_leaves_less_spin(DespinDesign design)
    {
        double spin = design.Deploy().FinalSpin.RadiansPerSecond;
        double longer = design.Hub.Carrying(design.WeightMass, design.CordLength * 1.01, design.LetGo, design.CordLineDensity, design.WeightCount)
            .Deploy().FinalSpin.RadiansPerSecond;
        double heavier = design.Hub.Carrying(design.WeightMass * 1.01, design.CordLength, design.LetGo, design.CordLineDensity, design.WeightCount)
            .Deploy().FinalSpin.RadiansPerSecond;

        // Equal only where the whole effect is lost in rounding. A cord with mass has a length past which more of it adds
        // only its own inertia, so the law is for massless ones and for weights.
        double lost = 1e-12 * design.Hub.Spin.RadiansPerSecond;
        bool visible = design.Hub.Spin.RadiansPerSecond - spin > 1e-9 * design.Hub.Spin.RadiansPerSecond;
        Assert.True(heavier < spin + lost, $"heavier {heavier:R}, was {spin:R}");
        if (visible && design.CordLineDensity.KilogramsPerMeter == 0)
        {
            Assert.True(longer < spin, $"longer {longer:R}, was {spin:R}");
            Assert.True(heavier < spin, $"heavier {heavier:R}, was {spin:R}");
        }
    }

    [Property]
    public void Cord_length_sized_for_the_final_spin_is_the_cord_length(DespinDesign design)
    {
        RotationalSpeed spin = design.Deploy().FinalSpin;
        if (spin.RadiansPerSecond > 0.999 * design.Hub.Spin.RadiansPerSecond)
        {
            return; // The length is not to be had from a spin that rounding cannot tell from the initial one.
        }

        DespinDesign sized = design.Hub.SizeCordLength(design.WeightMass, spin, design.LetGo, design.CordLineDensity, design.WeightCount);

        Near(spin.RadiansPerSecond, sized.Deploy().FinalSpin.RadiansPerSecond, Largest(design.Deploy(), design.Deploy()));
    }

    [Property]
    public void Weight_mass_sized_for_the_final_spin_leaves_it(DespinDesign design)
    {
        RotationalSpeed spin = design.Deploy().FinalSpin;
        if (spin.RadiansPerSecond > 0.999 * design.Hub.Spin.RadiansPerSecond)
        {
            return;
        }

        DespinDesign sized = design.Hub.SizeWeightMass(design.CordLength, spin, design.LetGo, design.CordLineDensity, design.WeightCount);

        Near(spin.RadiansPerSecond, sized.Deploy().FinalSpin.RadiansPerSecond, Largest(design.Deploy(), design.Deploy()));
    }

    [Property(MaxTest = 60)]
    public void No_instant_of_the_history_has_more_tension_than_the_peak(DespinDesign design)
    {
        DespinMotion motion = design.Deploy();
        double peak = motion.PeakTension.Tension.Newtons;

        Assert.All(
            motion.History(300, motion.LetGoTime),
            state => Assert.True(state.CordTension.Newtons <= peak * (1 + 1e-12), $"{state.Time} {state.CordTension.Newtons / peak:R}"));
        Near(peak, motion.At(motion.PeakTension.Time).CordTension.Newtons, peak, 1e-9);
    }

    [Property(MaxTest = 100)]
    public void Cords_pull_and_never_push(DespinDesign design)
    {
        if (design.CordLineDensity.KilogramsPerMeter > 0)
        {
            return; // A straight massive cord would have to be a bar; its tension near the hub may fall below zero.
        }

        DespinMotion motion = design.Deploy();
        Assert.All(motion.History(100, motion.LetGoTime), state => Assert.True(state.CordTension.Newtons >= 0));
    }

    // Newton's second law for the hub: its momentum falls by the moment of the cords' pull, read from the cord angle.
    [Property(MaxTest = 100)]
    public void Hub_slows_by_the_moment_of_the_cords_pull(DespinDesign design)
    {
        DespinDesign massless = design.Hub.Carrying(design.WeightMass, design.CordLength, design.LetGo, null, design.WeightCount);
        DespinMotion motion = massless.Deploy();
        double time = 0.7 * motion.LetGoTime.Seconds;
        double step = 1e-4 * Math.Min(motion.LetGoTime.Seconds, motion.UnwindTime.Seconds);
        if (Math.Abs(time - motion.UnwindTime.Seconds) < 4 * step)
        {
            return; // The tension has a kink there.
        }

        DespinState now = motion.At(Duration.FromSeconds(time));
        double Spin(int steps) => motion.At(Duration.FromSeconds(time + (steps * step))).Spin.RadiansPerSecond;
        double acceleration = (Spin(-2) - (8 * Spin(-1)) + (8 * Spin(1)) - Spin(2)) / (12 * step);
        double moment = -design.WeightCount * now.CordTensionAtHub.Newtons * design.Hub.Radius.Meters * Math.Cos(now.CordAngle.Radians);

        double noise = 1e-15 * Math.Abs(now.Spin.RadiansPerSecond) / step;
        Assert.Equal(
            moment / design.Hub.SpinInertia.KilogramSquareMeters, acceleration, (1e-6 * Math.Abs(acceleration)) + (10 * noise));
    }

    private static DespinDesign LetGoAt(DespinDesign design, double angle) => design.Hub.Carrying(
        design.WeightMass, design.CordLength, LetGo.AtCordAngle(Angle.FromRadians(angle)), design.CordLineDensity, design.WeightCount);

    private static double Largest(DespinMotion one, DespinMotion other) => Math.Max(
        one.Design.Hub.Spin.RadiansPerSecond,
        Math.Max(Math.Abs(one.FinalSpin.RadiansPerSecond), Math.Abs(other.FinalSpin.RadiansPerSecond)));

    // Rounding, with a margin of a few hundred operations.
    private static void Near(double expected, double actual, double scale, double relative = 1e-12) =>
        Assert.True(Math.Abs(expected - actual) <= relative * scale, $"expected {expected:R}, actual {actual:R}, scale {scale:R}");
}
