namespace Momentum.Tethers;

/// <summary>Where a cord is in its deployment, in the plane and in space.</summary>
public enum CordPhase
{
    /// <summary>Wound up, the weight held on the hub until its release.</summary>
    Held,

    /// <summary>Coming off the hub along its tangent, or going back onto it.</summary>
    Unwinding,

    /// <summary>Fully unwound, or jammed: the cord swings about its end point on the hub, from tangent towards radial and beyond.</summary>
    Hinging,

    /// <summary>Let go of the hub: the hub keeps its spin and the weight flies straight.</summary>
    LetGo,
}
