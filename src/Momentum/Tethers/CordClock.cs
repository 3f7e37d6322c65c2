using MathNet.Numerics.Integration;

namespace Momentum.Tethers;

/// <summary>When a planar de-spin passes a coordinate, how far the hub has turned by then, and the inverse.</summary>
/// <remarks>
/// <para>Times are multiples of 1/w0. While unwinding both are closed forms. While hinging they are Gauss–Kronrod quadratures of
/// the closed-form rates, on panels that are halved until each is integrated to rounding.</para>
/// <para>The rates depend on the cord angle by its sine and the square of its cosine, so that the way past the radial is the one
/// before it in a mirror. Each half of the way to the radial is run through in a variable of its own (x, y), in which the
/// rates change evenly however short the cord or light the hub: a = x (2 √e + x) from the tangent, π/2 - a = d sinh y from the
/// radial, with e and d the <see cref="PlanarCords.HingeScales"/>.</para>
/// </remarks>
internal sealed class CordClock
{
    // Difference of the 7-point Gauss and the 15-point Kronrod value, relative, at which the latter is exact to rounding.
    private const double PanelTolerance = 1e-10;

    // In the variables of the two halves a handful of panels does; these are for numbers beyond a double.
    private const int Deepest = 20;
    private const int MostPanels = 200;

    // Turn (rad) that no reader of a hub angle misses: where the spin itself is but rounding, halving would never end.
    private const double NoTurn = 1e-15;

    private const double Quarter = Math.PI / 2;
    private const double Middle = Math.PI / 4;

    private readonly PlanarCords _cords;
    private readonly double _unwound;
    private readonly double _tangentRoot;
    private readonly double _radialScale;
    private readonly Func<double, double> _slownessAtTangent;
    private readonly Func<double, double> _turningAtTangent;
    private readonly Func<double, double> _slownessAtRadial;
    private readonly Func<double, double> _turningAtRadial;

    // The panels of the way from the tangent to the radial: their beginnings, and time and turn since the tangent there.
    private readonly List<double> _from = [0];
    private readonly List<double> _time = [0];
    private readonly List<double> _turn = [0];

    /// <summary>Prepares the clock from the start to a coordinate.</summary>
    /// <exception cref="ComputationRefusedException">The quadrature does not come to its end.</exception>
    internal CordClock(PlanarCords cords, double end)
    {
        _cords = cords;
        End = end;
        _unwound = Math.Min(end, 0) - cords.Start;

        // Past an eighth of a turn either scale is far enough for an even grid.
        (double tangent, double radial) = cords.HingeScales;
        _tangentRoot = Math.Sqrt(Math.Min(tangent, 1));
        _radialScale = Math.Clamp(radial, 1e-200, 1);
        _slownessAtTangent = x => Step(x) / cords.HingedRate(Math.Sin(AngleAtTangent(x)), Math.Cos(AngleAtTangent(x)));
        _turningAtTangent = x => Step(x) * Ratio(Math.Sin(AngleAtTangent(x)), Math.Cos(AngleAtTangent(x)));
        _slownessAtRadial = y => -StepAtRadial(y) / cords.HingedRate(Math.Cos(AngleToRadial(y)), Math.Sin(AngleToRadial(y)));
        _turningAtRadial = y => -StepAtRadial(y) * Ratio(Math.Cos(AngleToRadial(y)), Math.Sin(AngleToRadial(y)));
        if (end > 0)
        {
            double last = end > Quarter ? Quarter : end;
            AddPanels(0, Math.Min(last, Middle), Deepest);
            AddPanels(Middle, last, Deepest);
        }

        EndTime = Time(end);
        EndTurn = Turn(end);
    }

    /// <summary>How many panels the quadratures took.</summary>
    internal int Panels => _from.Count - 1;

    /// <summary>The coordinate the clock was prepared to.</summary>
    internal double End { get; }

    /// <summary>Time at the coordinate the clock was prepared to.</summary>
    internal double EndTime { get; }

    /// <summary>Hub turn (rad) at the coordinate the clock was prepared to.</summary>
    internal double EndTurn { get; }

    /// <summary>Time at a coordinate.</summary>
    internal double Time(double a) => a <= 0 ? Math.Min(a, End) - _cords.Start : _unwound + Hinged(a, _time, turns: false);

    /// <summary>Hub turn (rad) at a coordinate.</summary>
    internal double Turn(double a) => a <= 0
        ? _cords.UnwoundTurn(_cords.FreeLength(a))
        : _cords.UnwoundTurn(_cords.Length) + Hinged(a, _turn, turns: true);

    /// <summary>Coordinate at a time, by Newton's method within the panel.</summary>
    internal double Coordinate(double time)
    {
        if (time >= EndTime)
        {
            return End;
        }

        double hinged = time - _unwound;
        if (hinged <= 0)
        {
            return Math.Min(time + _cords.Start, End);
        }

        return End > Quarter && hinged > _time[^1] ? Math.PI - Angle((2 * _time[^1]) - hinged) : Angle(hinged);
    }

    private double Angle(double time)
    {
        int panel = PanelOf(_time, time);
        double low = _from[panel];
        double high = _from[panel + 1];
        double a = low + ((high - low) * (time - _time[panel]) / (_time[panel + 1] - _time[panel]));
        for (int i = 0; i < 50; i++)
        {
            double late = Hinged(a, _time, turns: false) - time;
            if (late > 0)
            {
                high = a;
            }
            else
            {
                low = a;
            }

            double next = a - (late * _cords.CordRate(a));
            if (!(next > low && next < high))
            {
                next = 0.5 * (low + high);
            }

            if (Math.Abs(next - a) <= 2e-16 * (1 + a))
            {
                return next;
            }

            a = next;
        }

        return a;
    }

    /// <summary>Time or turn since the tangent at a cord angle.</summary>
    private double Hinged(double a, List<double> known, bool turns)
    {
        if (a > Quarter)
        {
            return (2 * known[^1]) - Hinged(Math.PI - a, known, turns);
        }

        int panel = PanelOf(_from, a);
        return known[panel] + Integral(_from[panel], a, turns, out _, out _);
    }

    private void AddPanels(double from, double to, int depth)
    {
        if (!(to > from))
        {
            return;
        }

        double time = Integral(from, to, false, out double timeError, out _);
        double turn = Integral(from, to, true, out double turnError, out double turnSize);
        if (!(timeError <= PanelTolerance * time && turnError <= Math.Max(PanelTolerance * turnSize, NoTurn)))
        {
            if (depth == 0 || _from.Count >= MostPanels)
            {
                throw new ComputationRefusedException(
                    "The time that the cords take to hinge cannot be summed up: the inertia, masses and lengths given are too far apart for " +
                    "the arithmetic. Check their units.");
            }

            double middle = MiddleOf(from, to);
            AddPanels(from, middle, depth - 1);
            AddPanels(middle, to, depth - 1);
            return;
        }

        _from.Add(to);
        _time.Add(_time[^1] + time);
        _turn.Add(_turn[^1] + turn);
    }

    /// <summary>The middle of a panel in its own variable.</summary>
    private double MiddleOf(double from, double to) => from < Middle
        ? AngleAtTangent(0.5 * (PlaceAtTangent(from) + PlaceAtTangent(to)))
        : Quarter - AngleToRadial(0.5 * (PlaceAtRadial(from) + PlaceAtRadial(to)));

    private double Integral(double from, double to, bool turns, out double error, out double size)
    {
        error = size = 0;
        if (to <= from)
        {
            return 0;
        }

        return from < Middle
            ? GaussKronrodRule.Integrate(
                turns ? _turningAtTangent : _slownessAtTangent, PlaceAtTangent(from), PlaceAtTangent(to), out error, out size, 1, 0, 15)
            : GaussKronrodRule.Integrate(
                turns ? _turningAtRadial : _slownessAtRadial, PlaceAtRadial(from), PlaceAtRadial(to), out error, out size, 1, 0, 15);
    }

    private double Ratio(double sine, double cosine) => _cords.HingedSpin(sine, cosine) / _cords.HingedRate(sine, cosine);

    private double PlaceAtTangent(double a) => a / (_tangentRoot + Math.Sqrt((_tangentRoot * _tangentRoot) + a));

    private double AngleAtTangent(double x) => x * ((2 * _tangentRoot) + x);

    private double Step(double x) => 2 * (_tangentRoot + x);

    private double PlaceAtRadial(double a) => Math.Asinh((Quarter - a) / _radialScale);

    private double AngleToRadial(double y) => _radialScale * Math.Sinh(y);

    private double StepAtRadial(double y) => _radialScale * Math.Cosh(y);

    private int PanelOf(List<double> knots, double value)
    {
        int found = knots.BinarySearch(value);
        int panel = found >= 0 ? found : ~found - 1;
        return Math.Clamp(panel, 0, _from.Count - 2);
    }
}
