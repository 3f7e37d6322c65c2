namespace Momentum.Tethers.Deployment;

/// <summary>The coordinates that place a node, and whether the link on its inner side is taut without stretch.</summary>
internal enum LinkChart
{
    /// <summary>Rides on the hub: wound, held, or not yet peeled off.</summary>
    Held,

    /// <summary>On the drum, taut, inextensible: two coordinates (unwound angle, angle out of the drum's plane).</summary>
    Wound,

    /// <summary>On the drum, elastic or slack: three coordinates (tangent angle, tangent length, height).</summary>
    WoundFree,

    /// <summary>About a fixed point or the next node, taut, inextensible: the displacement, of fixed length.</summary>
    Hinged,

    /// <summary>About a fixed point or the next node, elastic or slack: the displacement.</summary>
    HingedFree,

    /// <summary>Gone.</summary>
    Released,
}
