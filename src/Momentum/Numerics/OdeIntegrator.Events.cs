namespace Momentum.Numerics;

public sealed partial class OdeIntegrator<TSystem, TEvents, TMethod>
{
    private const double RelativeRounding = 2.2204460492503131e-16;

    // At a start that is meant to lie on a zero, rounding leaves the function this far off it at most.
    private const double ZeroAtStart = 1e-12;

    // Two events closer than this many roundings of the time are one moment.
    private const double SimultaneousRoundings = 16.0;

    private int _eventCount;
    private EventRule[] _rules = [];
    private double[] _valuesTrial = [];

    // Side of zero that each function is on: -1, +1, or 0 as long as it has not left the zero it started on.
    private int[] _sides = [];
    private int[] _sidesAtLook = [];
    private Crossing[] _crossings = [];
    private LocatedEvent[] _located = [];
    private int _crossingCount;
    private int _locatedCount;
    private bool _firstLook;

    /// <summary>The events of the last step in the order of time; a view that the next step overwrites.</summary>
    public ReadOnlySpan<LocatedEvent> Events
    {
        get { return _located.AsSpan(0, _locatedCount); }
    }

    private void PrepareEvents()
    {
        _eventCount = _events.Count;
        if (_eventCount < 1)
        {
            return;
        }

        _rules = new EventRule[_eventCount];
        for (int i = 0; i < _eventCount; i++)
        {
            _rules[i] = _events.Rule(i);
        }

        PrepareLooks();
        _valuesTrial = new double[_eventCount];
        _sides = new int[_eventCount];
        _sidesAtLook = new int[_eventCount];
        _crossings = new Crossing[_eventCount * (_looks.Length - 1)];
        _located = new LocatedEvent[_crossings.Length];
    }

    private void StartEvents()
    {
        ClearEvents();
        if (_eventCount < 1)
        {
            return;
        }

        for (int i = 0; i < _eventCount; i++)
        {
            _rules[i] = _events.Rule(i);
        }

        Array.Clear(_sides);
        _firstLook = true;
        EvaluateEvents(_time, _stateRow, _looks[0].Values);
    }

    private void ClearEvents()
    {
        _crossingCount = 0;
        _locatedCount = 0;
    }

    /// <summary>Looks for events in the step just made; cuts the step at the first terminal one. True if there is one.</summary>
    private bool FindEvents()
    {
        LookAround();
        for (int look = 1; look <= _lookCount; look++)
        {
            _sides.CopyTo(_sidesAtLook, 0);
            int firstOfLook = _crossingCount;
            double terminal = double.PositiveInfinity;
            double[] before = _looks[look - 1].Values;
            double[] after = _looks[look].Values;
            for (int i = 0; i < _eventCount; i++)
            {
                int side = SideOf(after[i]);
                if (_sides[i] == 0)
                {
                    _sides[i] = SideAtStart(i, before[i], after[i]);
                    _sidesAtLook[i] = _sides[i];
                }

                if (_sides[i] == side || _sides[i] == 0)
                {
                    continue;
                }

                int sideBefore = _sides[i];
                _sides[i] = side;
                if (!Counts(i, side))
                {
                    continue;
                }

                double where = Locate(i, sideBefore, _looks[look - 1], _looks[look]);
                _crossings[_crossingCount++] = new Crossing(i, where, side);
                if (_rules[i].IsTerminal)
                {
                    terminal = Math.Min(terminal, where);
                }
            }

            _firstLook = false;
            SortCrossings(firstOfLook);
            if (terminal <= 1.0)
            {
                CutStep(terminal, firstOfLook);
                return true;
            }
        }

        // The end of this step is the start of the next.
        (_looks[0], _looks[_lookCount]) = (_looks[_lookCount], _looks[0]);

        double step = _time - _previousTime;
        for (int i = 0; i < _crossingCount; i++)
        {
            Crossing crossing = _crossings[i];
            _located[_locatedCount++] = new LocatedEvent(crossing.Index, crossing.Fraction == 1.0 ? _time : _previousTime + (crossing.Fraction * step));
        }

        return false;
    }

    /// <summary>Whether a change to a side is an event.</summary>
    private bool Counts(int index, int sideAfter) => _rules[index].Direction switch
    {
        EventDirection.Rising => sideAfter > 0,
        EventDirection.Falling => sideAfter < 0,
        _ => true,
    };

    /// <summary>The side that a function is on before the first look at it; 0 if it has not left the zero it started on.</summary>
    private int SideAtStart(int index, double before, double after)
    {
        EventRule rule = _rules[index];
        if (_firstLook && rule.StartsBefore && rule.Direction != EventDirection.Either)
        {
            return rule.Direction == EventDirection.Rising ? -1 : 1;
        }

        bool startsAtZero = before == 0.0 || (_firstLook && Math.Abs(before) <= ZeroAtStart * Math.Abs(after));
        if (!startsAtZero)
        {
            return SideOf(before);
        }

        return after == 0.0 ? 0 : SideOf(after);
    }

    /// <summary>Ends the step at its first terminal event, and keeps those events that come before it or with it.</summary>
    private void CutStep(double fraction, int firstOfLook)
    {
        double wholeStep = _time - _previousTime;
        double sameMoment = SimultaneousRoundings * RelativeRounding * Math.Max(1.0, Math.Abs(_time / wholeStep));
        int kept = 0;
        int terminalIndex = -1;
        while (kept < _crossingCount && _crossings[kept].Fraction <= fraction + sameMoment)
        {
            if (terminalIndex < 0 && _rules[_crossings[kept].Index].IsTerminal)
            {
                terminalIndex = _crossings[kept].Index;
            }

            kept++;
        }

        RepeatStepTo(terminalIndex, fraction, wholeStep);
        double[] values = _looks[0].Values;
        EvaluateEvents(_time, _stateRow, values);

        // Sides at the event: as before the last look, but across zero for what happened up to now.
        for (int i = 0; i < _eventCount; i++)
        {
            int side = _sidesAtLook[i];
            bool countedLater = false;
            for (int j = kept; j < _crossingCount; j++)
            {
                countedLater |= _crossings[j].Index == i;
            }

            _sides[i] = countedLater || side == 0 ? side : SideOf(values[i]);
        }

        for (int j = firstOfLook; j < kept; j++)
        {
            _sides[_crossings[j].Index] = _crossings[j].SideAfter;
        }

        for (int j = 0; j < kept; j++)
        {
            Crossing crossing = _crossings[j];
            double time = crossing.Fraction >= fraction - sameMoment ? _time : _previousTime + (crossing.Fraction * wholeStep);
            _located[_locatedCount++] = new LocatedEvent(crossing.Index, time);
        }
    }

    /// <summary>
    /// Repeats the step so that it ends at the event, and corrects its length by Newton's rule, with the slope of the
    /// dense output, until the event function of the repeated step vanishes as far as the time can resolve it.
    /// </summary>
    private void RepeatStepTo(int index, double fraction, double wholeStep)
    {
        const int MaximumCorrections = 4;
        if (fraction == 1.0)
        {
            return;
        }

        double slope = SlopeWithin(index, fraction, wholeStep);
        double length = fraction * wholeStep;
        double lastCorrection = double.PositiveInfinity;
        for (int i = 0; ; i++)
        {
            double newTime = _previousTime + length;
            double step = newTime - _previousTime;
            if (step == 0.0)
            {
                Row(_previousRow).CopyTo(Row(_stateRow));
                Row(0).CopyTo(Row(EndDerivativeRow));
            }
            else
            {
                ComputeStages(_previousTime, step, _previousRow, _stateRow);
                Evaluate(newTime, _stateRow, EndDerivativeRow);
            }

            _time = newTime;
            if (i == MaximumCorrections || step == 0.0)
            {
                break;
            }

            EvaluateEvents(newTime, _stateRow, _valuesTrial);
            double correction = -_valuesTrial[index] / slope;
            double resolution = RelativeRounding * Math.Max(Math.Abs(newTime), Math.Abs(step));
            double corrected = step + correction;
            bool useful = Math.Abs(correction) > resolution && Math.Abs(correction) < 0.5 * Math.Abs(lastCorrection);
            bool inside = corrected / wholeStep is > 0.0 and <= 1.0;
            if (!useful || !inside)
            {
                break;
            }

            lastCorrection = correction;
            length = corrected;
        }

        _denseReady = false;
        if (!IsFinite(_stateRow) || !IsFinite(EndDerivativeRow))
        {
            throw new IntegrationRefusedException(IntegrationRefusal.NotFinite, _previousTime, "the system gives numbers that are not finite at an event. Check the system near the event.");
        }
    }

    /// <summary>Derivative of an event function by time along the dense output, by a central difference.</summary>
    private double SlopeWithin(int index, double fraction, double wholeStep)
    {
        const double Spacing = 1e-4;
        double from = Math.Max(fraction - Spacing, 0.0);
        double to = Math.Min(fraction + Spacing, 1.0);
        EvaluateEventsWithin(from, _valuesTrial);
        double valueFrom = _valuesTrial[index];
        EvaluateEventsWithin(to, _valuesTrial);
        return (_valuesTrial[index] - valueFrom) / ((to - from) * wholeStep);
    }

    /// <summary>
    /// Finds a zero of an event function between two fractions of the step to rounding: T. R. Chandrupatla, Advances in
    /// Engineering Software 28 (1997), bisection with inverse quadratic interpolation where that is safe (from memory,
    /// not read). MathNet.Numerics' root finders take delegates, which would allocate in every step.
    /// </summary>
    private double Locate(int index, int sideBefore, in EventLook before, in EventLook after)
    {
        const int MaximumIterations = 200;
        const int MaximumHalvings = 40;
        double from = before.Fraction;
        double to = after.Fraction;
        double valueFrom = before.Values[index];
        double valueTo = after.Values[index];
        if (valueTo == 0.0)
        {
            return to;
        }

        // Right after an event rounding may leave the function on the side it came from: look for a place where it is
        // on the side that it went to. Without one the crossing is at the very start.
        double start = from;
        for (int i = 0; SideOf(valueFrom) != sideBefore; i++)
        {
            if (i == MaximumHalvings)
            {
                return start;
            }

            from = start + ((to - start) * Math.ScaleB(0.5, -i));
            EvaluateEventsWithin(from, _valuesTrial);
            valueFrom = _valuesTrial[index];
        }

        double resolution = RelativeRounding * Math.Abs(_time / (_time - _previousTime));
        double a = to;
        double fa = valueTo;
        double b = from;
        double fb = valueFrom;
        double c = a;
        double fc = fa;
        double t = 0.5;
        for (int i = 0; i < MaximumIterations; i++)
        {
            double x = a + (t * (b - a));
            EvaluateEventsWithin(x, _valuesTrial);
            double fx = _valuesTrial[index];
            if (SideOf(fx) == SideOf(fa))
            {
                c = a;
                fc = fa;
            }
            else
            {
                c = b;
                fc = fb;
                b = a;
                fb = fa;
            }

            a = x;
            fa = fx;
            double best = Math.Abs(fa) < Math.Abs(fb) ? a : b;
            double tolerance = (2.0 * RelativeRounding * Math.Abs(best)) + (0.5 * resolution);
            double smallest = tolerance / Math.Abs(b - a);
            if (smallest > 0.5 || fa == 0.0)
            {
                return fa == 0.0 ? a : best;
            }

            double xi = (a - b) / (c - b);
            double phi = (fa - fb) / (fc - fb);
            bool interpolate = phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi;
            t = interpolate
                ? (fa / (fb - fa) * (fc / (fb - fc))) + ((c - a) / (b - a) * (fa / (fc - fa)) * (fb / (fc - fb)))
                : 0.5;
            t = t is > 0.0 and < 1.0 ? t : 0.5;
            t = Math.Clamp(t, smallest, 1.0 - smallest);
        }

        return Math.Abs(fa) < Math.Abs(fb) ? a : b;
    }

    private void SortCrossings(int first)
    {
        // Insertion: a handful at most, stable so that equal moments stay in the order of the functions.
        for (int i = first + 1; i < _crossingCount; i++)
        {
            Crossing crossing = _crossings[i];
            int j = i - 1;
            while (j >= first && _crossings[j].Fraction > crossing.Fraction)
            {
                _crossings[j + 1] = _crossings[j];
                j--;
            }

            _crossings[j + 1] = crossing;
        }
    }

    private void EvaluateEventsWithin(double fraction, double[] values)
    {
        PrepareDenseOutput();
        EvaluateDenseOutput(fraction);
        EvaluateEvents(_previousTime + (fraction * (_time - _previousTime)), StageStateRow, values);
    }

    private void EvaluateEvents(double time, int stateRow, double[] values)
    {
        _events.Evaluate(time, Row(stateRow), values);
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
            {
                throw new IntegrationRefusedException(IntegrationRefusal.NotFinite, time, FormattableString.Invariant($"event function {i} is not a finite number."));
            }
        }
    }

    private static int SideOf(double value)
    {
        return value >= 0.0 ? 1 : -1;
    }

    /// <summary>The values of all functions at a fraction of the step.</summary>
    private readonly record struct EventLook(double Fraction, double[] Values);

    private readonly record struct Crossing(int Index, double Fraction, int SideAfter);
}
