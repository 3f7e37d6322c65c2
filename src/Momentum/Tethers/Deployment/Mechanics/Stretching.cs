namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>The tension of a link whose length is free, in either of its charts.</summary>
internal static class Stretching
{
    /// <summary>Tension of spring and damper; none while the link hangs slack.</summary>
    /// <param name="link">Its stretch is known.</param>
    /// <param name="rate">Rate of its length.</param>
    public static void Pull(ref Link link, double rate)
    {
        link.Motion.StretchRate = rate;
        link.Motion.Tension = link.Phase.Pulls ? (link.Spring * link.Motion.Stretch) + (link.Damper * rate) : 0;
    }
}
