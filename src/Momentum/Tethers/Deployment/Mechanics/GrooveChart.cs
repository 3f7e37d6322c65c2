namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// Taut in the groove of a drum: the unwound angle φ and the angle β out of the drum's plane; the velocity's components along e
/// and n. The groove's lips guide the cord without work.
/// </summary>
/// <remarks>
/// The node is at W = h a + R e + d u with u = t cos β + a sin β and d = d0 + R φ: its relative velocity is
/// d φ' cos β e + R φ' (1 − cos β) u + (d β' + R φ' sin β) n, n = a cos β − t sin β. No equation is divided by a vanishing length
/// but that of φ. The length's gradient is u − R (1 − cos β)/(d cos β) e: what the lips carry besides the tension appears as a
/// force of second order in β.
/// </remarks>
internal abstract class GrooveChart : IChart
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
        double free = link.Phase.Winding.Length + (radius * c[0]);
        double arm = free * cos;
        motion.Free = free;
        motion.Position = (cord.Height * hub.Axis) + (radius * motion.Radial) + (free * motion.Along);
        motion.Unwinding = arm > 0 ? outward / arm : 0;
        motion.Swinging = free > 0 ? (across - (radius * motion.Unwinding * sin)) / free : 0;
        double inward = radius * motion.Unwinding * lift;
        double guide = arm > 0 ? radius * lift / arm : 0;
        motion.Gradient = motion.Along - (guide * motion.Radial);
        motion.Bias = (outward * motion.Unwinding * cos) + (free * motion.Swinging * motion.Swinging) +
            (guide * motion.Unwinding * ((radius * motion.Unwinding * (cos - lift)) - (2 * free * motion.Swinging * sin)));
        motion.Velocity = (outward * motion.Radial) + (inward * motion.Along) + (across * motion.Across);
        motion.Pull = Drum.Rub(motion, cord, arm, outward);
    }

    public static void Rates(
        in Link link, CordConstants cord, HubConstants hub, Vec velocity, Vec acceleration, Span<double> rates)
    {
        ref readonly LinkMotion motion = ref link.Motion;
        double turning = motion.Unwinding;
        double outward = velocity.Dot(motion.Radial);
        double along = velocity.Dot(motion.Along);
        double across = velocity.Dot(motion.Across);
        rates[0] = turning;
        rates[1] = motion.Swinging;
        rates[2] = 0;
        rates[3] = acceleration.Dot(motion.Radial) + (turning * ((across * motion.Sin) - (along * motion.Cos)));
        rates[4] = acceleration.Dot(motion.Across) - (outward * turning * motion.Sin) - (along * motion.Swinging);
        rates[5] = 0;
    }

    public static void SetVelocity(in Link link, HubConstants hub, Vec velocity, Span<double> c)
    {
        c[3] = velocity.Dot(link.Motion.Radial);
        c[4] = velocity.Dot(link.Motion.Across);
    }
}
