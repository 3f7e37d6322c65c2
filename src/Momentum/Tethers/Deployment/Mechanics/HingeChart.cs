namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>Taut at fixed length about a hinge: the displacement from it and its rate.</summary>
/// <remarks>
/// Only the direction of the displacement and the velocity across it count, and these move as they must whatever the length of the
/// displacement that is integrated: length and velocity along it are exact, and what the integration makes of them changes nothing.
/// </remarks>
internal abstract class HingeChart : IChart
{
    public static void Locate(ref Link link, CordConstants cord, HubConstants hub, ReadOnlySpan<double> c)
    {
        Vec from = Vec.Read(c);
        Vec velocity = Vec.Read(c[3..]);
        double length = from.Length;
        double natural = link.Phase.Natural;
        ref LinkMotion motion = ref link.Motion;
        motion.Along = (1 / length) * from;
        motion.Gradient = motion.Along;
        motion.Pull = motion.Along;
        double along = motion.Along.Dot(velocity);
        motion.Elongation = length / natural;
        motion.Elongating = along / natural;
        velocity -= along * motion.Along;
        motion.Bias = velocity.Square / natural;
        motion.Free = natural;
        motion.Position = natural * motion.Along;
        motion.Velocity = velocity;
    }

    public static void Rates(
        in Link link, CordConstants cord, HubConstants hub, Vec velocity, Vec acceleration, Span<double> rates)
    {
        (link.Motion.Elongation * velocity).Write(rates);
        (acceleration + (link.Motion.Elongating * velocity)).Write(rates[3..]);
    }

    public static void SetVelocity(in Link link, HubConstants hub, Vec velocity, Span<double> c) => velocity.Write(c[3..]);
}
