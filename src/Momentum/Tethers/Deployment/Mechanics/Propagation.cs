using System.Globalization;
using Momentum.Numerics;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// Runs a mechanism from one event to the next, by the clock: one trajectory from the wound hub to after the last let-go. Holds all
/// memory; a run that is not recorded allocates nothing after the first.
/// </summary>
internal sealed class Propagation
{
    private const int MaximumSteps = 100_000;

    // Unwound angle, in radians, for which a cord with a hair of negative tension is held straight at the start of winding.
    private const double HeldStraight = 1e-3;

    // What rounding leaves of the tension of an elastic cord at the moment it comes taut, of the spring's part of it: there the
    // damping cancels the spring.
    private const double NoTension = 1e-9;

    // Events of cords of the same make this close, relative, are one moment.
    private const double Together = 1e-11;

    private readonly Mechanism _mechanism;
    private readonly MechanismEvents _events;
    private readonly OdeIntegrator<MechanismOde, MechanismEvents, DormandPrince853> _integrator;
    private readonly Clock _clock;
    private readonly Happenings _happenings;
    private readonly EventActions _actions;
    private readonly StartPassage _starts;
    private readonly double[] _state;
    private readonly double[] _between;
    private readonly double[] _values;
    private readonly MechanismEvent[] _found;

    public Propagation(Mechanism mechanism, Surroundings surroundings, OdeTolerances tolerances)
    {
        _mechanism = mechanism;
        _clock = new Clock(mechanism.CordCount);
        _happenings = new Happenings(mechanism);
        _events = new MechanismEvents(mechanism, surroundings, _clock);
        _integrator = new OdeIntegrator<MechanismOde, MechanismEvents, DormandPrince853>(
            new MechanismOde(mechanism), _events, tolerances, new StepLimits { EventSamples = 2, MaximumSteps = MaximumSteps });
        _state = new double[mechanism.Dimension];
        _between = new double[mechanism.Dimension];
        _values = new double[_events.Count];
        _found = new MechanismEvent[2 * _events.Count];
        _actions = new EventActions(mechanism, _state, _clock, _happenings);
        _starts = new StartPassage(mechanism, _events, _actions, _happenings);
    }

    public double Time => _actions.Time;

    public ReadOnlySpan<double> State => _state;

    public IReadOnlyList<Incident> Incidents => _happenings.Incidents;

    public Mechanism Mechanism => _mechanism;

    /// <summary>Momentum and energy at the start.</summary>
    public Balance First { get; private set; }

    /// <summary>What the departed cords and weights took with them, by momentum at their let-go and energy since.</summary>
    public Balance Carried => _happenings.Carried;

    public double ImpactLoss => _happenings.ImpactLoss;

    public int AcceptedSteps { get; private set; }

    public long Evaluations { get; private set; }

    /// <summary>How the weight of each cord left.</summary>
    public ReadOnlySpan<Departure> Departures => _happenings.Departures;

    /// <summary>Runs from time zero to the end time, or to an event that ends the computation.</summary>
    /// <param name="attitude">Quaternion, scalar part last, body to inertial.</param>
    /// <param name="rates">rad/s, body axes.</param>
    /// <param name="endTime">s.</param>
    /// <param name="stopWhenLetGo">Whether to end with the last let-go.</param>
    /// <param name="recording">Where to keep the steps; null to keep none.</param>
    /// <param name="survey">Who looks at every step and between; null for nobody.</param>
    /// <param name="cancellation">Ends the run early, between two steps.</param>
    public void Run(
        ReadOnlySpan<double> attitude,
        Vec rates,
        double endTime,
        bool stopWhenLetGo,
        Recording? recording,
        Survey? survey = null,
        CancellationToken cancellation = default)
    {
        Begin(attitude, rates);
        BeginSegment(recording);
        survey?.Look(0, 0, _state, _mechanism);
        while (!_happenings.Ended)
        {
            // Everything that the clock starts at this moment, then the nodes that leave the drum because of it.
            _actions.ActOnTheClock();
            LoosenAtStart();
            if ((stopWhenLetGo && AllLetGo()) || _happenings.Ended || Time >= endTime)
            {
                break;
            }

            if (_starts.Pass(_state) || _actions.LandWhatFalls())
            {
                continue;
            }

            BeginSegment(recording);
            StepResult result = RunPhase(Math.Min(endTime, _clock.Next), recording, survey, cancellation);
            if (result == StepResult.EventReached)
            {
                ActOnEvents();
            }
        }

        End(survey);
        BeginSegment(recording);
    }

    public bool AllLetGo()
    {
        for (int cord = 0; cord < _mechanism.CordCount; cord++)
        {
            if (!_mechanism.HasLetGo(cord))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Momentum and energy of what is still together.</summary>
    public Balance Balance()
    {
        _mechanism.Evaluate(_state);
        return Weighing.Of(_mechanism, _state);
    }

    private void Begin(ReadOnlySpan<double> attitude, Vec rates)
    {
        Array.Clear(_state);
        _happenings.Clear();
        _clock.Set(_mechanism);
        _starts.Reset();
        _actions.Time = 0;
        AcceptedSteps = 0;
        Evaluations = 0;
        _mechanism.WindAll();
        attitude.CopyTo(_state.AsSpan(Mechanism.Attitude));
        Vec axis = _mechanism.Hub.Axis;
        (_mechanism.Hub.OnBearing ? rates.Dot(axis) * axis : rates).Write(_state.AsSpan(Mechanism.Rates));
        _mechanism.SetBearing(Math.Sign(rates.Dot(axis)));
        _mechanism.StartAtRest(_state);
        First = Balance();
    }

    private void BeginSegment(Recording? recording)
    {
        recording?.BeginSegment(_mechanism);
        recording?.Add(Time, _state);
    }

    /// <summary>Integrates up to the next event that ends a phase, or up to a time.</summary>
    private StepResult RunPhase(double until, Recording? recording, Survey? survey, CancellationToken cancellation)
    {
        _integrator.Start(Time, _state);
        bool heldStraight = StartsWithoutTension();
        survey?.BeginSegment();
        survey?.Look(Time, 0, _state, _mechanism);
        StepResult result;
        do
        {
            cancellation.ThrowIfCancellationRequested();
            result = _integrator.Step(until);
            RefuseEndlessRun();
            foreach (LocatedEvent located in _integrator.Events)
            {
                _actions.See(_events[located.Index], located.Time);
            }

            recording?.Add(_integrator.Time, _integrator.State);
            if (survey is not null)
            {
                LookBetween(survey);
            }
        }
        while (result == StepResult.StepTaken && !(heldStraight && Pushes()));

        AcceptedSteps += _integrator.AcceptedSteps;
        Evaluations += _integrator.Evaluations;
        _actions.Time = _integrator.Time;
        _integrator.State.CopyTo(_state);
        return result;
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
            _integrator.Interpolate(time, _between);
            _mechanism.Evaluate(_between);
            survey.Look(time, spacing, _between, _mechanism);
        }
    }

    /// <summary>Acts on the events at which the integrator stopped; the first of them may change what the others are about.</summary>
    private void ActOnEvents()
    {
        int count = 0;
        foreach (LocatedEvent located in _integrator.Events)
        {
            if (located.Time == Time)
            {
                _found[count++] = _events[located.Index];
            }
        }

        foreach (MechanismEvent happens in _found.AsSpan(0, count))
        {
            _actions.ActOn(happens);
        }

        FinishTogether();
    }

    /// <summary>
    /// Cords of the same make end their phase at the same moment but for rounding; those whose end the integrator has
    /// not yet counted end it now, so that no step is made of a length that rounding decides.
    /// </summary>
    private void FinishTogether()
    {
        _events.Evaluate(Time, _state, _values);
        for (int cord = 0; cord < _mechanism.CordCount; cord++)
        {
            int inner = _mechanism.InnerLink(cord);
            if (inner < 0)
            {
                continue;
            }

            CordConstants constants = _mechanism.CordOf(cord);
            MechanismEvents.CordValues values = _events.Of(cord, _values);
            if (values[MechanismEventKind.SpinSensed] < Together * constants.LetGo.Value)
            {
                _actions.SenseSpin(cord);
            }

            ref readonly Link link = ref _mechanism.Links[inner];
            if (link.IsOnDrum && link.Motion.Unwinding > 0 &&
                values[MechanismEventKind.WindingEnds] > -Together * link.Phase.Winding.End)
            {
                _actions.EndWinding(cord, inner);
            }
            else if (constants.LetGo.Kind == LetGoKind.CordAngle && Math.Abs(values[MechanismEventKind.CordAngleReached]) < Together)
            {
                _actions.ReachAngle(cord);
            }
        }
    }

    /// <summary>A weight set free with some cord hanging may have no tension from the first moment on.</summary>
    private void LoosenAtStart()
    {
        for (int i = 0; i < _mechanism.Links.Length; i++)
        {
            ref readonly Link link = ref _mechanism.Links[i];
            if (!link.IsMoving || !link.IsTaut || link.Starts(_state))
            {
                continue;
            }

            _mechanism.Evaluate(_state);
            if (link.Motion.Tension < -NoTension * link.Spring * Math.Abs(link.Motion.Stretch))
            {
                _actions.ChangeTension(i);
            }
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
            if (link.IsOnDrum && link.IsTaut && link.Motion.Tension <= 0)
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
            if (link.IsOnDrum && link.IsTaut && link.Motion.Tension < 0 && _integrator.State[link.Offset] > HeldStraight)
            {
                return true;
            }
        }

        return false;
    }

    private void End(Survey? survey)
    {
        Span<double> q = _state.AsSpan(Mechanism.Attitude, 4);
        double length = Math.Sqrt((q[0] * q[0]) + (q[1] * q[1]) + (q[2] * q[2]) + (q[3] * q[3]));
        for (int i = 0; i < 4; i++)
        {
            q[i] /= length;
        }

        _mechanism.Evaluate(_state);
        if (survey is not null && AllLetGo())
        {
            // A bearing only slows the hub from here on.
            survey.BeginSegment();
            survey.Look(Time, 0, _state, _mechanism);
            if (!_mechanism.Hub.OnBearing)
            {
                survey.GoOnForEver(_state, _mechanism);
            }
        }

        _happenings.Note(DeploymentEventKind.End, Time, -1);
    }
}
