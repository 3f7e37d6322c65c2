namespace Momentum.Tethers.Deployment;

/// <summary>What a warning about a deployment is about.</summary>
public enum DeploymentWarningKind
{
    /// <summary>The hub spins about its axis of least inertia.</summary>
    SpinAboutLeastInertia,

    /// <summary>After the last let-go the nutation angle exceeds what is acceptable.</summary>
    NutationBeyondRequirement,

    /// <summary>A cord jams on its drum.</summary>
    CordJams,

    /// <summary>A cord goes slack.</summary>
    CordSlack,

    /// <summary>A cord wraps back onto the hub.</summary>
    CordWrapsBack,

    /// <summary>A cord stops unwinding and winds up again.</summary>
    UnwindingReversed,

    /// <summary>A cord would run off its drum.</summary>
    CordRunsOffDrum,

    /// <summary>A cord with mass winds up on the hub.</summary>
    CordPieceWindsUp,

    /// <summary>A weight strikes the hub.</summary>
    WeightStrikesHub,

    /// <summary>A cord touches the deck's edge.</summary>
    CordTouchesDeckEdge,

    /// <summary>A weight, still on its cord, strikes the floor or a wall.</summary>
    WeightStrikesRoom,

    /// <summary>Impulses took a part of the energy.</summary>
    EnergyLostInImpulses,

    /// <summary>A cord is still on the hub at the end.</summary>
    CordStaysOn,

    /// <summary>The tension exceeds a cord's breaking load.</summary>
    CordBreaks,
}
