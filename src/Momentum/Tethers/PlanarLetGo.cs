namespace Momentum.Tethers;

/// <summary>Where the closed form of the planar motion carries out a let-go rule.</summary>
internal static class PlanarLetGo
{
    /// <summary>How the search ended.</summary>
    internal enum Outcome
    {
        Found,

        /// <summary>The spin rate is never met.</summary>
        SpinNotReached,

        /// <summary>The cords come to the other tangent first, and would wrap the hub the other way.</summary>
        WrapsBack,
    }

    /// <summary>Finds the coordinate of let-go.</summary>
    /// <param name="cords">The motion.</param>
    /// <param name="rule">The rule, SI; not "never", which this motion does not carry.</param>
    /// <param name="spin">Initial spin, rad/s.</param>
    /// <param name="miss">By how much the cord angle of the condition is missed; late is positive.</param>
    /// <param name="coordinate">Where the cords let go; never before the start.</param>
    internal static Outcome Find(in PlanarCords cords, in LetGoRule rule, double spin, double miss, out double coordinate)
    {
        coordinate = rule.Value;
        switch (rule.Kind)
        {
            case LetGoKind.SpinRate:
                coordinate = cords.WhereSpinIs(rule.Value / spin);
                if (double.IsNaN(coordinate))
                {
                    return Outcome.SpinNotReached;
                }

                break;
            case LetGoKind.Time when !Later(cords, cords.Start, rule.Value * spin, out coordinate):
                return Outcome.WrapsBack;
        }

        coordinate = Math.Max(coordinate + miss, cords.Start);
        return coordinate <= Math.PI && (rule.IsImmediate || Later(cords, coordinate, rule.Delay * spin, out coordinate))
            ? Outcome.Found
            : Outcome.WrapsBack;
    }

    /// <summary>The coordinate some time (1/w0) after another; false if the cords come to the other tangent first.</summary>
    private static bool Later(in PlanarCords cords, double from, double time, out double to)
    {
        // While unwinding the coordinate runs at the initial spin.
        to = from + time;
        if (to <= 0)
        {
            return true;
        }

        var clock = new CordClock(cords, Math.PI);
        double then = clock.Time(from) + time;
        to = clock.Coordinate(then);
        return then <= clock.EndTime;
    }
}
