namespace Momentum.Tethers.Deployment;

/// <summary>Something that keeps a deployment from ending with the spin of its ideal: equal cords, in one plane, at once.</summary>
public enum SpinCause
{
    /// <summary>Rates across the spin axis at the start.</summary>
    Wobble,

    /// <summary>Products of inertia with the spin axis, and a centre of mass beside it.</summary>
    Unbalance,

    /// <summary>Drums that are not in the plane of the hub's centre of mass.</summary>
    DrumHeight,

    /// <summary>Stretch of the cords, and its damping.</summary>
    CordStretch,

    /// <summary>Mass of the cords.</summary>
    CordMass,

    /// <summary>Friction at the drums.</summary>
    DrumFriction,

    /// <summary>Cords, weights, drums, spacing or release rules that differ from one cord to another.</summary>
    UnequalCords,

    /// <summary>Weights that are set free late.</summary>
    LateWeights,

    /// <summary>Latency between the cord angle of a release and the release.</summary>
    LateLetGo,

    /// <summary>Weights that are never set free, and cords that jam.</summary>
    StuckCords,

    /// <summary>The rig's bearing and gravity.</summary>
    Rig,
}
