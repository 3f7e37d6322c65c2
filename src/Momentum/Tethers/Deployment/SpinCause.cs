namespace Momentum.Tethers.Deployment;

/// <summary>Something that keeps a deployment from ending with the spin of its ideal: equal cords, in one plane, at once.</summary>
public enum SpinCause
{
    /// <summary>Rates across the spin axis at the start.</summary>
    Wobble,

    /// <summary>Products of inertia with the spin axis, and a centre of mass beside it.</summary>
    Imbalance,

    /// <summary>Cord planes that do not pass through the hub's centre of mass.</summary>
    CordPlaneOffset,

    /// <summary>Stretch of the cords, and its damping.</summary>
    CordStretch,

    /// <summary>Mass of the cords.</summary>
    CordMass,

    /// <summary>Friction at the drums.</summary>
    DrumFriction,

    /// <summary>Cords, weights, drums, spacing or let-go rules that differ from one cord to another.</summary>
    UnequalCords,

    /// <summary>Weights that are released late.</summary>
    LateRelease,

    /// <summary>Latency between the cord angle of a let-go and the let-go.</summary>
    LateLetGo,

    /// <summary>Weights that are never released, and cords that jam.</summary>
    StuckCords,

    /// <summary>The rig's bearing and gravity.</summary>
    Rig,
}
