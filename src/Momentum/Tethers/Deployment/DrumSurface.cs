namespace Momentum.Tethers.Deployment;

/// <summary>
/// How the wound part of a cord lies on the drum, which decides how the cord leaves it when it swings out of the drum's
/// plane. In the plane both are the same.
/// </summary>
public enum DrumSurface
{
    /// <summary>
    /// In a groove: the wound part stays on a circle, the free part turns about the tangent point on it. At the end of
    /// winding the weight's small velocity along its cord is stopped: an impulse, whose loss the ledger names.
    /// </summary>
    Grooved,

    /// <summary>
    /// On a smooth cylinder without friction across it: the wound part slides to the shortest way and the whole cord has
    /// one slope. No impulse.
    /// </summary>
    Smooth,
}
