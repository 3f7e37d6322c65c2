namespace Momentum.Tethers.Deployment;

/// <summary>What happened during a deployment.</summary>
public enum DeploymentEventKind
{
    /// <summary>A weight was released from its holder.</summary>
    WeightReleased,

    /// <summary>A lump of a heavy cord left the drum: the next piece of cord is unwinding.</summary>
    CordPiecePeeled,

    /// <summary>
    /// A lump of a heavy cord that had just left the drum was thrown back onto it, as by the jolt of another cord's piece; it leaves
    /// it again.
    /// </summary>
    CordPieceLands,

    /// <summary>A cord was fully unwound and hinges about its end on the hub.</summary>
    Unwound,

    /// <summary>A cord jammed on the drum before it was fully unwound, and hinges there.</summary>
    Jammed,

    /// <summary>The tension of a cord fell to zero.</summary>
    CordSlack,

    /// <summary>A slack cord came taut again.</summary>
    CordTaut,

    /// <summary>The spin rate fell to that of the let-go rule; the let-go follows after the delay.</summary>
    SpinRateSensed,

    /// <summary>A cord reached the angle of its let-go rule; the let-go follows after the delay.</summary>
    LetGoAngleReached,

    /// <summary>A cord let go of the hub.</summary>
    LetGo,

    /// <summary>A hinged cord came back to the hub and winds up on it again.</summary>
    CordWrapsBack,

    /// <summary>A cord that was unwinding winds up again.</summary>
    UnwindingReversed,

    /// <summary>
    /// A cord on the drum swung out of the drum's plane by more than 75°, where it would run off: the computation ends here.
    /// </summary>
    CordRunsOffDrum,

    /// <summary>
    /// A cord with mass that had wrapped back has wound up its innermost piece: the computation, whose pieces only unwind,
    /// ends here.
    /// </summary>
    CordPieceWindsUp,

    /// <summary>A weight came back to the hub: the computation ends here.</summary>
    WeightStrikesHub,

    /// <summary>The free part of a cord touched the deck's edge. The contact is reported; it puts no force on the cord.</summary>
    CordTouchesDeckEdge,

    /// <summary>A weight that still hangs on its cord reached the floor or a wall: the computation ends here.</summary>
    WeightStrikesRoom,

    /// <summary>The bearing's Coulomb friction stopped the hub.</summary>
    BearingStopped,

    /// <summary>The hub on its bearing turns again.</summary>
    BearingTurns,

    /// <summary>The computation ended.</summary>
    End,
}
