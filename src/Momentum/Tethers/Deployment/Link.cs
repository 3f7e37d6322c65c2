namespace Momentum.Tethers.Deployment;

/// <summary>
/// One straight piece of cord and the node (weight, or lump of a heavy cord) at its outer end: its present coordinates
/// and what one evaluation of the equations of motion knows about it. Body axes, body origin.
/// </summary>
internal struct Link
{
    // What a phase fixes.
    public LinkChart Chart;
    public int Cord;
    public int Offset;
    public double Mass;

    /// <summary>Index of the node at the inner end; −1 if that is the hub.</summary>
    public int Parent;

    /// <summary>Natural length between the node and the next one, or the cord's end.</summary>
    public double Natural;

    /// <summary>Newton per metre; zero for an inextensible link.</summary>
    public double Spring;

    /// <summary>Newton second per metre.</summary>
    public double Damper;

    /// <summary>Whether a link in a free chart pulls (elastic) or hangs slack.</summary>
    public bool Pulls;

    /// <summary>Direction in which the tangent point runs, ±1.</summary>
    public double Sense;

    /// <summary>Angle of the tangent point at zero local unwound angle.</summary>
    public double BaseAngle;

    /// <summary>Whether it came back onto the drum after it had hinged.</summary>
    public bool WrappedBack;

    /// <summary>Free length at zero local unwound angle.</summary>
    public double BaseLength;

    /// <summary>Local unwound angle at which the next node is reached, the winding ends, or the drum jams.</summary>
    public double EndAngle;

    /// <summary>Where the cord is hinged to the hub, and the drum's radial and trailing directions there.</summary>
    public Vec Anchor;
    public Vec AnchorRadial;
    public Vec AnchorTrailing;

    // What an evaluation finds.
    public Vec Position;
    public Vec Velocity;
    public Vec Radial;
    public Vec Trailing;
    public Vec Along;
    public Vec Across;

    /// <summary>Rates of the unwound angle and of the angle out of the drum's plane.</summary>
    public double Unwinding;
    public double Swinging;

    /// <summary>Length from the tangent point or hinge; on a smooth drum that of its projection on the drum's plane.</summary>
    public double Free;
    public double Cos;
    public double Sin;

    /// <summary>Gradient of the cord's length by the node's position.</summary>
    public Vec Gradient;

    /// <summary>Force on the node for unit tension, reversed: the gradient and drum friction.</summary>
    public Vec Pull;

    /// <summary>Acceleration of the cord's length that the velocities alone bring.</summary>
    public double Bias;

    /// <summary>Of a link hinged at fixed length: length of the integrated displacement, and velocity along it, by the true length.</summary>
    public double Elongation;
    public double Elongating;

    public double Stretch;
    public double StretchRate;
    public double Tension;
    public Vec Force;
    public Vec Acceleration;
    public Vec HubAcceleration;
    public Vec HubTurning;

    public readonly bool IsConstrained => Chart is LinkChart.Wound or LinkChart.Hinged;

    /// <summary>Whether the link is taut: held to its length, or stretched.</summary>
    public readonly bool IsTaut => IsConstrained || Pulls;

    public readonly bool IsOnDrum => Chart is LinkChart.Wound or LinkChart.WoundFree;

    public readonly bool IsMoving => Chart is not (LinkChart.Held or LinkChart.Released);
}
