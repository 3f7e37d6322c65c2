namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// One straight piece of cord and the node (weight, or lump of a heavy cord) at its outer end: what it is, the phase it is in,
/// and what one evaluation of the equations of motion finds of it. Body axes, body origin.
/// </summary>
internal struct Link
{
    /// <summary>Index of its cord.</summary>
    public int Cord;

    /// <summary>Where its six numbers begin in the state.</summary>
    public int Offset;

    /// <summary>Mass of the node.</summary>
    public double Mass;

    /// <summary>Fraction of that mass that is the weight, not cord.</summary>
    public double WeightShare;

    /// <summary>Newton per metre; zero for an inextensible link.</summary>
    public double Spring;

    /// <summary>Newton second per metre.</summary>
    public double Damper;

    /// <summary>Where the node is while the hub holds it.</summary>
    public Vec HeldAt;

    public LinkPhase Phase;

    public LinkMotion Motion;

    public readonly bool IsConstrained => Phase.Chart is Chart.Groove or Chart.SmoothDrum or Chart.Hinge;

    /// <summary>Whether the link is taut: held to its length, or stretched.</summary>
    public readonly bool IsTaut => IsConstrained || Phase.Pulls;

    public readonly bool IsOnDrum => Phase.Chart is Chart.Groove or Chart.SmoothDrum or Chart.FreeDrum;

    public readonly bool IsMoving => Phase.Chart is not (Chart.Held or Chart.Gone);

    /// <summary>Whether it is about to leave the drum at zero length, where the unwound angle's equation is 0/0.</summary>
    public readonly bool Starts(ReadOnlySpan<double> state) => IsOnDrum && Phase.Winding.Length == 0 && state[Offset] == 0;
}
