using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Deployment;

/// <summary>The one call from a sized design and mass properties to the deployment in three dimensions.</summary>
public class DesignsInSpace
{
    private static readonly Mass _weight = Mass.FromGrams(310);

    // About x, y and z.
    private static readonly MassProperties<Body> _body = MassProperties<Body>.Of(
        Mass.FromKilograms(182),
        Position<Body>.Of(0.1, 0.2, 0.4, LengthUnit.Meter),
        InertiaTensor<Body>.Diagonal(Inertia(17.1), Inertia(19.3), Inertia(18.4)));

    public static TheoryData<Direction<Body>, int> Axes => new()
    {
        { Direction<Body>.XAxis, 2 },
        { Direction<Body>.YAxis, 3 },
        { Direction<Body>.ZAxis, 2 },
        { Direction<Body>.ZAxis, 4 },
        { -Direction<Body>.ZAxis, 2 },
    };

    [Theory]
    [MemberData(nameof(Axes))]
    public void A_balanced_body_moves_as_the_design_does_about_any_axis(Direction<Body> axis, int weights)
    {
        DespinDesign design = Sized(axis, weights, LinearDensity.Zero);
        DespinMotion planar = design.Deploy();
        DeploymentResult whole = Balanced(design, axis).Deploy();

        Assert.Equal(planar.FinalSpin.RadiansPerSecond, whole.FinalSpin.RadiansPerSecond, 1e-8);
        Assert.Equal(planar.LetGoTime.Seconds, whole.Events.First(e => e.Kind == DeploymentEventKind.LetGo).Time.Seconds, 1e-9);
        Assert.Equal(weights, whole.Departures.Count);
        Assert.InRange(whole.After.LargestTransverseRate.RadiansPerSecond, 0, 1e-9);
    }

    [Theory]
    [MemberData(nameof(Axes))]
    public void It_starts_upright_with_the_first_weight_towards_the_first_axis(Direction<Body> axis, int weights)
    {
        CordDeployment deployment = Balanced(Sized(axis, weights, LinearDensity.Zero), axis);
        DeploymentState start = deployment.Deploy().At(Duration.Zero);
        Vector<Length, Inertial> first = start.Cords[0].Weight - start.Origin;

        Assert.Equal(1, deployment.Attitude.Apply(axis).Z, 1e-15);
        Assert.Equal(1, deployment.Attitude.Apply(deployment.HubAxes.Apply(Direction<HubAxes>.XAxis)).X, 1e-15);
        Assert.Equal(0.43, first.X.Meters, 1e-12);
        Assert.Equal(0, first.Y.Meters, 1e-12);
    }

    // Wound against the spin, the tangent point runs with it from the start angle towards the end: all of the cord away.
    [Fact]
    public void The_end_of_a_cord_lies_a_cord_length_round_the_hub_in_the_sense_of_the_spin()
    {
        DespinDesign design = Sized(Direction<Body>.ZAxis, 2, LinearDensity.Zero);
        CordDeployment deployment = Balanced(design, Direction<Body>.ZAxis);
        double turned = design.CordLength / design.Hub.Radius;

        Assert.Equal(turned, deployment.EndAngle(0).Radians, 1e-12);
        Assert.Equal(Math.PI + turned, deployment.EndAngle(1).Radians, 1e-12);
        Assert.Equal(-turned, (deployment with { Rates = -deployment.Rates }).EndAngle(0).Radians, 1e-12);
        Assert.Equal(-turned, deployment.EachCord(c => c with { Winding = Winding.FollowsSpin }).EndAngle(0).Radians, 1e-12);
        Assert.Equal(turned - 0.1, deployment.EachCord(c => c with { Hanging = Length.FromMeters(0.043) }).EndAngle(0).Radians, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>("cord", () => deployment.EndAngle(2));
    }

    [Fact]
    public void Cords_mass_springs_and_offset_go_along()
    {
        DespinDesign heavy = Sized(Direction<Body>.ZAxis, 2, LinearDensity.FromGramsPerMeter(5));
        CordDeployment deployment = heavy.InSpace(
            _body, cordPlaneOffset: Length.FromMillimeters(12), stiffness: Force.FromKilonewtons(90), dampingRatio: 0.02);
        Cord cord = deployment.Cords[0];

        Assert.Equal(0.412, cord.PlaneHeight.Meters, 1e-15);
        Assert.Equal((heavy.CordLineDensity, 4, Force.FromKilonewtons(90), 0.02), (cord.LineDensity, cord.Pieces, cord.Stiffness!.Value, cord.DampingRatio));
        Assert.All(deployment.Deploy().Deployment.Cords, c => Assert.Equal(4, c.Pieces));

        var springs = Hub(Direction<Body>.ZAxis).SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1.5), LetGo.Radial, 0.02);
        Cord spring = springs.InSpace(_body).Cords[0];
        Assert.Equal((springs.Stiffness, 0.02, 1), (spring.Stiffness!.Value, spring.DampingRatio, spring.Pieces));
    }

    // Swinging far out of their plane, cords of a fifth of a weight's mass and more chatter in four pieces, and in two they do not.
    [Fact]
    public void Where_a_fine_chain_is_refused_a_coarser_one_is_taken()
    {
        CordDeployment chain = Sized(Direction<Body>.ZAxis, 2, LinearDensity.FromGramsPerMeter(60)).InSpace(_body).Wobbling(Angle.FromDegrees(30));
        Assert.ThrowsAny<ComputationRefusedException>(() => (chain with { CoarserIfRefused = false }).Deploy());

        Assert.True(chain.CoarserIfRefused);
        DeploymentResult result = chain.Deploy();
        Assert.InRange(result.Deployment.Cords[0].Pieces, 1, 2);
        Assert.False(result.Deployment.CoarserIfRefused);
        Assert.InRange(result.Ledger.Closure, 0, 1e-11);
    }

    [Fact]
    public void What_does_not_belong_together_is_refused_by_name()
    {
        DespinDesign design = Sized(Direction<Body>.ZAxis, 2, LinearDensity.Zero);
        Assert.Contains("the design has 18.4", Assert.ThrowsAny<ArgumentException>(() => design.InSpace(_body, Direction<Body>.XAxis)).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>("body", () => design.InSpace(default));
        Assert.Throws<ArgumentOutOfRangeException>("spinAxis", () => design.InSpace(_body, default(Direction<Body>)));
        var springs = Hub(Direction<Body>.ZAxis).SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1.5), LetGo.Radial);
        Assert.Throws<ArgumentOutOfRangeException>("stiffness", () => springs.InSpace(_body, stiffness: Force.FromNewtons(300)));
        Assert.Throws<ArgumentOutOfRangeException>("dampingRatio", () => springs.InSpace(_body, dampingRatio: 0.1));
    }

    private static CordDeployment Balanced(DespinDesign design, Direction<Body> axis) => design.InSpace(
        MassProperties<Body>.Of(_body.Mass, Position<Body>.Origin + Vector<Length, Body>.Along(axis, Length.FromMeters(0.4)), _body.Inertia), axis);

    private static DespinDesign Sized(Direction<Body> axis, int weights, LinearDensity density) =>
        Hub(axis).SizeCordLength(_weight, RotationalSpeed.Zero, LetGo.Radial, density, weights);

    private static DespinHub Hub(Direction<Body> axis) => new(
        _body.Inertia.AboutAxis(axis), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(7.5));

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
