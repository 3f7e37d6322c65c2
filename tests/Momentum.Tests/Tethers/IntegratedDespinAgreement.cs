using FsCheck.Xunit;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>The closed form against numerical integration of Lagrange's equations, which share no formula past the kinetic energy.</summary>
[Properties(Arbitrary = [typeof(AnyDesign)], MaxTest = 200, QuietOnSuccess = true)]
public class IntegratedDespinAgreement
{
    // 1e-10 relative to the larger of initial and final spin, to the time, and to the turn.
    [Property]
    public void Integration_and_closed_form_agree(DespinDesign design)
    {
        DespinMotion closed = design.Deploy();
        IntegratedDespin integrated = design.Integrate();

        double spin = Math.Max(design.Hub.Spin.RadiansPerSecond, Math.Abs(closed.FinalSpin.RadiansPerSecond));
        Near(closed.FinalSpin.RadiansPerSecond, integrated.FinalSpin.RadiansPerSecond, spin, "final spin");
        Near(closed.UnwindTime.Seconds, integrated.UnwindTime.Seconds, closed.UnwindTime.Seconds, "unwind time");
        Near(closed.LetGoTime.Seconds, integrated.LetGoTime.Seconds, closed.LetGoTime.Seconds, "let-go time");
        Near(closed.HubTurn.Radians, integrated.HubTurn.Radians, Math.Max(1, closed.Design.CordTurns * 2 * Math.PI), "hub turn");

        // On the way a small error of time counts where weights far heavier than the hub whip its spin round near radial.
        Assert.All(integrated.Steps, step => Near(closed.At(Earlier(step.Time, closed.LetGoTime)).Spin.RadiansPerSecond, step.Spin.RadiansPerSecond, spin, "spin on the way", 1e-9));
        Assert.All(integrated.Steps, step => Near(closed.At(Earlier(step.Time, closed.LetGoTime)).CordTension.Newtons, step.CordTension.Newtons, closed.PeakTension.Tension.Newtons, "tension on the way", 1e-9));
    }

    [Property]
    public void Let_go_at_a_rate_agrees_too(DespinDesign design)
    {
        // The rate is any that the design passes, on the way to radial.
        double share = 0.5 * (1 + Math.Sin(((LetGo.CordAngleRule)design.LetGo).CordAngle.Radians * 7));
        double initial = design.Hub.Spin.RadiansPerSecond;
        double lowest = At(LetGo.Radial).Deploy().FinalSpin.RadiansPerSecond;
        if (lowest > 0.9 * initial)
        {
            return;
        }

        DespinDesign atRate = At(LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(initial + ((0.02 + (0.97 * share)) * (lowest - initial)))));
        DespinMotion closed = atRate.Deploy();
        IntegratedDespin integrated = atRate.Integrate();

        // A rate is met the more uncertainly the slower it changes; this near to radial that costs a hundredfold.
        Near(closed.LetGoTime.Seconds, integrated.LetGoTime.Seconds, closed.LetGoTime.Seconds, "let-go time", 1e-9);
        Near(closed.FinalSpin.RadiansPerSecond, integrated.FinalSpin.RadiansPerSecond, Math.Max(initial, Math.Abs(lowest)), "final spin");

        DespinDesign At(LetGo letGo) =>
            design.Hub.Carrying(design.WeightMass, design.CordLength, letGo, design.CordLineDensity, design.WeightCount);
    }

    // Such a cord is past the other tangent for a millionth of its swing only, and then comes back; it passes it so flatly that
    // the time is less sharp than elsewhere.
    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-5)]
    [InlineData(1e-7)]
    public void The_integration_sees_a_very_short_cord_pass_the_other_tangent(double length)
    {
        var hub = new DespinHub(MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMeters(1), RotationalSpeed.FromRadiansPerSecond(5));
        foreach (double weights in (double[])[1e-5, 1e-3, 0.02, 0.1, 1, 10])
        {
            foreach (double cord in (double[])[0, 0.1, 1, 100])
            {
                double one = 18.4 * weights / 2;
                DespinDesign design = hub.Carrying(
                    Mass.FromKilograms(one),
                    Length.FromMeters(length),
                    LetGo.AtCordAngle(Angle.FromRadians(Math.PI)),
                    LinearDensity.FromKilogramsPerMeter(cord * one / length));
                double time = design.Deploy().LetGoTime.Seconds;
                Near(time, design.Integrate().LetGoTime.Seconds, time, "let-go time", 1e-9);
            }
        }
    }

    [Fact]
    public void A_rate_that_is_never_reached_is_refused_by_the_integration_too()
    {
        var hub = new DespinHub(MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMeters(0.43), RotationalSpeed.FromRadiansPerSecond(7.5));

        Assert.Throws<ComputationRefusedException>(
            () => hub.Carrying(Mass.FromGrams(300), Length.FromMeters(2), LetGo.AtSpin(RotationalSpeed.Zero)).Integrate());
    }

    // The two let-go times differ in the last digits, and after let-go there is no tension.
    private static Duration Earlier(Duration one, Duration other) => one < other ? one : other;

    private static void Near(double expected, double actual, double scale, string what, double relative = 1e-10) =>
        Assert.True(Math.Abs(expected - actual) <= relative * scale, $"{what}: expected {expected:R}, actual {actual:R}, relative {(actual - expected) / scale:g3}");
}
