namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// Elastic or slack on a drum, grooved or smooth: the angle of the tangent point, the tangent length and the height above the drum's
/// plane; the velocity's components along e, t and a.
/// </summary>
/// <remarks>The node is at W = (h + z) a + R e + l t, wherever its cord's length would have it.</remarks>
internal abstract class FreeDrumChart : IChart
{
    public static void Locate(ref Link link, CordConstants cord, HubConstants hub, ReadOnlySpan<double> c)
    {
        Drum.Face(ref link, hub, c[0]);
        ref LinkMotion motion = ref link.Motion;
        double radius = cord.Radius;
        double tangent = c[1];
        double height = c[2];
        motion.Free = tangent;
        motion.Position = ((cord.Height + height) * hub.Axis) + (radius * motion.Radial) + (tangent * motion.Trailing);
        motion.Unwinding = tangent > 0 ? c[3] / tangent : 0;
        motion.Velocity = (c[3] * motion.Radial) + (c[4] * motion.Trailing) + (c[5] * hub.Axis);
        if (cord.Smooth)
        {
            double unrolled = tangent + (radius * (link.Phase.Winding.End - c[0]));
            double path = Math.Sqrt((unrolled * unrolled) + (height * height));
            motion.Cos = unrolled / path;
            motion.Sin = height / path;
            motion.Along = (motion.Cos * motion.Trailing) + (motion.Sin * hub.Axis);
            motion.Gradient = motion.Along;
            motion.Stretch = path - link.Phase.Natural;
        }
        else
        {
            double path = Math.Sqrt((tangent * tangent) + (height * height));
            motion.Cos = path > 0 ? tangent / path : 1;
            motion.Sin = path > 0 ? height / path : 0;
            motion.Along = (motion.Cos * motion.Trailing) + (motion.Sin * hub.Axis);
            double guide = tangent > 0 ? radius * motion.Sin * motion.Sin / ((1 + motion.Cos) * tangent) : 0;
            motion.Gradient = motion.Along - (guide * motion.Radial);
            motion.Stretch = path - link.Phase.Winding.Length - (radius * c[0]);
        }

        motion.Pull = Drum.Rub(motion, cord, tangent, c[3]);
        Stretching.Pull(ref link, motion.Gradient.Dot(motion.Velocity));
    }

    public static void Rates(
        in Link link, CordConstants cord, HubConstants hub, Vec velocity, Vec acceleration, Span<double> rates)
    {
        ref readonly LinkMotion motion = ref link.Motion;
        double turning = motion.Unwinding;
        double outward = velocity.Dot(motion.Radial);
        double trailing = velocity.Dot(motion.Trailing);
        rates[0] = turning;
        rates[1] = trailing + (cord.Radius * turning);
        rates[2] = velocity.Dot(hub.Axis);
        rates[3] = acceleration.Dot(motion.Radial) - (trailing * turning);
        rates[4] = acceleration.Dot(motion.Trailing) + (outward * turning);
        rates[5] = acceleration.Dot(hub.Axis);
    }

    public static void SetVelocity(in Link link, HubConstants hub, Vec velocity, Span<double> c)
    {
        c[3] = velocity.Dot(link.Motion.Radial);
        c[4] = velocity.Dot(link.Motion.Trailing);
        c[5] = velocity.Dot(hub.Axis);
    }
}
