namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>Elastic or slack about a hinge: the displacement from it and its rate.</summary>
internal abstract class FreeHingeChart : IChart
{
    public static void Locate(ref Link link, CordConstants cord, HubConstants hub, ReadOnlySpan<double> c)
    {
        Vec from = Vec.Read(c);
        Vec velocity = Vec.Read(c[3..]);
        double length = from.Length;
        ref LinkMotion motion = ref link.Motion;
        motion.Along = (1 / length) * from;
        motion.Gradient = motion.Along;
        motion.Pull = motion.Along;
        motion.Stretch = length - link.Phase.Natural;
        Stretching.Pull(ref link, motion.Along.Dot(velocity));
        motion.Free = length;
        motion.Position = from;
        motion.Velocity = velocity;
    }

    public static void Rates(
        in Link link, CordConstants cord, HubConstants hub, Vec velocity, Vec acceleration, Span<double> rates)
    {
        velocity.Write(rates);
        acceleration.Write(rates[3..]);
    }

    public static void SetVelocity(in Link link, HubConstants hub, Vec velocity, Span<double> c) => velocity.Write(c[3..]);
}
