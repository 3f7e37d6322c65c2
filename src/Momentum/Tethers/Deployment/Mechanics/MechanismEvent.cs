namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What can end a phase, or be seen in passing.</summary>
internal enum MechanismEventKind
{
    /// <summary>A taut link goes slack, or a slack one comes taut.</summary>
    TensionChanges,

    /// <summary>The tangent point reaches the next lump, the cord's end, or a jam.</summary>
    WindingEnds,

    /// <summary>A cord stands at the angle at which it lets go.</summary>
    CordAngleReached,

    /// <summary>A hinged cord comes back onto the drum.</summary>
    WrapsBack,

    /// <summary>An unwinding cord winds up.</summary>
    UnwindingReverses,

    /// <summary>The node of the innermost moving link comes back to the drum.</summary>
    NodeComesBack,

    /// <summary>The free cord touches the deck's edge.</summary>
    DeckTouched,

    /// <summary>The spin has fallen to the rate at which a cord lets go.</summary>
    SpinSensed,

    /// <summary>A weight reaches the floor or a wall.</summary>
    RoomReached,

    /// <summary>A cord on the drum stands too far out of its plane.</summary>
    RunsOffDrum,

    /// <summary>The hub on its bearing stands still.</summary>
    BearingStops,

    /// <summary>The load on a bearing that holds the hub overcomes its dry friction.</summary>
    BearingStarts,
}

/// <summary>An event and what it happens to.</summary>
/// <param name="Kind">What happens.</param>
/// <param name="Subject">Index of the link whose tension changes, else of the cord; −1 for the bearing's.</param>
internal readonly record struct MechanismEvent(MechanismEventKind Kind, int Subject);
