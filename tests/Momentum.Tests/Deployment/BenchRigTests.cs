using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>The rig: what a bearing, gravity and a room do, where elementary mechanics gives the answer.</summary>
public class BenchRigTests
{
    private static BenchRig Frictionless => new() { Gravity = Acceleration.Zero };

    [Fact]
    public void Without_friction_and_gravity_a_symmetric_rig_is_the_vehicle_in_space()
    {
        DeploymentResult space = LawsOfDeployment.Planar.Deploy();
        DeploymentResult rig = (LawsOfDeployment.Planar with { Rig = Frictionless }).Deploy();

        Assert.Equal(space.FinalSpin.RadiansPerSecond, rig.FinalSpin.RadiansPerSecond, 1e-10);
        Assert.Equal(space.PeakTensions[0].Tension.Newtons, rig.PeakTensions[0].Tension.Newtons, 1e-7);
    }

    [Fact]
    public void Viscous_friction_lets_a_hub_run_down_exponentially()
    {
        DeploymentResult result = Held(Frictionless with { ViscousFriction = Torque.FromNewtonMeters(2) });

        double rate = 2 / 7.5 / SpinInertia;
        Assert.Equal(7.5 * Math.Exp(-rate), result.FinalSpin.RadiansPerSecond, 1e-9);
        Assert.True(result.Ledger.BearingWork.Joules < 0);
    }

    [Fact]
    public void Coulomb_friction_stops_a_hub_at_a_constant_rate_and_then_holds_it()
    {
        DeploymentResult result = Held(Frictionless with { CoulombFriction = Torque.FromNewtonMeters(250) });

        Assert.Equal(7.5 * SpinInertia / 250, LawsOfDeployment.TimeOf(result, DeploymentEventKind.BearingStopped), 1e-9);
        Assert.Equal(0, result.FinalSpin.RadiansPerSecond, 1e-12);
        Assert.Equal(-result.Ledger.EnergyAtStart.Total.Joules, result.Ledger.BearingWork.Joules, 1e-7);
    }

    [Fact]
    public void Weights_fall_to_the_floor_as_thrown_bodies_do()
    {
        BenchRig rig = new() { FloorBelow = Length.FromMeters(1.2) };
        DeploymentResult result = (LawsOfDeployment.Planar with { Rig = rig }).Deploy();
        Landing landing = result.Landings.First(l => l.Cord == 0);
        Duration gone = result.Events.First(e => e.Kind == DeploymentEventKind.LetGo && e.Cord == 0).Time;
        DeploymentState then = result.At(gone);

        // Height at release and its rate, from the state and a later one: z = z0 + v t − g t²/2.
        double height = then.Cords[0].Weight.Z.Meters;
        double step = result.End.Seconds - gone.Seconds;
        double drop = result.FinalState.Cords[0].Weight.Z.Meters - height;
        double velocity = (drop / step) + (0.5 * 9.80665 * step);
        double fall = landing.Time.Seconds - gone.Seconds;

        Assert.True(landing.OnFloor);
        Assert.Equal(-1.2, height + (velocity * fall) - (0.5 * 9.80665 * fall * fall), 1e-9);
        Assert.True(height < 0.427, "Gravity has pulled the weights below the drum.");
    }

    [Fact]
    public void A_wall_that_is_near_is_struck_by_a_weight_still_on_its_cord_and_ends_the_run()
    {
        BenchRig rig = new() { Walls = Length.FromMeters(1.5) };
        DeploymentResult result = (LawsOfDeployment.Planar with { Rig = rig }).Deploy();

        Assert.Contains(result.Events, e => e.Kind == DeploymentEventKind.WeightStrikesRoom);
        Assert.True(result.End < LawsOfDeployment.Planar.Until);
        DeploymentState last = result.FinalState;
        double distance = Math.Sqrt(Math.Pow(last.Cords[0].Weight.X.Meters, 2) + Math.Pow(last.Cords[0].Weight.Y.Meters, 2));
        Assert.Equal(1.5, distance, 1e-9);
    }

    [Fact]
    public void Friction_takes_momentum_about_the_axis_and_the_ledger_says_how_much()
    {
        BenchRig rig = new() { CoulombFriction = Torque.FromNewtonMeters(0.4), ViscousFriction = Torque.FromNewtonMeters(0.3) };
        DeploymentResult result = (Invented.Deployment with { Rig = rig }).Deploy();

        Assert.InRange(result.Ledger.AngularMomentumClosure, 0, 1e-11);
        Assert.InRange(result.Ledger.EnergyClosure, 0, 1e-11);
        Assert.True(result.Ledger.BearingWork.Joules < 0);
    }

    // Weights of 0.62 kg on the drum ride along.
    private static double SpinInertia => 18.4 + (2 * 0.62 * 0.43 * 0.43);

    private static DeploymentResult Held(BenchRig rig) => (LawsOfDeployment.With(c => c with { ReleasedAt = null }) with
    {
        Rig = rig,
        Until = Duration.FromSeconds(1),
    }).Deploy();
}
