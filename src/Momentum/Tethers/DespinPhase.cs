namespace Momentum.Tethers;

/// <summary>Where a planar de-spin stands.</summary>
public enum DespinPhase
{
    /// <summary>The cords unwind: each leaves the hub along its tangent, and the tangent point runs around the hub.</summary>
    Unwinding,

    /// <summary>The cords are fully unwound and swing about their end points on the hub, from tangent towards radial and beyond.</summary>
    Hinging,

    /// <summary>The weights are let go: the hub keeps its spin and the weights fly straight.</summary>
    Released,
}
