using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>Planar, spring and spatial results tell the same things by the same names, and of one motion the same figures.</summary>
public class OneMotion
{
    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(7.5));

    private static readonly MassProperties<Body> _body = MassProperties<Body>.Of(
        Mass.FromKilograms(182),
        Position<Body>.Origin,
        InertiaTensor<Body>.Diagonal(
            MassMomentOfInertia.FromKilogramSquareMeters(31.5), MassMomentOfInertia.FromKilogramSquareMeters(32.1), _hub.SpinInertia));

    // Let go while still unwinding, at the tangent, and late.
    public static TheoryData<PlanarDesign> Designs =>
    [
        Rigid(LetGo.AtCordAngle(Angle.FromDegrees(-20))),
        Rigid(LetGo.Tangent),
        Rigid(LetGo.AtCordAngle(Angle.FromDegrees(120))),
        Sprung(LetGo.Tangent),
        Sprung(LetGo.AtCordAngle(Angle.FromDegrees(120))),
    ];

    [Theory]
    [MemberData(nameof(Designs))]
    public void The_plane_and_space_give_one_motion(PlanarDesign design)
    {
        IDespinMotion planar = design.Deploy();
        IDespinMotion whole = design.InSpace(_body).Deploy();

        Assert.Equal(planar.FinalSpin.RadiansPerSecond, whole.FinalSpin.RadiansPerSecond, 1e-7);
        SamePeak(planar.PeakTension, whole.PeakTension);
        Assert.Equal(planar.Departures.Count, whole.Departures.Count);
        Assert.All(planar.Departures.Zip(whole.Departures), pair => SameDeparture(pair.First, pair.Second));
        SameLedger(planar.Ledger, whole.Ledger);
        double until = planar.Departures[0].Time.Seconds;
        Duration[] times = [.. Enumerable.Range(1, 9).Select(i => Duration.FromSeconds(until * 0.1 * i))];
        Assert.All(planar.History(times).Zip(whole.History(times)), pair => SameState(pair.First, pair.Second));
        SameState(planar.At(times[3]), whole.At(times[3]));
        Assert.Equal(CordPhase.LetGo, planar.At(Duration.FromSeconds(until * 1.1)).Phase);
        Assert.Equal(CordPhase.LetGo, whole.At(Duration.FromSeconds(until * 1.1)).Phase);
        Assert.Throws<ArgumentOutOfRangeException>("cord", () => planar.At(times[0]).TensionOf(2));
        Assert.Throws<ArgumentOutOfRangeException>("cord", () => whole.At(times[0]).TensionOf(2));
    }

    private static void SamePeak(PeakTension planar, PeakTension whole)
    {
        // A peak is flat, so that its time is known to the root of what its height is.
        Assert.Equal(planar.Tension.Newtons, whole.Tension.Newtons, 1e-6);
        Assert.Equal(planar.Time.Seconds, whole.Time.Seconds, 1e-4);
        Assert.Equal(planar.Phase, whole.Phase);
        Assert.Equal(planar.FreeLength.Meters, whole.FreeLength.Meters, 1e-3);
        Assert.Equal(planar.CordAngle.Radians, whole.CordAngle.Radians, 1e-3);
    }

    private static void SameDeparture(WeightDeparture planar, WeightDeparture whole)
    {
        Assert.Equal(planar.Cord, whole.Cord);
        Assert.Equal(planar.Time.Seconds, whole.Time.Seconds, 1e-7);
        Assert.Equal(0, (whole.Place - planar.Place).Magnitude.Meters, 1e-6);
        Assert.Equal(0, (whole.Velocity - planar.Velocity).Magnitude.MetersPerSecond, 1e-5);
        Assert.Equal(0, (whole.VelocityInBodyAxes - planar.VelocityInBodyAxes).Magnitude.MetersPerSecond, 1e-5);
        Assert.Equal(planar.Energy.Joules, whole.Energy.Joules, 1e-5);
        Assert.Equal(planar.Speed.MetersPerSecond, Math.Sqrt(2 * planar.Energy.Joules / 0.31), 1e-9);
    }

    private static void SameLedger(DeploymentLedger planar, DeploymentLedger whole)
    {
        Assert.Equal(planar.AngularMomentumAtStart.SiZ, whole.AngularMomentumAtStart.SiZ, 1e-9);
        Assert.Equal(planar.AngularMomentumAtEnd.SiZ, whole.AngularMomentumAtEnd.SiZ, 1e-6);
        Assert.Equal(planar.AngularMomentumCarriedAway.SiZ, whole.AngularMomentumCarriedAway.SiZ, 1e-6);
        Assert.Equal(planar.EnergyAtStart.HubRotation.Joules, whole.EnergyAtStart.HubRotation.Joules, 1e-9);
        Assert.Equal(planar.EnergyAtStart.Total.Joules, whole.EnergyAtStart.Total.Joules, 1e-9);
        Assert.Equal(planar.EnergyAtEnd.HubRotation.Joules, whole.EnergyAtEnd.HubRotation.Joules, 1e-5);
        Assert.Equal(planar.EnergyCarriedAway.Joules, whole.EnergyCarriedAway.Joules, 1e-5);
        Assert.Equal(planar.CordDampingWork.Joules, whole.CordDampingWork.Joules, 1e-5);
        Assert.InRange(planar.Closure, 0, planar.AllowedClosure);
        Assert.InRange(whole.Closure, 0, whole.AllowedClosure);
    }

    private static void SameState(IDespinState planar, IDespinState whole)
    {
        Assert.Equal(planar.Time, whole.Time);
        Assert.Equal(planar.Spin.RadiansPerSecond, whole.Spin.RadiansPerSecond, 1e-7);
        Assert.Equal(planar.Phase, whole.Phase);
        Assert.Equal(planar.TensionOf(1).Newtons, whole.TensionOf(1).Newtons, 1e-5);
        Assert.Equal(0, (whole.WeightPosition(1) - planar.WeightPosition(1)).Magnitude.Meters, 1e-6);
        Assert.Equal(planar.Energy.HubRotation.Joules, whole.Energy.HubRotation.Joules, 1e-5);
        Assert.Equal(planar.Energy.Weights.Joules, whole.Energy.Weights.Joules, 1e-5);
        Assert.Equal(planar.Energy.Elastic.Joules, whole.Energy.Elastic.Joules, 1e-5);
        Assert.Equal(planar.Energy.Total.Joules, whole.Energy.Total.Joules, 1e-5);
    }

    private static DespinDesign Rigid(LetGo letGo) => _hub.Carrying(Mass.FromGrams(310), Length.FromMeters(5), letGo);

    private static SpringCordDesign Sprung(LetGo letGo) => _hub.CarryingOnSprings(
        Mass.FromGrams(310), Length.FromMeters(5), ForcePerLength.FromNewtonsPerMeter(600), letGo, 0.05);
}
