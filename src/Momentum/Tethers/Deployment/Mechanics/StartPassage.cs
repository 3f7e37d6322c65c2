using Momentum.Numerics;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The short time in which nodes leave the drum. No event is located in it: cords whose winding ends in it end it on the way, and
/// what else comes to pass in it is acted on after it.
/// </summary>
internal sealed class StartPassage(Mechanism mechanism, MechanismEvents events, EventActions actions, Happenings happenings)
{
    private readonly WindingStart _start = new(mechanism);
    private readonly bool[] _starts = new bool[mechanism.Links.Length];
    private readonly bool[] _slack = new bool[mechanism.Links.Length];
    private readonly double[] _before = new double[events.Count];
    private readonly double[] _after = new double[events.Count];

    /// <summary>Forgets the run before.</summary>
    public void Reset() => _start.Reset();

    /// <summary>Passes it, if there are nodes that start.</summary>
    /// <returns>Whether something was acted on that the clock may have to do with.</returns>
    public bool Pass(Span<double> state)
    {
        // Most phases begin without a start.
        if (!MarkStarts(state))
        {
            return false;
        }

        events.Evaluate(actions.Time, state, _before);
        int ending;
        do
        {
            // Each round ends the winding of a link, or is the last.
            MarkStarts(state);
            actions.Time += _start.Start(state, _slack, out ending);
            NoteSlack();
            if (ending >= 0)
            {
                _starts[ending] = true;
                actions.EndWinding(mechanism.Links[ending].Cord, ending);
            }
        }
        while (ending >= 0 && !happenings.Ended);

        bool acted = ActOnWhatPassed(state);
        Array.Clear(_starts);
        return acted;
    }

    /// <summary>Marks the links that are about to leave the drum; whether there is one.</summary>
    private bool MarkStarts(ReadOnlySpan<double> state)
    {
        bool any = false;
        for (int i = 0; i < _starts.Length; i++)
        {
            bool starts = mechanism.Links[i].Starts(state);
            _starts[i] |= starts;
            any |= starts;
        }

        return any;
    }

    private void NoteSlack()
    {
        for (int i = 0; i < _slack.Length; i++)
        {
            if (_slack[i])
            {
                happenings.Note(DeploymentEventKind.CordSlack, actions.Time, mechanism.Links[i].Cord);
            }
        }
    }

    /// <summary>Acts on the events that changed sign over a start; those of the starting nodes themselves begin with it.</summary>
    private bool ActOnWhatPassed(ReadOnlySpan<double> state)
    {
        bool acted = false;
        events.Evaluate(actions.Time, state, _after);
        for (int i = 0; i < _after.Length && !happenings.Ended; i++)
        {
            EventRule rule = events.Rule(i);
            bool passed = rule.Direction == EventDirection.Rising
                ? _before[i] < 0 && _after[i] >= 0
                : _before[i] > 0 && _after[i] <= 0;
            if (passed && rule.IsTerminal && !BeginsWithAStart(events[i]))
            {
                actions.ActOn(events[i]);
                acted = true;
            }
        }

        return acted;
    }

    private bool BeginsWithAStart(MechanismEvent happens)
    {
        switch (happens.Kind)
        {
            case MechanismEventKind.TensionChanges:
                return _starts[happens.Subject];
            case MechanismEventKind.SpinSensed or MechanismEventKind.RoomReached or MechanismEventKind.CordAngleReached:
            case MechanismEventKind.BearingStops or MechanismEventKind.BearingStarts:
                return false;
            default:
                int cord = happens.Subject;
                return _starts.AsSpan(mechanism.OuterLink(cord), mechanism.CordOf(cord).Nodes).Contains(true);
        }
    }
}
