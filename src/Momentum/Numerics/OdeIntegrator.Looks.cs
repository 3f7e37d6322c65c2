namespace Momentum.Numerics;

// Where in a step the event functions are looked at: at even fractions, and where one of them may have come over zero and
// back between two of these.
public sealed partial class OdeIntegrator<TSystem, TEvents, TMethod>
{
    // Looks that are spent in one step on functions that come near zero and turn.
    private const int MaximumTurns = 8;

    // A function turns near zero if the parabola through three looks has its turn within this fraction of the largest of the
    // three values: nearer than the parabola can be trusted.
    private const double Near = 0.2;

    // How far the turn of the parabola may be off, in fractions of the three looks' span.
    private const double Beyond = 0.15;

    // Two looks nearer than this, in fractions of the three looks' span, are one.
    private const double Same = 0.01;

    // Three looks within this fraction of the step need no closer ones.
    private const double Close = 0.05;

    private EventLook[] _looks = [];
    private int _lookCount;

    private void PrepareLooks()
    {
        _looks = new EventLook[1 + _limits.EventSamples + MaximumTurns];
        for (int i = 0; i < _looks.Length; i++)
        {
            _looks[i] = new EventLook(0.0, new double[_eventCount]);
        }
    }

    /// <summary>Looks at all functions over the step just made; look 0, its start, is there already.</summary>
    private void LookAround()
    {
        _looks[0] = _looks[0] with { Fraction = 0.0 };
        _lookCount = _limits.EventSamples;
        for (int look = 1; look < _lookCount; look++)
        {
            LookAt(look, (double)look / _lookCount);
        }

        _looks[_lookCount] = _looks[_lookCount] with { Fraction = 1.0 };
        EvaluateEvents(_time, _stateRow, _looks[_lookCount].Values);
        for (int i = 0; i < _eventCount; i++)
        {
            for (int look = 1; look < _lookCount && _lookCount + 1 < _looks.Length; look++)
            {
                double turn = TurnNearZero(i, _looks[look - 1], _looks[look], _looks[look + 1]);
                if (turn >= 0.0)
                {
                    int place = turn < _looks[look].Fraction ? look : look + 1;
                    Insert(place, turn);
                    look = Math.Max(0, place - 2);
                }
            }
        }
    }

    /// <summary>
    /// The fraction at which a function that is on one side at three looks comes near to zero or past it between them, by
    /// the parabola through the three, or where a look draws the three closer; negative if it does not.
    /// </summary>
    private static double TurnNearZero(int index, in EventLook first, in EventLook middle, in EventLook last)
    {
        double a = first.Values[index];
        double b = middle.Values[index];
        double c = last.Values[index];
        int side = SideOf(b);
        if (SideOf(a) != side || SideOf(c) != side)
        {
            return -1.0;
        }

        double span = last.Fraction - first.Fraction;
        double rise = (b - a) / (middle.Fraction - first.Fraction);
        double curvature = (((c - b) / (last.Fraction - middle.Fraction)) - rise) / span;
        if (!(side * curvature > 0.0))
        {
            return -1.0;
        }

        double turn = 0.5 * (first.Fraction + middle.Fraction - (rise / curvature));
        double margin = Beyond * span;
        if (!(turn > first.Fraction - margin && turn < last.Fraction + margin))
        {
            return -1.0;
        }

        double value = a + ((turn - first.Fraction) * (rise + (curvature * (turn - middle.Fraction))));
        double largest = Math.Max(Math.Abs(a), Math.Max(Math.Abs(b), Math.Abs(c)));

        // Three looks close together tell the turn's value better than it need be known.
        if (side * value >= Near * largest || span < Close)
        {
            return -1.0;
        }

        // Where a look is there already, or the turn just beyond the three may yet be within, the three are drawn together.
        double same = Same * span;
        if (turn < first.Fraction + same)
        {
            return 0.5 * (first.Fraction + middle.Fraction);
        }

        if (turn > last.Fraction - same)
        {
            return 0.5 * (middle.Fraction + last.Fraction);
        }

        if (Math.Abs(turn - middle.Fraction) < same)
        {
            double wider = last.Fraction - middle.Fraction > middle.Fraction - first.Fraction ? last.Fraction : first.Fraction;
            return middle.Fraction + (0.2 * (wider - middle.Fraction));
        }

        return turn;
    }

    private void Insert(int place, double fraction)
    {
        EventLook free = _looks[_lookCount + 1];
        Array.Copy(_looks, place, _looks, place + 1, _lookCount + 1 - place);
        _looks[place] = free;
        _lookCount++;
        LookAt(place, fraction);
    }

    private void LookAt(int place, double fraction)
    {
        _looks[place] = _looks[place] with { Fraction = fraction };
        EvaluateEventsWithin(fraction, _looks[place].Values);
    }
}
