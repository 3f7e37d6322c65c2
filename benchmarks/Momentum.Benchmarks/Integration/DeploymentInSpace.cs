using Momentum.Tethers.Deployment.Mechanics;

namespace Momentum.Benchmarks.Integration;

/// <summary>
/// An invented stage of 182 kg with its centre of mass off the axis and a full tensor, 7.5 rad/s and a wobble; two weights of
/// 0.62 kg on grooved drums, 0.5 s of unwinding, by the library's own equations of motion.
/// </summary>
internal sealed class DeploymentInSpace : Problem<MechanismOde>
{
    private static readonly double[] _times = [0.0, 0.5];
    private static readonly int[] _places = [.. Enumerable.Range(0, 13), 13, 14, 16, 17, 19, 20, 22, 23];
    private static readonly double[] _end =
    [
        -0.008011864269815061, -0.0225181904464184, 0.00046575615669279205, 0.025254271001937376,
        0.004424976173256365, 0.9938590167794754, -0.10764244584810063, 0.00953923318156935,
        -0.08430128953106487, 0.0011641486271830057, 0.12744680155985708, -0.052255026849368426,
        5.284956831779344, 3.6339046095811796, 0.009543833938105924, 12.088606078710415,
        0.4289232202571435, 3.6381703847489586, -0.009657713514937877, 12.093936928812258,
        -0.42961405319319146,
    ];

    private readonly Mechanism _mechanism;
    private readonly double[] _start;

    public DeploymentInSpace()
    {
        HubConstants hub = new()
        {
            Mass = 182,
            Centre = new Vec(0.001, 0, 0.412),
            Inertia = new Tensor(31.5, 32.1, 18.4, 0.08, -0.11, 0.05),
        };
        CordConstants cord = new() { Weight = 0.62, Length = 2.3, FreeAtStart = 0.05, Radius = 0.43, Height = 0.427 };
        _mechanism = new Mechanism(hub, [cord, cord with { StartAngle = Math.PI }]);
        _start = new double[_mechanism.Dimension];
        _start[Mechanism.Attitude + 3] = 1;
        new Vec(0.1, 0.05, 7.5).Write(_start.AsSpan(Mechanism.Rates));
        PhaseChanges changes = new(_mechanism);
        changes.Release(0, _start);
        changes.Release(1, _start);
    }

    public override string Name => "deployment-in-space";

    public override string Title => "Deployment in space";

    public override string Description =>
        "Asymmetric hub with wobble, free to translate, and two weights on grooved drums, 21 components: 0.5 s of unwinding.";

    public override int Index => 1;

    public override ReadOnlySpan<double> Times => _times;

    public override double[] Start => _start;

    public override ReadOnlySpan<int> Places => _places;

    public override ReadOnlySpan<double> End => _end;

    protected override MechanismOde System(int phase) => new(_mechanism);
}
