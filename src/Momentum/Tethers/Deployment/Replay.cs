using Momentum.Numerics;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// Computes the state at any time of a recorded deployment, to the accuracy of the deployment itself: by integrating again
/// from the step before, in the phases of that step. One thread at a time.
/// </summary>
internal sealed class Replay
{
    private readonly Recording _recording;
    private readonly Mechanism _mechanism;
    private readonly OdeIntegrator<MechanismOde, NoEvents> _integrator;
    private readonly double[] _state;
    private int _segment = -1;

    public Replay(Recording recording, HubConstants hub, CordConstants[] cords, Func<Mechanism, OdeTolerances> tolerances)
    {
        _recording = recording;
        _mechanism = new Mechanism(hub, cords);
        _integrator = new OdeIntegrator<MechanismOde, NoEvents>(new MechanismOde(_mechanism), default, tolerances(_mechanism));
        _state = new double[_mechanism.Dimension];
    }

    public Mechanism Mechanism => _mechanism;

    public ReadOnlySpan<double> State => _state;

    /// <summary>Goes to a time; the mechanism is then evaluated there.</summary>
    public void GoTo(double time)
    {
        int step = _recording.StepAt(time);
        int segment = _recording.SegmentOf(step);
        if (segment != _segment)
        {
            (Link[] phases, double bearingSign) = _recording.Segment(segment);
            _mechanism.TakePhases(phases, bearingSign);
            _segment = segment;
        }

        _recording.State(step).CopyTo(_state);
        if (time > _recording.Time(step))
        {
            _integrator.Start(_recording.Time(step), _state);
            _integrator.Run(time);
            _integrator.State.CopyTo(_state);
        }

        _mechanism.Evaluate(_state);
    }
}
