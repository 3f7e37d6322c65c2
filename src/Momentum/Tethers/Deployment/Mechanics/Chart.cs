namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The coordinates that place a node, and whether the link on its inner side is taut at a fixed length. Each chart in which a
/// node moves is a type of its own, an <see cref="IChart"/>.
/// </summary>
internal enum Chart
{
    /// <summary>Rides on the hub: wound, held, or not yet off the drum.</summary>
    Held,

    /// <summary>In the groove of the drum, taut, inextensible: <see cref="GrooveChart"/>.</summary>
    Groove,

    /// <summary>On a smooth drum, taut, inextensible: <see cref="SmoothDrumChart"/>.</summary>
    SmoothDrum,

    /// <summary>On either drum, elastic or slack: <see cref="FreeDrumChart"/>.</summary>
    FreeDrum,

    /// <summary>About a fixed point or the next node, taut, inextensible: <see cref="HingeChart"/>.</summary>
    Hinge,

    /// <summary>About a fixed point or the next node, elastic or slack: <see cref="FreeHingeChart"/>.</summary>
    FreeHinge,

    /// <summary>Let go of.</summary>
    Gone,
}
