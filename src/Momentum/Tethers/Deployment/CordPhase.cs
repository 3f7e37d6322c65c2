namespace Momentum.Tethers.Deployment;

/// <summary>Where a cord is in its deployment.</summary>
public enum CordPhase
{
    /// <summary>Wound up, the weight held on the hub.</summary>
    Held,

    /// <summary>Coming off the drum, or going back onto it.</summary>
    Unwinding,

    /// <summary>Hinged about its end on the hub, or about the point where it jammed.</summary>
    Swinging,

    /// <summary>Let go of the hub.</summary>
    Released,
}
