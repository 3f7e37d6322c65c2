using Momentum.Numerics;
using Momentum.Tethers.Deployment;

namespace Momentum.Benchmarks.Deployment;

/// <summary>
/// The unwinding that every integrator is measured on: an invented stage of 182 kg, two weights of 0.62 kg on grooved
/// drums, 7.5 rad/s, 0.5 s; in space with wobble and unbalance, or in the plane. The program beside this file in C has
/// the same numbers.
/// </summary>
internal sealed class DeploymentCase
{
    public const double Duration = 0.5;
    public const double Spin = 7.5;

    private DeploymentCase(Mechanism mechanism, double[] start)
    {
        Mechanism = mechanism;
        Start = start;
    }

    public Mechanism Mechanism { get; }

    public double[] Start { get; }

    public static DeploymentCase InSpace() => Of(
        new HubConstants { Mass = 182, Centre = new Vec(0.001, 0, 0.412), Inertia = new Tensor(31.5, 32.1, 18.4, 0.08, -0.11, 0.05) },
        new Vec(0.1, 0.05, Spin));

    public static DeploymentCase InThePlane() => Of(
        new HubConstants { Mass = 182, Centre = new Vec(0, 0, 0.427), Inertia = new Tensor(31.5, 32.1, 18.4, 0, 0, 0) },
        new Vec(0, 0, Spin));

    /// <summary>Largest difference of rates (over the spin) and of the cords' two angles.</summary>
    public static double Error(ReadOnlySpan<double> state, ReadOnlySpan<double> reference)
    {
        double worst = 0;
        for (int i = 0; i < 3; i++)
        {
            worst = Math.Max(worst, Math.Abs(state[Mechanism.Rates + i] - reference[Mechanism.Rates + i]) / Spin);
        }

        foreach (int i in (ReadOnlySpan<int>)[13, 14, 19, 20])
        {
            worst = Math.Max(worst, Math.Abs(state[i] - reference[i]));
        }

        return worst;
    }

    /// <summary>The state at the end, by the library's integrator with one tolerance for all.</summary>
    public (double[] State, int Steps, long Evaluations) Run(double tolerance)
    {
        OdeIntegrator<MechanismOde, NoEvents> integrator = new(new MechanismOde(Mechanism), default, OdeTolerances.Of(tolerance, 0.1 * tolerance));
        integrator.Start(0, Start);
        integrator.Run(Duration);
        return (integrator.State.ToArray(), integrator.AcceptedSteps, integrator.Evaluations);
    }

    private static DeploymentCase Of(HubConstants hub, Vec rates)
    {
        CordConstants Cord(double at) => new()
        {
            Weight = 0.62,
            Length = 2.3,
            FreeAtStart = 0.05,
            Radius = 0.43,
            Height = 0.427,
            StartAngle = at,
        };
        Mechanism mechanism = new(hub, [Cord(0), Cord(Math.PI)]);
        double[] state = new double[mechanism.Dimension];
        state[Mechanism.Attitude + 3] = 1;
        rates.Write(state.AsSpan(Mechanism.Rates));
        mechanism.SetBearing(1);
        mechanism.StartAtRest(state);
        mechanism.Free(0, state);
        mechanism.Free(1, state);
        return new DeploymentCase(mechanism, state);
    }
}
