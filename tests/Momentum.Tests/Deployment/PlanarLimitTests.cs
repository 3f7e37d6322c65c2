using Momentum.Numerics;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;
using Xunit.Abstractions;

namespace Momentum.Tests.Deployment;

/// <summary>Equal cords opposite each other in the plane of the centre of mass: the closed form must come out.</summary>
public class PlanarLimitTests(ITestOutputHelper output)
{
    // Ten times closer than the 1e-9 that is promised: nothing but the integration's error separates the two.
    private const double Close = 1e-10;

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, false)]
    [InlineData(2, true)]
    [InlineData(4, false)]
    public void Spin_and_times_follow_the_closed_form(int pairs, bool smooth)
    {
        DespinMotion closed = ClosedForm(0.6, 5.5, LetGo.Radial, 2 * pairs);
        Propagation propagation = Run(0.6, 5.5, Math.PI / 2, 2 * pairs, smooth, closed.LetGoTime.Seconds + 0.3, out Recording recording);

        // Relative to the initial spin of 5 rad/s and to the time of let-go.
        double times = Math.Max(
            Math.Abs(closed.LetGoTime.Seconds - TimeOf(propagation, DeploymentEventKind.LetGo)),
            Math.Abs(closed.UnwindTime.Seconds - TimeOf(propagation, DeploymentEventKind.Unwound))) / closed.LetGoTime.Seconds;
        double spins = Math.Abs(closed.FinalSpin.RadiansPerSecond - propagation.State[Mechanism.Rates + 2]) / 5;
        for (int step = 0; step < recording.Count; step++)
        {
            double time = Math.Min(recording.Time(step), closed.LetGoTime.Seconds);
            DespinState there = closed.At(Duration.FromSeconds(time));
            spins = Math.Max(spins, Math.Abs(there.Spin.RadiansPerSecond - recording.State(step)[Mechanism.Rates + 2]) / 5);
        }

        output.WriteLine(FormattableString.Invariant(
            $"{2 * pairs} weights, {(smooth ? "smooth" : "grooved")}: largest departure from the closed form, spin {spins:E1}, times {times:E1}"));
        Assert.InRange(times, 0, Close);
        Assert.InRange(spins, 0, Close);
    }

    [Fact]
    public void The_published_problem_of_two_three_kilogram_weights_is_met()
    {
        // H. D. Curtis, Orbital Mechanics for Engineering Students, yo-yo problem of the chapter on attitude dynamics
        // (statement read; digits by own independent computation): 300 kg·m², 1.5 m, 5 rad/s to rest with 7.2284 m,
        // 0.96379 s. Half a unit of the last digit, and what the rounded length leaves of the spin.
        Propagation propagation = Run(3, 7.2284, 0, 2, false, 2, out _);

        Assert.Equal(0.96379, TimeOf(propagation, DeploymentEventKind.LetGo), 5e-6);
        Assert.Equal(0, propagation.State[Mechanism.Rates + 2], 5e-5);
    }

    [Fact]
    public void In_the_plane_a_grooved_and_a_smooth_drum_are_the_same()
    {
        Propagation grooved = Run(0.9, 4.2, 1.2, 2, false, 3, out _);
        Propagation smooth = Run(0.9, 4.2, 1.2, 2, true, 3, out _);

        Assert.Equal(grooved.State[Mechanism.Rates + 2], smooth.State[Mechanism.Rates + 2], Close);
        Assert.Equal(0, grooved.ImpactLoss, Close);
    }

    [Fact]
    public void A_small_wobble_makes_the_end_of_winding_lossy_on_a_grooved_drum_only_and_by_the_fourth_power()
    {
        // The stopped velocity is R (1 − cos b) φ' with b in proportion to the wobble: its energy goes with b⁴.
        double[] losses = new double[2];
        for (int i = 0; i < 2; i++)
        {
            Vec rates = new(0.05 * (i + 1), 0, 5);
            losses[i] = Wobbling(rates, false).ImpactLoss;
            Assert.Equal(0, Wobbling(rates, true).ImpactLoss, 1e-9);
        }

        Assert.True(losses[0] > 0);

        // Exactly 16 only in the limit; the next power is b² of a few thousandths.
        Assert.Equal(16, losses[1] / losses[0], 0.5);
    }

    private static Propagation Wobbling(Vec rates, bool smooth)
    {
        // Some cord hangs free, so that no tension is lost at the start.
        Mechanism mechanism = new(Hub(), [Cord(3, 5, 0, Math.PI / 2, smooth, 0.4), Cord(3, 5, Math.PI, Math.PI / 2, smooth, 0.4)]);
        Propagation propagation = new(mechanism, new Surroundings(), OdeTolerances.Of(1e-12, 1e-13));
        propagation.Run([0, 0, 0, 1], rates, 2, false, null);
        Assert.DoesNotContain(propagation.Incidents, i => i.Kind == DeploymentEventKind.CordTaut);
        return propagation;
    }

    private static DespinMotion ClosedForm(double weight, double length, LetGo letGo, int weights) =>
        new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(300), Length.FromMeters(1.5), RotationalSpeed.FromRadiansPerSecond(5))
        .Carrying(Mass.FromKilograms(weight), Length.FromMeters(length), letGo, weights: weights)
        .Deploy();

    private static Propagation Run(
        double weight, double length, double letGo, int count, bool smooth, double until, out Recording recording)
    {
        CordConstants[] cords = [.. Enumerable.Range(0, count).Select(i => Cord(weight, length, 2 * Math.PI * i / count, letGo, smooth, 0))];
        Mechanism mechanism = new(Hub(), cords);
        Propagation propagation = new(mechanism, new Surroundings(), OdeTolerances.Of(1e-12, 1e-13));
        recording = new Recording(mechanism.Dimension);
        propagation.Run([0, 0, 0, 1], new Vec(0, 0, 5), until, false, recording);
        return propagation;
    }

    private static HubConstants Hub() => new() { Mass = 1000, Inertia = new Tensor(220, 260, 300, 0, 0, 0) };

    private static CordConstants Cord(double weight, double length, double at, double letGo, bool smooth, double hanging) => new()
    {
        Weight = weight,
        Length = length,
        FreeAtStart = hanging,
        Radius = 1.5,
        StartAngle = at,
        LetGo = new LetGoRule(LetGoKind.CordAngle, letGo, 0),
        Smooth = smooth,
    };

    private static double TimeOf(Propagation propagation, DeploymentEventKind kind) =>
        propagation.Incidents.First(i => i.Kind == kind).Time;
}
