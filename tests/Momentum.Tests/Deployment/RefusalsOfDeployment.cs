using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>Bad input gets one error that names the value and what is allowed.</summary>
public class RefusalsOfDeployment
{
    public static TheoryData<string, CordDeployment> Bad => new()
    {
        { "Cords[1].WeightMass", Second(c => c with { WeightMass = Mass.Zero }) },
        { "Cords[1].Length", Second(c => c with { Length = Length.FromMeters(-1) }) },
        { "Cords[1].HubRadius", Second(c => c with { HubRadius = Length.Zero }) },
        { "Cords[1].Hanging", Second(c => c with { Hanging = Length.FromMeters(3) }) },
        { "Cords[1].LineDensity", Second(c => c with { LineDensity = LinearDensity.FromGramsPerMeter(-1) }) },
        { "Cords[1].Segments", Second(c => c with { Segments = 0 }) },
        { "Cords[1].Stiffness", Second(c => c with { Stiffness = Force.Zero }) },
        { "Cords[1].DampingRatio", Second(c => c with { DampingRatio = -0.1 }) },
        { "Cords[1].DrumFriction", Second(c => c with { DrumFriction = 1 }) },
        { "Cords[1].ReleasedAt", Second(c => c with { ReleasedAt = Duration.FromSeconds(-1) }) },
        { "Cords[1].JamsAt", Second(c => c with { JamsAt = Length.FromMeters(9) }) },
        { "Cords[1].LetGo", Second(c => c with { LetGo = LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(9)) }) },
        { "Cords[0].LetGo", Invented.Deployment with { Cords = [Invented.Cord(0) with { LetGo = LetGo.AtCordAngle(-Angle.FromRadians(1.9 / 0.43)) }] } },
        { "Cords", Invented.Deployment with { Cords = [] } },
        { "Rates", Invented.Deployment with { Rates = Invented.Rates(3, 0, 0) } },
        { "Hub", Invented.Deployment with { Hub = default } },
        { "SpinAxis", Invented.Deployment with { SpinAxis = default } },
        { "Until", Invented.Deployment with { Until = Duration.Zero } },
        { "Tolerance", Invented.Deployment with { Tolerance = 1e-3 } },
        { "Deck", Invented.Deployment with { Deck = new DeckEdge(Length.FromMeters(0.1), Length.Zero) } },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_bad_value_is_named(string name, CordDeployment deployment)
    {
        ArgumentException refused = Assert.ThrowsAny<ArgumentException>(() => deployment.Deploy());

        Assert.Equal(name, refused.ParamName);
        Assert.Contains("must be", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cord_angle_past_the_other_tangent_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LetGo.AtCordAngle(Angle.FromDegrees(181)));

    [Fact]
    public void A_wobble_that_no_rates_make_is_refused()
    {
        Assert.Equal("nutation", Refused(Invented.Deployment, 90).ParamName);
        Assert.Equal("nutation", Refused(Invented.Deployment, -1).ParamName);
        Assert.Equal("Rig", Refused(Invented.Deployment with { Rig = new BenchRig() }, 1).ParamName);

        // With a product of inertia of 2 kg·m² a momentum so near 90° turns the hub the other way about the axis.
        Assert.Equal("nutation", Refused(Invented.Deployment with { Hub = Invented.Stage(xz: -2) }, 89.9, 180).ParamName);

        static ArgumentException Refused(CordDeployment deployment, double nutation, double direction = 0) =>
            Assert.ThrowsAny<ArgumentException>(() => deployment.Wobbling(Angle.FromDegrees(nutation), Angle.FromDegrees(direction)));
    }

    [Fact]
    public void A_negative_delay_is_refused() =>
        Assert.Equal("by", Assert.Throws<ArgumentOutOfRangeException>(() => LetGo.Radial.Delayed(Duration.FromSeconds(-1))).ParamName);

    [Fact]
    public void A_time_outside_the_run_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Invented.Deployment.Deploy().At(Duration.FromSeconds(2)));

    [Fact]
    public void A_weight_that_is_not_thrown_outward_is_refused_with_the_reason()
    {
        // The hub tumbles about the axis that the weights sit on: they are not thrown off, and what spin there is lifts them.
        CordDeployment slow = LawsOfDeployment.Planar with
        {
            Rates = Invented.Rates(7, 0, 0.01),
            Cords = [Invented.Cord(0) with { PlaneHeight = Length.FromMeters(3) }, Invented.Cord(180) with { PlaneHeight = Length.FromMeters(3) }],
        };

        DeploymentRefusedException refused = Assert.Throws<DeploymentRefusedException>(() => slow.Deploy());
        Assert.Contains("not thrown outward", refused.Message, StringComparison.Ordinal);
    }

    private static CordDeployment Second(Func<Cord, Cord> change) =>
        Invented.Deployment with { Cords = [Invented.Cord(0), change(Invented.Cord(180))] };
}
