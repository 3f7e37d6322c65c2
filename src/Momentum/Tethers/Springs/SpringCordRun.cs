using Momentum.Numerics;

namespace Momentum.Tethers.Springs;

/// <summary>Follows spring cords from release of the weights to let-go. One serves many runs without allocating; not thread-safe.</summary>
internal sealed class SpringCordRun
{
    /// <summary>Relative error allowed a step: close to the least at which the estimate is more than rounding.</summary>
    internal const double Tolerance = 1e-13;

    // A rigid cord unwinds at the initial spin and then takes less than half a turn; a spring may hold it up for a while.
    private const double Patience = 20;

    // Enough for some ten thousand swings of a spring; a cord that is stiffer is one that does not stretch.
    private const int MostSteps = 200_000;

    private readonly OdeIntegrator<SpringCordEquations, SpringCordEvents, DormandPrince853> _integrator;
    private readonly bool _watching;
    private readonly double[] _peakState = new double[SpringCordEquations.Size];
    private double _peakTime;
    private bool _peakHinging;

    /// <summary>Makes room.</summary>
    /// <param name="watching">Whether peaks are looked for.</param>
    /// <param name="tolerance">Relative error allowed a step.</param>
    internal SpringCordRun(bool watching, double tolerance = Tolerance)
    {
        _watching = watching;
        _integrator = new(
            default,
            new SpringCordEvents { Watching = watching },
            OdeTolerances.Of(tolerance, tolerance / 100),
            new StepLimits { MaximumSteps = MostSteps });
    }

    /// <summary>How a run ended.</summary>
    internal enum Outcome
    {
        LetGo,
        Slack,
        Rewound,
        WrapsBack,
        Held,
    }

    internal static OdeTolerances Tolerances => OdeTolerances.Of(Tolerance, Tolerance / 100);

    /// <summary>A moment's time and state, and the phase it belongs to.</summary>
    internal readonly record struct Moment(double Time, bool Hinging, double[] State);

    internal double Time => _integrator.Time;

    internal bool Hinging => _integrator.System.Hinging;

    internal ReadOnlySpan<double> State => _integrator.State;

    /// <summary>When the winding ended, or the run before that.</summary>
    internal double UnwindTime { get; private set; }

    internal double PeakTension { get; private set; }

    /// <summary>The moment of the peak tension; only if watching.</summary>
    internal Moment Peak => new(_peakTime, _peakHinging, [.. _peakState]);

    internal double LargestStretch { get; private set; }

    /// <summary>Steps of the integrations so far, of all runs.</summary>
    internal long Steps { get; private set; }

    /// <summary>Runs from the release of the weights.</summary>
    /// <param name="proportions">Hub, cords and weights.</param>
    /// <param name="rule">The let-go rule, without units as the motion; not met at the start.</param>
    /// <param name="record">Receives the steps; null if nobody asks.</param>
    /// <param name="cancellation">Ends the run early.</param>
    internal Outcome Run(
        in SpringCordProportions proportions, LetGoRule rule, List<Moment>? record = null, CancellationToken cancellation = default)
    {
        PeakTension = 0;
        LargestStretch = 0;
        var cords = new SpringCordEquations(proportions);
        Span<double> state = stackalloc double[SpringCordEquations.Size];
        state.Clear();
        state[SpringCordEquations.Spin] = 1;
        state[SpringCordEquations.Inward] = 1;
        double time = 0;
        while (true)
        {
            int ended = Phase(cords, proportions, time, state, rule, record, cancellation);
            time = Time;
            State.CopyTo(state);
            bool unwound = ended == SpringCordEvents.End && !cords.Hinging;
            UnwindTime = cords.Hinging ? UnwindTime : time;
            if (ended == SpringCordEvents.End)
            {
                // At either tangent the rule may be met at this very moment.
                ended = rule.Condition(time, state[SpringCordEquations.Spin], cords.Hinging ? Math.PI : 0) >= 0 ? SpringCordEvents.LetGo : ended;
            }

            if (ended == SpringCordEvents.LetGo)
            {
                if (rule.IsImmediate)
                {
                    return Outcome.LetGo;
                }

                rule = rule.After(time);
            }
            else if (!unwound)
            {
                return ended switch
                {
                    SpringCordEvents.End => Outcome.WrapsBack,
                    SpringCordEvents.Slack => Outcome.Slack,
                    SpringCordEvents.Rewound => Outcome.Rewound,
                    _ => Outcome.Held,
                };
            }

            if (unwound)
            {
                cords.Hinging = true;
                state[SpringCordEquations.Swept] = 0;
            }
        }
    }

    // Returns the event that ended the phase, or -1.
    private int Phase(
        in SpringCordEquations cords,
        in SpringCordProportions proportions,
        double time,
        ReadOnlySpan<double> state,
        LetGoRule rule,
        List<Moment>? record,
        CancellationToken cancellation)
    {
        _integrator.System = cords;
        ref SpringCordEvents events = ref _integrator.EventFunctions;
        events.Cords = cords;
        events.Swept = cords.Hinging ? Math.PI : proportions.Length;
        events.Offset = cords.Hinging ? 0 : -proportions.Length;
        events.Awaited = rule;
        _integrator.Start(time, state);
        Note(record);
        double end = time + (Patience * (proportions.Length + Math.PI));

        // Just past the other tangent a short cord turns back, after a stay of about twice its length in hub radii (as of
        // rigid cords): of the four looks in a step two must fall into it, or the let-go would be taken for one a swing later.
        double longest = cords.Hinging ? 4 * proportions.Length : double.PositiveInfinity;
        StepResult result;
        do
        {
            cancellation.ThrowIfCancellationRequested();
            Steps++;
            result = _integrator.Step(Math.Min(end, Time + longest));
            Note(record);
            if (_watching)
            {
                Watch();
            }
        }
        while (result != StepResult.EventReached && Time < end);
        if (result != StepResult.EventReached)
        {
            return -1;
        }

        foreach (LocatedEvent located in _integrator.Events)
        {
            if (located.Index < SpringCordEvents.TensionPeak)
            {
                return located.Index;
            }
        }

        return -1;
    }

    private void Note(List<Moment>? record) => record?.Add(new Moment(Time, Hinging, State.ToArray()));

    private void Watch()
    {
        Span<double> state = stackalloc double[SpringCordEquations.Size];
        foreach (LocatedEvent located in _integrator.Events)
        {
            if (located.Index >= SpringCordEvents.TensionPeak && located.Time <= Time)
            {
                _integrator.Interpolate(located.Time, state);
                Compare(located.Time, state);
            }
        }

        Compare(Time, State);
    }

    private void Compare(double time, ReadOnlySpan<double> state)
    {
        LargestStretch = Math.Max(LargestStretch, state[SpringCordEquations.Stretch]);
        double tension = _integrator.System.Look(state).Tension;
        if (tension > PeakTension)
        {
            PeakTension = tension;
            _peakTime = time;
            _peakHinging = Hinging;
            state.CopyTo(_peakState);
        }
    }
}
