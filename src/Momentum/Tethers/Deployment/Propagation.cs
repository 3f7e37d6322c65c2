using System.Globalization;
using Momentum.Numerics;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// Runs a mechanism from one event to the next: one trajectory from the wound hub to after the last release. Holds all
/// memory; a run that is not recorded allocates nothing after the first.
/// </summary>
internal sealed class Propagation
{
    private const int MaximumIncidents = 4096;
    private const int MaximumSteps = 100_000;

    // Unwound angle, in radians, for which a cord with a hair of negative tension is held straight at the start of winding.
    private const double HeldStraight = 1e-3;

    // What rounding leaves of the tension of an elastic cord at the moment it comes taut, of the spring's part of it: there the
    // damping cancels the spring.
    private const double NoTension = 1e-9;

    private readonly Mechanism _mechanism;
    private readonly Surroundings _surroundings;
    private readonly OdeIntegrator<MechanismOde, MechanismEvents, DormandPrince853> _integrator;
    private readonly double[] _state;
    private readonly double[] _scratch;
    private readonly double[] _values;
    private readonly double[] _valuesBefore;
    private readonly bool[] _starts;
    private readonly double[] _releaseAt;
    private readonly List<Incident> _incidents = [];
    private readonly (Vec Position, Vec Velocity, double Time)[] _departures;
    private readonly LocatedEvent[] _found;
    private readonly bool[] _slackAtPeel;

    private Balance _first;
    private Balance _carried;
    private double _impactLoss;
    private double _time;
    private bool _stopped;
    private int _freed;

    public Propagation(Mechanism mechanism, Surroundings surroundings, OdeTolerances tolerances)
    {
        _mechanism = mechanism;
        _surroundings = surroundings;
        _releaseAt = new double[mechanism.CordCount];
        MechanismEvents events = new(mechanism, surroundings, _releaseAt);
        _integrator = new OdeIntegrator<MechanismOde, MechanismEvents, DormandPrince853>(
            new MechanismOde(mechanism), events, tolerances, new StepLimits { EventSamples = 2, MaximumSteps = MaximumSteps });
        _state = new double[mechanism.Dimension];
        _scratch = new double[mechanism.Dimension];
        _values = new double[events.Count];
        _valuesBefore = new double[events.Count];
        _starts = new bool[mechanism.Links.Length];
        _slackAtPeel = new bool[mechanism.Links.Length];
        _found = new LocatedEvent[2 * events.Count];
        _departures = new (Vec, Vec, double)[mechanism.Links.Length];
    }

    public double Time => _time;

    public ReadOnlySpan<double> State => _state;

    public IReadOnlyList<Incident> Incidents => _incidents;

    public Mechanism Mechanism => _mechanism;

    public Balance First => _first;

    /// <summary>What the released cords and weights took with them, by momentum at their release and energy since.</summary>
    public Balance Carried => _carried;

    public double ImpactLoss => _impactLoss;

    public int AcceptedSteps { get; private set; }

    public long Evaluations { get; private set; }

    /// <summary>Place, velocity and time of each node at its release.</summary>
    public ReadOnlySpan<(Vec Position, Vec Velocity, double Time)> Departures => _departures;

    /// <summary>Runs from time zero to the end time, or to an event that ends the computation.</summary>
    /// <param name="attitude">Quaternion, scalar part last, body to inertial.</param>
    /// <param name="rates">rad/s, body axes.</param>
    /// <param name="endTime">s.</param>
    /// <param name="stopWhenReleased">Whether to end with the last release.</param>
    /// <param name="recording">Where to keep the steps; null to keep none.</param>
    /// <param name="survey">Who looks at every step and between; null for nobody.</param>
    /// <param name="cancellation">Ends the run early, between two steps.</param>
    public void Run(
        ReadOnlySpan<double> attitude,
        Vec rates,
        double endTime,
        bool stopWhenReleased,
        Recording? recording,
        Survey? survey = null,
        CancellationToken cancellation = default)
    {
        Begin(attitude, rates);
        recording?.BeginSegment(_mechanism);
        recording?.Add(0, _state);
        survey?.Look(0, 0, _state, _mechanism);
        while (!_stopped)
        {
            // Everything that the clock starts at this moment, then the nodes that leave the drum because of it.
            ActOnTheClock();
            if (stopWhenReleased && AllReleased())
            {
                break;
            }

            if (_stopped || _time >= endTime)
            {
                break;
            }

            if (Peel())
            {
                continue;
            }

            double next = Math.Min(endTime, NextOnTheClock());
            recording?.BeginSegment(_mechanism);
            recording?.Add(_time, _state);
            _integrator.Start(_time, _state);
            bool heldStraight = StartsWithoutTension();
            survey?.BeginSegment();
            survey?.Look(_time, 0, _state, _mechanism);
            StepResult result;
            do
            {
                cancellation.ThrowIfCancellationRequested();
                result = _integrator.Step(next);
                RefuseEndlessRun();
                NoteSightings();
                recording?.Add(_integrator.Time, _integrator.State);
                if (survey is not null)
                {
                    LookBetween(survey);
                }
            }
            while (result == StepResult.StepTaken && !(heldStraight && Pushes()));

            AcceptedSteps += _integrator.AcceptedSteps;
            Evaluations += _integrator.Evaluations;
            _time = _integrator.Time;
            _integrator.State.CopyTo(_state);
            if (result == StepResult.EventReached)
            {
                int count = 0;
                foreach (LocatedEvent located in _integrator.Events)
                {
                    if (located.Time == _time)
                    {
                        _found[count++] = located;
                    }
                }

                for (int i = 0; i < count; i++)
                {
                    ActOn(_found[i].Index);
                }

                FinishTogether();
            }
        }

        Normalise();
        _mechanism.Evaluate(_state);
        if (survey is not null && AllReleased())
        {
            // A bearing only slows the hub from here on.
            survey.BeginSegment();
            survey.Look(_time, 0, _state, _mechanism);
            if (!_mechanism.Hub.OnBearing)
            {
                survey.GoOnForEver(_state, _mechanism);
            }
        }

        Note(DeploymentEventKind.End, -1, 0);
        if (recording is not null)
        {
            recording.BeginSegment(_mechanism);
            recording.Add(_time, _state);
        }
    }

    /// <summary>The integrator counts the steps since the last event only; a run of many events must end too.</summary>
    private void RefuseEndlessRun()
    {
        if (AcceptedSteps + _integrator.AcceptedSteps > MaximumSteps)
        {
            throw new DeploymentRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"{MaximumSteps} steps were not enough to come past {_integrator.Time:G6} s: a cord chatters, or is too stiff for its weight. Give it damping, less stiffness or no stretch at all, fewer segments, or end the computation earlier."));
        }
    }

    private void LookBetween(Survey survey)
    {
        const int Looks = 4;
        double from = _integrator.PreviousTime;
        double spacing = (_integrator.Time - from) / Looks;
        for (int look = 1; look <= Looks; look++)
        {
            double time = look == Looks ? _integrator.Time : from + (look * spacing);
            _integrator.Interpolate(time, _scratch);
            _mechanism.Evaluate(_scratch);
            survey.Look(time, spacing, _scratch, _mechanism);
        }
    }

    public Balance Balance()
    {
        _mechanism.Evaluate(_state);
        return _mechanism.Weigh(_state);
    }

    private void Begin(ReadOnlySpan<double> attitude, Vec rates)
    {
        _incidents.Clear();
        Array.Clear(_state);
        Array.Clear(_departures);
        _carried = default;
        _impactLoss = 0;
        _time = 0;
        _stopped = false;
        _freed = 0;
        AcceptedSteps = 0;
        Evaluations = 0;
        _mechanism.WindAll();
        attitude.CopyTo(_state.AsSpan(Mechanism.Attitude));
        Vec axis = _mechanism.Hub.Axis;
        (_mechanism.Hub.OnBearing ? rates.Dot(axis) * axis : rates).Write(_state.AsSpan(Mechanism.Rates));
        _mechanism.SetBearing(Math.Sign(rates.Dot(_mechanism.Hub.Axis)));
        _mechanism.StartAtRest(_state);
        for (int i = 0; i < _releaseAt.Length; i++)
        {
            CordConstants cord = _mechanism.CordOf(i);
            _releaseAt[i] = cord.LetGo == LetGoKind.Time ? cord.LetGoValue : double.PositiveInfinity;
        }

        _mechanism.Evaluate(_state);
        _first = _mechanism.Weigh(_state);
    }

    private void ActOnTheClock()
    {
        for (int cord = 0; cord < _mechanism.CordCount; cord++)
        {
            if ((_freed & (1 << cord)) == 0 && _mechanism.CordOf(cord).FreedAt <= _time)
            {
                _freed |= 1 << cord;
                _mechanism.Free(cord, _state);
                Note(DeploymentEventKind.WeightReleased, cord, 0);
            }

            if (_releaseAt[cord] <= _time && !IsReleased(cord))
            {
                Release(cord);
            }
        }

        for (int i = 0; i < _mechanism.Links.Length; i++)
        {
            LoosenAtStart(i);
        }
    }

    /// <summary>
    /// Whether a cord on the drum starts with no tension or a hair less. If it stays so its tension never crosses zero, and
    /// makes no event: it is looked for after each step, and loosened like one that hangs free at the start.
    /// </summary>
    private bool StartsWithoutTension()
    {
        _mechanism.Evaluate(_state);
        foreach (ref readonly Link link in _mechanism.Links)
        {
            if (IsTautOnDrum(link) && link.Tension <= 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a cord that leaves the drum has negative tension past the angle for which it is held straight.</summary>
    private bool Pushes()
    {
        _mechanism.Evaluate(_integrator.State);
        foreach (ref readonly Link link in _mechanism.Links)
        {
            if (IsTautOnDrum(link) && link.Tension < 0 && _integrator.State[link.Offset] > HeldStraight)
            {
                return true;
            }
        }

        return false;
    }

    private static bool IsTautOnDrum(in Link link) => link.IsOnDrum && link.IsTaut;

    /// <summary>A weight set free with some cord hanging may have no tension from the first moment on.</summary>
    private void LoosenAtStart(int index)
    {
        ref readonly Link link = ref _mechanism.Links[index];
        if (!link.IsMoving || !link.IsTaut || _mechanism.MustPeel(index, _state))
        {
            return;
        }

        _mechanism.Evaluate(_state);
        if (link.Tension < -NoTension * link.Spring * Math.Abs(link.Stretch))
        {
            ChangeTension(index);
        }
    }

    /// <summary>
    /// Lets the nodes leave that stand at the drum. No event is located in the short time that this takes: cords whose
    /// winding ends in it end it on the way, and what else comes to pass in it is acted on after it.
    /// </summary>
    /// <returns>Whether something was acted on that the clock may have to do with.</returns>
    private bool Peel()
    {
        // Most phases begin without a start.
        if (!MarkStarts())
        {
            return false;
        }

        MechanismEvents events = _integrator.EventFunctions;
        events.Evaluate(_time, _state, _valuesBefore);
        int ending;
        do
        {
            MarkStarts();
            _time += _mechanism.Peel(_state, _scratch, _slackAtPeel, out ending);
            NoteSlackAtPeel();
            if (ending >= 0)
            {
                _starts[ending] = true;
                EndWinding(_mechanism.Links[ending].Cord, ending);
            }
        }
        while (ending >= 0 && !_stopped);

        bool acted = ActOnWhatPassed(events);
        Array.Clear(_starts);
        return acted;
    }

    /// <summary>Marks the links that are about to leave the drum; whether there is one.</summary>
    private bool MarkStarts()
    {
        bool any = false;
        for (int i = 0; i < _starts.Length; i++)
        {
            bool starts = _mechanism.MustPeel(i, _state);
            _starts[i] |= starts;
            any |= starts;
        }

        return any;
    }

    /// <summary>Acts on the events that changed sign over a start; those of the starting nodes themselves begin with it.</summary>
    private bool ActOnWhatPassed(MechanismEvents events)
    {
        bool acted = false;
        events.Evaluate(_time, _state, _values);
        int links = _mechanism.Links.Length;
        for (int i = 0; i < _values.Length && !_stopped; i++)
        {
            EventRule rule = events.Rule(i);
            bool passed = rule.Direction == EventDirection.Rising
                ? _valuesBefore[i] < 0 && _values[i] >= 0
                : _valuesBefore[i] > 0 && _values[i] <= 0;
            if (passed && rule.IsTerminal && !BeginsWithAStart(i, links))
            {
                ActOn(i);
                acted = true;
            }
        }

        return acted;
    }

    private bool BeginsWithAStart(int index, int links)
    {
        if (index < links)
        {
            return _starts[index];
        }

        index -= links;
        if (index >= MechanismEvents.PerCord * _mechanism.CordCount ||
            index % MechanismEvents.PerCord is MechanismEvents.Spin or MechanismEvents.Room or MechanismEvents.LetGoAngle)
        {
            return false;
        }

        int cord = index / MechanismEvents.PerCord;
        int first = _mechanism.OuterLink(cord);
        return _starts.AsSpan(first, _mechanism.CordOf(cord).Nodes).Contains(true);
    }

    private void NoteSlackAtPeel()
    {
        for (int i = 0; i < _slackAtPeel.Length; i++)
        {
            if (_slackAtPeel[i])
            {
                Note(DeploymentEventKind.CordSlack, _mechanism.Links[i].Cord, 0);
            }
        }
    }

    private double NextOnTheClock()
    {
        double next = double.PositiveInfinity;
        for (int cord = 0; cord < _mechanism.CordCount; cord++)
        {
            if ((_freed & (1 << cord)) == 0)
            {
                next = Math.Min(next, _mechanism.CordOf(cord).FreedAt);
            }

            if (!IsReleased(cord))
            {
                next = Math.Min(next, _releaseAt[cord]);
            }
        }

        return next;
    }

    private bool IsReleased(int cord) => _mechanism.Links[_mechanism.OuterLink(cord)].Chart == LinkChart.Released;

    public bool AllReleased()
    {
        for (int cord = 0; cord < _mechanism.CordCount; cord++)
        {
            if (!IsReleased(cord))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Notes the events that change nothing.</summary>
    private void NoteSightings()
    {
        int links = _mechanism.Links.Length;
        foreach (LocatedEvent located in _integrator.Events)
        {
            int index = located.Index - links;
            if (index < 0 || index >= MechanismEvents.PerCord * _mechanism.CordCount)
            {
                continue;
            }

            int cord = index / MechanismEvents.PerCord;
            switch (index % MechanismEvents.PerCord)
            {
                case MechanismEvents.Deck:
                    Note(DeploymentEventKind.CordTouchesDeckEdge, cord, 0, located.Time);
                    break;
                case MechanismEvents.Reverse when _mechanism.InnerLink(cord) == _mechanism.OuterLink(cord):
                    Note(DeploymentEventKind.UnwindingReversed, cord, 0, located.Time);
                    break;
            }
        }
    }

    private void ActOn(int index)
    {
        int links = _mechanism.Links.Length;
        if (index < links)
        {
            ChangeTension(index);
            return;
        }

        index -= links;
        if (index >= MechanismEvents.PerCord * _mechanism.CordCount)
        {
            bool stops = index - (MechanismEvents.PerCord * _mechanism.CordCount) == MechanismEvents.BearingStops;
            TurnBearing(stops);
            return;
        }

        int cord = index / MechanismEvents.PerCord;
        int inner = _mechanism.InnerLink(cord);
        if (inner < 0)
        {
            return;
        }

        switch (index % MechanismEvents.PerCord)
        {
            case MechanismEvents.End:
                EndWinding(cord, inner);
                break;
            case MechanismEvents.LetGoAngle:
                ReachAngle(cord);
                break;
            case MechanismEvents.WrapBack:
                Lossy(DeploymentEventKind.CordWrapsBack, cord, inner);
                break;
            case MechanismEvents.Strike:
                if (inner != _mechanism.OuterLink(cord) && !_mechanism.Links[inner].WrappedBack)
                {
                    throw new DeploymentRefusedException(string.Create(
                        CultureInfo.InvariantCulture,
                        $"A piece of heavy cord {cord + 1} fell back onto the drum at {_time:G6} s. Cut the cord into fewer segments."));
                }

                Note(
                    inner == _mechanism.OuterLink(cord) ? DeploymentEventKind.WeightStrikesHub : DeploymentEventKind.CordPieceWindsUp,
                    cord,
                    0);
                _stopped = true;
                break;
            case MechanismEvents.OffDrum:
                Note(DeploymentEventKind.CordRunsOffDrum, cord, 0);
                _stopped = true;
                break;
            case MechanismEvents.Room:
                Note(DeploymentEventKind.WeightStrikesRoom, cord, 0);
                _stopped = true;
                break;
            case MechanismEvents.Spin:
                SenseSpin(cord);
                break;
        }
    }

    private void SenseSpin(int cord)
    {
        _releaseAt[cord] = _time + _mechanism.CordOf(cord).LetGoLatency;
        Note(DeploymentEventKind.SpinRateSensed, cord, 0);
    }

    /// <summary>A cord stands where it lets go: it does, or does after the latency.</summary>
    private void ReachAngle(int cord)
    {
        if (IsReleased(cord) || !double.IsPositiveInfinity(_releaseAt[cord]))
        {
            return;
        }

        double latency = _mechanism.CordOf(cord).LetGoLatency;
        if (latency == 0)
        {
            Release(cord);
            return;
        }

        _releaseAt[cord] = _time + latency;
        Note(DeploymentEventKind.LetGoAngleReached, cord, 0);
    }

    private void EndWinding(int cord, int inner)
    {
        double before = Balance().Energy;
        CordConstants constants = _mechanism.CordOf(cord);
        bool hinged = _mechanism.EndWinding(inner, _state);
        double lost = before - Balance().Energy;
        _impactLoss += lost;
        if (!hinged)
        {
            Note(DeploymentEventKind.CordPiecePeeled, cord, lost);
            return;
        }

        bool jammed = !double.IsPositiveInfinity(constants.JamsAt);
        Note(jammed ? DeploymentEventKind.Jammed : DeploymentEventKind.Unwound, cord, lost);
        if (!jammed && constants.LetGo == LetGoKind.CordAngle && constants.LetGoValue <= 0)
        {
            ReachAngle(cord);
        }
    }

    private void Lossy(DeploymentEventKind kind, int cord, int link)
    {
        double before = Balance().Energy;
        if (kind == DeploymentEventKind.CordWrapsBack)
        {
            _mechanism.WrapAgain(link, _state);
        }
        else
        {
            _mechanism.Tighten(link, _state);
        }

        double lost = before - Balance().Energy;
        _impactLoss += lost;
        Note(kind, cord, lost);
    }

    private void ChangeTension(int index)
    {
        ref readonly Link link = ref _mechanism.Links[index];
        if (!link.IsMoving)
        {
            return;
        }

        if (link.IsTaut)
        {
            // An elastic cord with damping lets go of what little stretch it still has: the ledger names it.
            double before = Balance().Energy;
            _mechanism.Slacken(index, _state);
            double lost = before - Balance().Energy;
            _impactLoss += lost;
            Note(DeploymentEventKind.CordSlack, link.Cord, lost);
        }
        else
        {
            Lossy(DeploymentEventKind.CordTaut, link.Cord, index);
        }
    }

    private void TurnBearing(bool stops)
    {
        _mechanism.Evaluate(_state);
        double load = _mechanism.AxialLoad;
        if (stops && Math.Abs(load) <= _mechanism.Hub.CoulombFriction)
        {
            default(Vec).Write(_state.AsSpan(Mechanism.Rates));
            _mechanism.SetBearing(0);
            Note(DeploymentEventKind.BearingStopped, -1, 0);
        }
        else
        {
            _mechanism.SetBearing(Math.Sign(load));
            Note(DeploymentEventKind.BearingTurns, -1, 0);
        }
    }

    private void Release(int cord)
    {
        if (IsReleased(cord))
        {
            return;
        }

        int first = _mechanism.OuterLink(cord);
        for (int i = first; i < first + _mechanism.CordOf(cord).Nodes; i++)
        {
            _mechanism.Evaluate(_state);
            (Vec position, Vec velocity) = _mechanism.Track(i, _state);
            _departures[i] = (position, velocity, _time);
        }

        Balance carried = _mechanism.Release(cord, _state);
        _carried.Linear += carried.Linear;
        _carried.Angular += carried.Angular;
        _carried.Weights += carried.Weights;
        _carried.Cords += carried.Cords;
        _carried.Elastic += carried.Elastic;
        _carried.Gravity += carried.Gravity;
        _freed |= 1 << cord;
        Note(DeploymentEventKind.LetGo, cord, 0);
    }

    /// <summary>
    /// Cords of the same make end their phase at the same moment but for rounding; those whose end the integrator has
    /// not yet counted end it now, so that no step is made of a length that rounding decides.
    /// </summary>
    private void FinishTogether()
    {
        const double Together = 1e-11;
        MechanismEvents events = _integrator.EventFunctions;
        events.Evaluate(_time, _state, _values);
        int links = _mechanism.Links.Length;
        for (int cord = 0; cord < _mechanism.CordCount; cord++)
        {
            int start = links + (MechanismEvents.PerCord * cord);
            int inner = _mechanism.InnerLink(cord);
            if (inner < 0)
            {
                continue;
            }

            if (_values[start + MechanismEvents.Spin] < Together * _mechanism.CordOf(cord).LetGoValue)
            {
                SenseSpin(cord);
            }

            ref readonly Link link = ref _mechanism.Links[inner];
            if (link.IsOnDrum && link.Unwinding > 0 && _values[start + MechanismEvents.End] > -Together * link.EndAngle)
            {
                EndWinding(cord, inner);
            }
            else if (_mechanism.CordOf(cord).LetGo == LetGoKind.CordAngle && Math.Abs(_values[start + MechanismEvents.LetGoAngle]) < Together)
            {
                ReachAngle(cord);
            }
        }
    }

    private void Normalise()
    {
        Span<double> q = _state.AsSpan(Mechanism.Attitude, 4);
        double length = Math.Sqrt((q[0] * q[0]) + (q[1] * q[1]) + (q[2] * q[2]) + (q[3] * q[3]));
        for (int i = 0; i < 4; i++)
        {
            q[i] /= length;
        }
    }

    private void Note(DeploymentEventKind kind, int cord, double lost) => Note(kind, cord, lost, _time);

    private void Note(DeploymentEventKind kind, int cord, double lost, double time)
    {
        if (_incidents.Count >= MaximumIncidents)
        {
            throw new DeploymentRefusedException(
                $"More than {MaximumIncidents} events: a cord chatters between slack and taut. Give the cord elasticity and damping, or a later start of winding.");
        }

        _incidents.Add(new Incident(kind, time, cord, lost));
    }
}
