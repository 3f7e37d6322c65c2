namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// Six numbers that place a node and give it a velocity, three coordinates and three velocities, and how they follow its
/// motion. About a hinge all vectors are relative to the hinge, else to the body origin and the body.
/// </summary>
internal interface IChart
{
    /// <summary>Finds place, velocity and pull of a node.</summary>
    /// <param name="link">The link; receives what is found.</param>
    /// <param name="cord">Its cord.</param>
    /// <param name="hub">The hub.</param>
    /// <param name="c">The six numbers.</param>
    static abstract void Locate(ref Link link, CordConstants cord, HubConstants hub, ReadOnlySpan<double> c);

    /// <summary>The rates of the six numbers for a motion that is already found.</summary>
    /// <param name="link">The link, located.</param>
    /// <param name="cord">Its cord.</param>
    /// <param name="hub">The hub.</param>
    /// <param name="velocity">Velocity of the node.</param>
    /// <param name="acceleration">Its acceleration.</param>
    /// <param name="rates">Receives the six rates.</param>
    static abstract void Rates(
        in Link link, CordConstants cord, HubConstants hub, Vec velocity, Vec acceleration, Span<double> rates);

    /// <summary>Gives a node another velocity, at the place where it was located.</summary>
    /// <param name="link">The link, located.</param>
    /// <param name="hub">The hub.</param>
    /// <param name="velocity">The velocity.</param>
    /// <param name="c">The six numbers; those of the velocity are replaced.</param>
    static abstract void SetVelocity(in Link link, HubConstants hub, Vec velocity, Span<double> c);
}
