using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>One let-go rule means one thing: in closed form, by integration, on spring cords and in three dimensions.</summary>
public class LetGoRules
{
    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(7.5));

    private static readonly DespinDesign _design = _hub.SizeCordLength(Mass.FromGrams(310), RotationalSpeed.Zero, LetGo.Radial);

    /// <summary>Every kind of rule, with and without delay, met while the cords unwind and while they hinge.</summary>
    public static TheoryData<LetGo> Rules =>
    [
        LetGo.Tangent,
        LetGo.Radial,
        LetGo.AtCordAngle(Angle.FromDegrees(-40)),
        LetGo.AtCordAngle(Angle.FromDegrees(130)),
        LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(5)),
        LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(0.3)),
        LetGo.AtTime(Duration.FromSeconds(0.8)),
        LetGo.AtTime(Duration.FromSeconds(1.3)),
        LetGo.Tangent.Delayed(Duration.FromMilliseconds(20)),
        LetGo.Radial.Delayed(Duration.FromMilliseconds(20)),
        LetGo.AtCordAngle(Angle.FromDegrees(-40)).Delayed(Duration.FromMilliseconds(10)),
        LetGo.AtCordAngle(Angle.FromDegrees(-10)).Delayed(Duration.FromMilliseconds(90)),
        LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(5)).Delayed(Duration.FromMilliseconds(30)),
        LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(0.3)).Delayed(Duration.FromMilliseconds(30)),
    ];

    [Theory]
    [MemberData(nameof(Rules))]
    public void Closed_form_integration_and_three_dimensions_let_go_at_the_same_moment(LetGo rule)
    {
        DespinDesign design = _hub.Carrying(_design.WeightMass, _design.CordLength, rule);
        DespinMotion closed = design.Deploy();
        IntegratedDespin integrated = design.Integrate();
        DeploymentResult whole = InSpace(design, null, 0).Deploy();

        Assert.Equal(closed.LetGoTime.Seconds, integrated.LetGoTime.Seconds, 1e-9);
        Assert.Equal(closed.FinalSpin.RadiansPerSecond, integrated.FinalSpin.RadiansPerSecond, 1e-9);
        Assert.Equal(closed.LetGoTime.Seconds, TimeOfLetGo(whole), 1e-8);
        Assert.Equal(closed.FinalSpin.RadiansPerSecond, whole.FinalSpin.RadiansPerSecond, 1e-8);
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void Spring_cords_and_three_dimensions_let_go_at_the_same_moment(LetGo rule)
    {
        SpringCordDesign design = _hub.CarryingOnSprings(
            _design.WeightMass, _design.CordLength, ForcePerLength.FromNewtonsPerMeter(600), rule, 0.05);
        SpringCordMotion planar = design.Deploy();
        DeploymentResult whole = InSpace(design, design.Stiffness, design.DampingRatio).Deploy();

        Assert.Equal(TimeOfLetGo(whole), planar.LetGoTime.Seconds, 1e-7);
        Assert.Equal(whole.FinalSpin.RadiansPerSecond, planar.FinalSpin.RadiansPerSecond, 1e-7);
    }

    // A step of a thousandth of spin or inertia, with the error of its curve.
    [Theory]
    [MemberData(nameof(Rules))]
    public void Sensitivity_is_the_slope_of_the_final_spin_whatever_the_rule(LetGo rule)
    {
        DespinDesign design = _hub.Carrying(_design.WeightMass, _design.CordLength, rule);
        SpringCordDesign springs = _hub.CarryingOnSprings(
            _design.WeightMass, _design.CordLength, ForcePerLength.FromNewtonsPerMeter(600), rule, 0.05);
        SpinSensitivity rigid = design.Sensitivity();
        SpinSensitivity sprung = springs.Sensitivity();

        const double Step = 1e-4;
        Assert.Equal((Rigid(1 + Step, 1) - Rigid(1 - Step, 1)) / (2 * Step), rigid.ToInitialSpin, 1e-5);
        Assert.Equal((Rigid(1, 1 + Step) - Rigid(1, 1 - Step)) / (2 * Step), rigid.ToSpinInertia, 1e-5);
        Assert.Equal((Sprung(1 + Step, 1) - Sprung(1 - Step, 1)) / (2 * Step), sprung.ToInitialSpin, 1e-4);
        Assert.Equal((Sprung(1, 1 + Step) - Sprung(1, 1 - Step)) / (2 * Step), sprung.ToSpinInertia, 1e-4);

        DespinHub By(double spin, double inertia) => new(_hub.SpinInertia * inertia, _hub.Radius, _hub.Spin * spin);

        double Rigid(double spin, double inertia) =>
            By(spin, inertia).Carrying(design.WeightMass, design.CordLength, rule).Deploy().FinalSpin / _hub.Spin;

        double Sprung(double spin, double inertia) => springs.On(By(spin, inertia)).Deploy().FinalSpin / _hub.Spin;
    }

    [Fact]
    public void A_cord_that_never_lets_go_is_refused_in_the_plane_with_the_reason_and_followed_in_space()
    {
        Assert.Contains("Deploy in three dimensions", Assert.Throws<ArgumentOutOfRangeException>(
            "letGo", () => _hub.Carrying(_design.WeightMass, _design.CordLength, LetGo.Never)).Message);
        CordDeployment kept = InSpace(_design, null, 0);

        Assert.DoesNotContain(
            (kept with { Cords = [.. kept.Cords.Select(c => c with { LetGo = LetGo.Never })], Until = Duration.FromSeconds(1.4) }).Deploy().Events,
            e => e.Kind == DeploymentEventKind.LetGo);
    }

    public static TheoryData<LetGo, string> Refused => new()
    {
        { LetGo.AtCordAngle(Angle.FromDegrees(-1000)), "before anything has unwound" },
        { LetGo.AtTime(Duration.Zero), "before anything has unwound" },
        { LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(8)), "not below the initial spin" },
        { LetGo.AtTime(Duration.FromSeconds(30)), "wrap the hub the other way" },
        { LetGo.Radial.Delayed(Duration.FromSeconds(3)), "wrap the hub the other way" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void A_rule_that_this_motion_cannot_meet_is_refused_with_the_reason(LetGo rule, string reason)
    {
        DespinDesign design = _hub.Carrying(_design.WeightMass, _design.CordLength, rule);

        Assert.Contains(reason, Assert.Throws<ComputationRefusedException>(() => design.Deploy()).Message);
        Assert.Contains(reason, Assert.Throws<ComputationRefusedException>(() => design.Integrate()).Message);
        Assert.Contains(reason, Assert.Throws<ComputationRefusedException>(() => _hub.CarryingOnSprings(
            _design.WeightMass, _design.CordLength, ForcePerLength.FromNewtonsPerMeter(600), rule, 0.05).Deploy()).Message);
    }

    [Fact]
    public void Sizing_asks_for_a_cord_angle_without_delay()
    {
        foreach (LetGo rule in (LetGo[])[LetGo.AtTime(Duration.FromSeconds(1)), LetGo.Radial.Delayed(Duration.FromMilliseconds(5)), LetGo.AtCordAngle(Angle.FromDegrees(-5))])
        {
            Assert.Contains("without delay", Assert.Throws<ComputationRefusedException>(
                () => _hub.SizeCordLength(_design.WeightMass, RotationalSpeed.Zero, rule)).Message);
        }
    }

    [Fact]
    public void Rules_are_equal_by_value_and_say_what_they_are()
    {
        Assert.Equal(LetGo.Radial, LetGo.AtCordAngle(Angle.FromDegrees(90)));
        Assert.NotEqual(LetGo.Radial, LetGo.Radial.Delayed(Duration.FromMilliseconds(1)));
        Assert.NotEqual<LetGo>(LetGo.AtTime(Duration.FromSeconds(1)), LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(1)));
        Assert.Equal(0.003, LetGo.Tangent.Delayed(Duration.FromMilliseconds(1)).Delayed(Duration.FromMilliseconds(2)).Delay.Seconds, 1e-15);
        Assert.Equal("radial, 0.005 s late", LetGo.Radial.Delayed(Duration.FromMilliseconds(5)).ToString());
        Assert.Equal("spin 2 rad/s", LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(2)).ToString());
        Assert.Equal("time 2 s", LetGo.AtTime(Duration.FromSeconds(2)).ToString());
        Assert.Equal("never", LetGo.Never.ToString());
        Assert.Equal(90, Assert.IsType<LetGo.CordAngleRule>(LetGo.Radial).CordAngle.Degrees, 1e-12);
    }

    private static double TimeOfLetGo(DeploymentResult result) =>
        result.Events.Last(e => e.Kind == DeploymentEventKind.LetGo).Time.Seconds;

    private static CordDeployment InSpace(PlanarDesign design, Force? stiffness, double damping) => new()
    {
        Hub = MassProperties<Body>.Of(
            Mass.FromKilograms(182),
            Position<Body>.Origin,
            InertiaTensor<Body>.Diagonal(
                MassMomentOfInertia.FromKilogramSquareMeters(31.5), MassMomentOfInertia.FromKilogramSquareMeters(32.1), design.Hub.SpinInertia)),
        Cords = [.. Enumerable.Range(0, design.WeightCount).Select(i => new Cord
        {
            WeightMass = design.WeightMass,
            Length = design.CordLength,
            HubRadius = design.Hub.Radius,
            StartAngle = Angle.FromDegrees(180 * i),
            Stiffness = stiffness,
            DampingRatio = damping,
            LetGo = design.LetGo,
        })],
        Rates = Vector<RotationalSpeed, Body>.Along(Direction<Body>.ZAxis, design.Hub.Spin),
        Until = Duration.FromSeconds(3),
    };
}
