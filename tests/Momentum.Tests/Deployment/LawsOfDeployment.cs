using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;
using Xunit.Abstractions;

namespace Momentum.Tests.Deployment;

/// <summary>Laws that hold for every deployment, and limits in which the answer is known.</summary>
[Properties(Arbitrary = [typeof(AnyDeployment)])]
public class LawsOfDeployment(ITestOutputHelper output)
{
    // What the ledger promises at the default tolerance.
    private const double Closed = 1e-11;

    [Property(MaxTest = 150)]
    public void Momentum_and_energy_are_accounted_for(AnyDeployment any)
    {
        DeploymentResult result = any.Deployment.Deploy();
        DeploymentLedger ledger = result.Ledger;

        Assert.InRange(ledger.LinearMomentumClosure, 0, Closed);
        Assert.InRange(ledger.AngularMomentumClosure, 0, Closed);
        Assert.InRange(ledger.EnergyClosure, 0, Closed);

        // A cord that is held straight for its first milliradian has a hair of negative tension there, and so of friction.
        double rounding = 1e-10 * ledger.EnergyAtStart.Total.Joules;
        Assert.True(ledger.DrumFrictionWork.Joules <= rounding, "Friction gives no energy.");
        Assert.True(ledger.CordDampingWork.Joules <= rounding, "Damping gives no energy.");
        Assert.True(ledger.ImpulseLoss.Joules >= -rounding, "An impulse that stops something gives no energy.");
    }

    [Fact]
    public void Cords_with_mass_and_stretch_are_accounted_for_too()
    {
        CordDeployment heavy = Invented.Deployment with
        {
            Cords =
            [
                .. new[] { Invented.Cord(0), Invented.Cord(180) with { WeightMass = Mass.FromGrams(630) } }.Select(c => c with
                {
                    LineDensity = LinearDensity.FromGramsPerMeter(7.4),
                    Segments = 3,
                    Stiffness = Force.FromKilonewtons(110),
                    DampingRatio = 0.02,
                }),
            ],
        };
        DeploymentResult released = heavy.Deploy();
        DeploymentResult kept = (heavy with
        {
            Cords = [heavy.Cords[0], heavy.Cords[1] with { LetGo = LetGo.Never }],
            Until = Duration.FromSeconds(3),
        }).Deploy();

        Assert.InRange(released.Ledger.Closure, 0, Closed);
        Assert.True(released.Ledger.CordDampingWork.Joules < 0);
        Assert.InRange(kept.Ledger.Closure, 0, Closed);
        Assert.Contains(kept.Events, e => e.Kind == DeploymentEventKind.CordWrapsBack);
    }

    [Property(MaxTest = 25)]
    public void Turning_the_whole_experiment_in_space_changes_nothing_but_the_frame(AnyDeployment any)
    {
        Rotation<Body, Inertial> turn = Rotation<Body, Inertial>.About(Direction<Body>.Of(1, -2, 0.5), Angle.FromDegrees(123));
        DeploymentResult one = any.Deployment.Deploy();
        DeploymentResult other = (any.Deployment with { Attitude = turn }).Deploy();

        // The same numbers but for rounding, carried along an unstable swing for a second at most. Where a tension only grazes
        // zero, rounding decides whether the cord is slack for a moment, and that moment's small impulse is in what follows.
        bool sameEvents = one.Events.Select(e => (e.Kind, e.Cord)).SequenceEqual(other.Events.Select(e => (e.Kind, e.Cord)));
        double allowed = sameEvents ? 1e-8 : 1e-6;
        Assert.True(one.FinalState.Rates.EqualsWithin(other.FinalState.Rates, RotationalSpeed.FromRadiansPerSecond(allowed)));
    }

    [Property(MaxTest = 25)]
    public void No_cord_is_longer_than_it_is_and_none_pushes(AnyDeployment any)
    {
        DeploymentResult result = any.Deployment.Deploy();
        foreach (DeploymentState state in result.History(400))
        {
            for (int i = 0; i < state.Cords.Count; i++)
            {
                Cord cord = any.Deployment.Cords[i];
                CordState here = state.Cords[i];
                bool straight = here.Phase is CordPhase.Unwinding or CordPhase.Hinging;
                if (straight && (cord.Stiffness is null || (here.IsSlack && cord.DampingRatio == 0)))
                {
                    // A damped cord goes slack while it is still stretched. A slack cord is noticed to be straight again a tenth of a trillionth of its length late, and the
                    // recorded steps carry the error of their interpolation.
                    double longest = Math.Min(cord.Length.Meters, cord.JamsAt?.Meters ?? double.PositiveInfinity);
                    Assert.InRange(here.FreeLength.Meters, 0, longest * (1 + 1e-9));
                }

                // A cord that is held straight for its first milliradian has a hair of negative tension there.
                double thrown = cord.WeightMass.Kilograms * 7 * 7 * 0.5;
                Assert.InRange(here.Tension.Newtons, straight ? -2e-3 * thrown : 0, double.PositiveInfinity);
            }
        }
    }

    [Property(MaxTest = 25)]
    public void Any_state_can_be_asked_for_and_the_recorded_trajectory_is_continuous_in_place(AnyDeployment any)
    {
        DeploymentResult result = any.Deployment.Deploy();
        IReadOnlyList<DeploymentState> history = result.History(40);

        // No weight moves faster than it would with all the energy that there is.
        double energy = result.Ledger.EnergyAtStart.Total.Joules;
        double interval = result.End.Seconds / 39;
        for (int i = 1; i < history.Count; i++)
        {
            for (int cord = 0; cord < history[i].Cords.Count; cord++)
            {
                double fastest = Math.Sqrt(2 * energy / any.Deployment.Cords[cord].WeightMass.Kilograms);
                double moved = (history[i].Cords[cord].Weight - history[i - 1].Cords[cord].Weight).Magnitude.Meters;
                Assert.True(moved < fastest * interval, $"cord {cord} moves {moved} m");
            }
        }
    }

    [Fact]
    public void Spin_tension_and_times_follow_the_closed_form_in_the_plane()
    {
        DespinMotion closed = new DespinHub(
                MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(7.5))
            .Carrying(Mass.FromGrams(620), Length.FromMeters(1.9), LetGo.Radial)
            .Deploy();
        DeploymentResult result = Planar.Deploy();

        // A tenth of the promised 1e-9.
        const double Close = 1e-10;
        Assert.Equal(closed.FinalSpin.RadiansPerSecond, result.FinalSpin.RadiansPerSecond, 7.5 * Close);
        Assert.Equal(closed.LetGoTime.Seconds, TimeOf(result, DeploymentEventKind.LetGo), Close);
        Assert.Equal(closed.PeakTension.Tension.Newtons, result.PeakTensions[0].Tension.Newtons, 200 * Close);
        double worst = 0;
        for (int i = 0; i < 50; i++)
        {
            Duration time = closed.LetGoTime * (i / 50.0);
            DespinState there = closed.At(time);
            DeploymentState here = result.At(time);
            worst = Math.Max(worst, Math.Abs(there.Spin.RadiansPerSecond - here.Spin.RadiansPerSecond) / 7.5);
            worst = Math.Max(worst, Math.Abs(there.CordTension.Newtons - here.Cords[0].Tension.Newtons) / 200);
            worst = Math.Max(worst, Math.Abs(there.FreeLength.Meters - here.Cords[1].FreeLength.Meters));
        }

        output.WriteLine($"largest departure from the closed form {worst:E2}");
        Assert.InRange(worst, 0, Close);
    }

    [Fact]
    public void Spin_about_another_body_axis_is_the_same_deployment()
    {
        // Everything renamed x -> y -> z -> x.
        CordDeployment turned = Invented.Deployment with
        {
            SpinAxis = Direction<Body>.XAxis,
            Hub = MassProperties<Body>.Of(
                Mass.FromKilograms(182),
                Position<Body>.Of(Length.FromMeters(0.412), Length.FromMeters(0.001), Length.Zero),
                InertiaTensor<Body>.Of(
                    Inertia(18.4), Inertia(31.5), Inertia(32.1), Inertia(-0.11), Inertia(0.05), Inertia(0.08), ProductSign.TensorElement)),
            Rates = Invented.Rates(7.5, 0.05, 0),
        };

        DeploymentResult one = Invented.Deployment.Deploy();
        DeploymentResult other = turned.Deploy();

        Assert.Equal(one.FinalSpin.RadiansPerSecond, other.FinalSpin.RadiansPerSecond, 1e-10);
        Assert.Equal(one.FinalState.TransverseRate.RadiansPerSecond, other.FinalState.TransverseRate.RadiansPerSecond, 1e-10);
    }

    [Fact]
    public void The_mirror_image_spins_the_other_way()
    {
        // Mirrored at the x-z plane: angles and y components change sign, rates across that plane do not.
        CordDeployment mirrored = Invented.Deployment with
        {
            Hub = Invented.Stage(xy: -0.08, yz: -0.05),
            Rates = Invented.Rates(-0.05, 0, -7.5),
        };

        DeploymentResult one = Invented.Deployment.Deploy();
        DeploymentResult other = mirrored.Deploy();

        Assert.Equal(one.FinalSpin.RadiansPerSecond, -other.FinalSpin.RadiansPerSecond, 1e-10);
        Assert.Equal(one.PeakTensions[0].Tension.Newtons, other.PeakTensions[0].Tension.Newtons, 1e-7);
    }

    [Fact]
    public void Cords_too_stiff_to_stretch_much_behave_like_cords_that_do_not_stretch()
    {
        // The stretch is F/k: ten times the stiffness, a tenth of the difference.
        double rigid = Planar.Deploy().FinalSpin.RadiansPerSecond;
        double stiff = Math.Abs(With(c => c with { Stiffness = Force.FromKilonewtons(500) }).Deploy().FinalSpin.RadiansPerSecond - rigid);
        double stiffer = Math.Abs(With(c => c with { Stiffness = Force.FromKilonewtons(5000) }).Deploy().FinalSpin.RadiansPerSecond - rigid);

        // Within the oscillation that is left of the start, some per cent.
        Assert.Equal(10, stiff / stiffer, 1.0);
    }

    [Fact]
    public void Drum_friction_leaves_spin_in_the_hub_and_its_work_in_the_ledger()
    {
        DeploymentResult smooth = Planar.Deploy();
        DeploymentResult rough = With(c => c with { DrumFriction = 0.05 }).Deploy();

        Assert.True(rough.Ledger.DrumFrictionWork.Joules < -1);
        Assert.NotEqual(smooth.FinalSpin.RadiansPerSecond, rough.FinalSpin.RadiansPerSecond, 1e-3);
        Assert.Equal(
            rough.Ledger.EnergyAtStart.Total.Joules + rough.Ledger.DrumFrictionWork.Joules,
            rough.Ledger.EnergyAtEnd.Total.Joules + rough.Ledger.EnergyCarriedAway.Joules,
            1e-8);
    }

    internal static CordDeployment Planar => new()
    {
        Hub = MassProperties<Body>.Of(
            Mass.FromKilograms(182),
            Position<Body>.Of(Length.Zero, Length.Zero, Length.FromMillimeters(427)),
            InertiaTensor<Body>.Diagonal(Inertia(31.5), Inertia(32.1), Inertia(18.4))),
        Cords = [Invented.Cord(0), Invented.Cord(180)],
        Rates = Invented.Rates(0, 0, 7.5),
        Until = Duration.FromSeconds(1.2),
    };

    internal static CordDeployment With(Func<Cord, Cord> change) => Planar with { Cords = [.. Planar.Cords.Select(change)] };

    internal static double TimeOf(DeploymentResult result, DeploymentEventKind kind) =>
        result.Events.First(e => e.Kind == kind).Time.Seconds;

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
