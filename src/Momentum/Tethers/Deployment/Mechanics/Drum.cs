namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What the charts of a cord on a drum have in common, grooved or smooth.</summary>
internal static class Drum
{
    /// <summary>The chart in which a link of this cord is taut on its drum at fixed length.</summary>
    public static Chart TautChart(CordConstants cord) => cord.Smooth ? Chart.SmoothDrum : Chart.Groove;

    /// <summary>Radial and trailing directions at the tangent point.</summary>
    public static void Face(ref Link link, HubConstants hub, double unwound)
    {
        ref readonly DrumWinding winding = ref link.Phase.Winding;
        (double sin, double cos) = Math.SinCos(winding.Angle + (winding.Sense * unwound));
        link.Motion.Radial = (cos * hub.First) + (sin * hub.Second);
        link.Motion.Trailing = winding.Sense * ((sin * hub.First) - (cos * hub.Second));
    }

    /// <summary>Directions of a taut cord that leaves the drum at an angle out of its plane.</summary>
    public static void Incline(ref LinkMotion motion, HubConstants hub, double angle)
    {
        (double sin, double cos) = Math.SinCos(angle);
        motion.Cos = cos;
        motion.Sin = sin;
        motion.Along = (cos * motion.Trailing) + (sin * hub.Axis);
        motion.Across = (cos * hub.Axis) - (sin * motion.Trailing);
    }

    /// <summary>The gradient, inclined by drum friction against the node's way off the drum.</summary>
    /// <param name="motion">Its gradient is known.</param>
    /// <param name="cord">The cord.</param>
    /// <param name="arm">Tangent length.</param>
    /// <param name="outward">Velocity of the node off the drum.</param>
    public static Vec Rub(in LinkMotion motion, CordConstants cord, double arm, double outward)
    {
        if (cord.Friction == 0)
        {
            return motion.Gradient;
        }

        double radius = cord.Radius;
        double share = cord.Friction * radius * arm / ((radius * radius) + (arm * arm));
        double slow = cord.FrictionSpeed;
        return motion.Gradient + (share * outward / Math.Sqrt((outward * outward) + (slow * slow)) * motion.Radial);
    }
}
