namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// Taut on a smooth drum, where the wound part lies on a geodesic: the unwound angle φ and the slope β of the cord; the velocity's
/// components along e and n.
/// </summary>
/// <remarks>
/// With the cylinder unrolled the cord is one straight line of length L at slope β: the tangent length is
/// l = d0 + R φ − L (1 − cos β), the height L sin β, and the velocity l φ' e + L β' n. The length's gradient is the cord's direction.
/// </remarks>
internal abstract class SmoothDrumChart : IChart
{
    public static void Locate(ref Link link, CordConstants cord, HubConstants hub, ReadOnlySpan<double> c)
    {
        Drum.Face(ref link, hub, c[0]);
        ref LinkMotion motion = ref link.Motion;
        Drum.Incline(ref motion, hub, c[1]);
        double sin = motion.Sin;
        double cos = motion.Cos;

        // 1 − cos β without its cancellation.
        double lift = sin * sin / (1 + cos);
        double radius = cord.Radius;
        double outward = c[3];
        double across = c[4];
        double whole = link.Phase.Natural;
        double arm = link.Phase.Winding.Length + (radius * c[0]) - (whole * lift);
        motion.Free = arm;
        motion.Position = (cord.Height * hub.Axis) + (radius * motion.Radial) + (arm * motion.Trailing) + (whole * sin * hub.Axis);
        motion.Unwinding = arm > 0 ? outward / arm : 0;
        motion.Swinging = across / whole;
        motion.Gradient = motion.Along;
        motion.Bias = (outward * motion.Unwinding * cos) + (across * motion.Swinging);
        motion.Velocity = (outward * motion.Radial) + (across * motion.Across);
        motion.Pull = Drum.Rub(motion, cord, arm, outward);
    }

    public static void Rates(
        in Link link, CordConstants cord, HubConstants hub, Vec velocity, Vec acceleration, Span<double> rates) =>
        GrooveChart.Rates(link, cord, hub, velocity, acceleration, rates);

    public static void SetVelocity(in Link link, HubConstants hub, Vec velocity, Span<double> c) =>
        GrooveChart.SetVelocity(link, hub, velocity, c);
}
