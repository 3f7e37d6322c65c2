using MathNet.Numerics.Integration;

namespace Momentum.Tethers;

/// <summary>
/// When a planar de-spin passes a coordinate, how far the hub has turned by then, and the inverse, by Gauss–Kronrod
/// quadrature of the closed-form rates.
/// </summary>
/// <remarks>Times are multiples of 1/w0. Panels are halved until each is integrated to rounding.</remarks>
internal sealed class CordClock
{
    // Difference of the 7-point Gauss and the 15-point Kronrod value, relative, at which the latter is exact to rounding.
    private const double PanelTolerance = 1e-10;
    private const int Deepest = 60;

    // Turn (rad) that no reader of a hub angle misses: where the spin itself is but rounding, halving would never end.
    private const double NoTurn = 1e-15;

    private readonly PlanarCords _cords;
    private readonly bool _massless;
    private readonly Func<double, double> _slowness;
    private readonly Func<double, double> _turning;
    private readonly List<double> _from = [];
    private readonly List<double> _time = [];
    private readonly List<double> _turn = [];

    /// <summary>Prepares the clock from the start to a coordinate.</summary>
    internal CordClock(PlanarCords cords, double end)
    {
        _cords = cords;
        _massless = cords.Density == 0;
        _slowness = a => 1 / _cords.CordRate(a);
        _turning = a => _cords.Spin(a) / _cords.CordRate(a);
        double start = cords.Start;
        _from.Add(start);
        _time.Add(0);
        _turn.Add(0);
        if (_massless)
        {
            Append(Math.Min(end, 0), Math.Min(end, 0) - start, MasslessTurn(Math.Min(end, 0)));
        }
        else
        {
            AddPanels(start, Math.Min(end, 0), Deepest);
        }

        if (end > 0)
        {
            AddPanels(0, end, Deepest);
        }
    }

    /// <summary>Time at the coordinate the clock was prepared to.</summary>
    internal double EndTime => _time[^1];

    /// <summary>Hub turn (rad) at the coordinate the clock was prepared to.</summary>
    internal double EndTurn => _turn[^1];

    /// <summary>Time at a coordinate.</summary>
    internal double Time(double a)
    {
        if (a >= _from[^1])
        {
            return EndTime;
        }

        int panel = PanelOf(_from, a);
        return a <= 0 ? a - _cords.Start : _time[panel] + Integral(_slowness, _from[panel], a);
    }

    /// <summary>Hub turn (rad) at a coordinate.</summary>
    internal double Turn(double a)
    {
        if (a <= 0 && _massless)
        {
            return MasslessTurn(a);
        }

        int panel = PanelOf(_from, a);
        return _turn[panel] + Integral(_turning, _from[panel], a);
    }

    /// <summary>Coordinate at a time, by Newton's method within the panel.</summary>
    internal double Coordinate(double time)
    {
        double unwinding = -_cords.Start;
        if (time <= unwinding)
        {
            return Math.Min(time + _cords.Start, _from[^1]);
        }

        if (time >= EndTime)
        {
            return _from[^1];
        }

        int panel = PanelOf(_time, time);
        double low = _from[panel];
        double high = _from[panel + 1];
        double a = low + ((high - low) * (time - _time[panel]) / (_time[panel + 1] - _time[panel]));
        for (int i = 0; i < 50; i++)
        {
            double late = _time[panel] + Integral(_slowness, _from[panel], a) - time;
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

    // Closed form of the integral of (c - f²)/(c + f²) over the unwound angle f, c = A/(m R²).
    private double MasslessTurn(double a)
    {
        double root = Math.Sqrt(_cords.Carried / _cords.Weights) / _cords.Radius;
        double unwound = a - _cords.Start;
        return (2 * root * Math.Atan(unwound / root)) - unwound;
    }

    private void AddPanels(double from, double to, int depth)
    {
        if (!(to > from))
        {
            return;
        }

        double time = GaussKronrodRule.Integrate(_slowness, from, to, out double timeError, out _, 1, 0, 15);
        double turn = GaussKronrodRule.Integrate(_turning, from, to, out double turnError, out double turnSize, 1, 0, 15);
        if (depth > 0 && (timeError > PanelTolerance * time || turnError > Math.Max(PanelTolerance * turnSize, NoTurn)))
        {
            double middle = 0.5 * (from + to);
            AddPanels(from, middle, depth - 1);
            AddPanels(middle, to, depth - 1);
            return;
        }

        Append(to, _time[^1] + time, _turn[^1] + turn);
    }

    private void Append(double to, double time, double turn)
    {
        _from.Add(to);
        _time.Add(time);
        _turn.Add(turn);
    }

    private int PanelOf(List<double> knots, double value)
    {
        int found = knots.BinarySearch(value);
        int panel = found >= 0 ? found : ~found - 1;
        return Math.Clamp(panel, 0, _from.Count - 2);
    }

    private static double Integral(Func<double, double> rate, double from, double to) =>
        to <= from ? 0 : GaussKronrodRule.Integrate(rate, from, to, out _, out _, 1, 0, 15);
}
