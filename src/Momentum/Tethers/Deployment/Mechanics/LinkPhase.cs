namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What an event changes of a link, and what stays until the next one.</summary>
internal struct LinkPhase
{
    public Chart Chart;

    /// <summary>Index of the node at the inner end; −1 if that is the hub.</summary>
    public int Parent;

    /// <summary>Whether a link of free length pulls (elastic) or hangs slack.</summary>
    public bool Pulls;

    /// <summary>Natural length between the node and the next one, or the cord's end.</summary>
    public double Natural;

    /// <summary>How it winds, while it is on the drum.</summary>
    public DrumWinding Winding;

    /// <summary>What it hinges about, once it is off the drum, if that is the hub.</summary>
    public HubHinge Hinge;
}

/// <summary>Where and which way a link winds on its drum.</summary>
internal struct DrumWinding
{
    /// <summary>Direction in which the tangent point runs, ±1.</summary>
    public double Sense;

    /// <summary>Angle of the tangent point at zero unwound angle of the link.</summary>
    public double Angle;

    /// <summary>Free length at zero unwound angle.</summary>
    public double Length;

    /// <summary>Unwound angle at which the next node is reached, the winding ends, or the drum jams.</summary>
    public double End;

    /// <summary>Whether it came back onto the drum after it had hinged.</summary>
    public bool IsBack;
}

/// <summary>Where a cord is hinged to the hub, and the drum's radial and trailing directions there.</summary>
internal struct HubHinge
{
    public Vec Place;
    public Vec Radial;
    public Vec Trailing;
}
