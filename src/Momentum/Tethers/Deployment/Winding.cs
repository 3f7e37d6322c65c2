namespace Momentum.Tethers.Deployment;

/// <summary>The direction in which a cord is wound, seen against the initial spin.</summary>
public enum Winding
{
    /// <summary>The usual way: the tangent point runs with the spin as the cord unwinds, the weight trails, the spin falls.</summary>
    OpposesSpin,

    /// <summary>The wrong way round: the tangent point runs against the spin.</summary>
    FollowsSpin,
}
