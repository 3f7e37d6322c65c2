namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>One cord, its drum and its weight as bare SI numbers: what a typed cord becomes inside.</summary>
internal sealed record CordConstants
{
    public required double Weight { get; init; }

    public required double Length { get; init; }

    /// <summary>Length that already hangs free, tangent to the drum, while the weight is held.</summary>
    public double FreeAtStart { get; init; }

    /// <summary>Mass of a metre of cord.</summary>
    public double LineDensity { get; init; }

    /// <summary>Pieces that a cord with mass is cut into; its mass sits in the joints.</summary>
    public int Segments { get; init; } = 1;

    /// <summary>E·A in newton; zero for an inextensible cord.</summary>
    public double Stiffness { get; init; }

    /// <summary>Fraction of critical damping of the weight on the whole cord.</summary>
    public double DampingRatio { get; init; }

    /// <summary>Peeling resistance as a fraction of the tension.</summary>
    public double Friction { get; init; }

    /// <summary>Speed off the drum below which friction fades, so that it never decides a direction by its sign.</summary>
    public double FrictionSpeed { get; init; } = 1e-3;

    public required double Radius { get; init; }

    public double Height { get; init; }

    public double StartAngle { get; init; }

    /// <summary>+1: the tangent point runs counter-clockwise about the axis as the cord unwinds; −1: clockwise.</summary>
    public double Sense { get; init; } = 1;

    public bool Smooth { get; init; }

    /// <summary>When the weight is released; infinite if never.</summary>
    public double FreedAt { get; init; }

    /// <summary>Free length at which the drum jams; infinite if it does not.</summary>
    public double JamsAt { get; init; } = double.PositiveInfinity;

    /// <summary>The let-go rule; "never" by default.</summary>
    public LetGoRule LetGo { get; init; }

    /// <summary>Unwound angle, in radians, that a cord does not let go before.</summary>
    public const double NeverWound = 1e-6;

    /// <summary>Angle that the tangent point runs from the start to the end of winding, along the drum's circumference.</summary>
    public double WoundAngle => (Length - FreeAtStart) / Radius;

    public int Nodes => Segments;

    public double SegmentLength => Length / Segments;

    /// <summary>Mass that moves with node <paramref name="node"/>; node 0 is the weight.</summary>
    public double NodeMass(int node) =>
        (node == 0 ? Weight : 0) + (LineDensity * SegmentLength * (node == 0 ? 0.5 : 1));

    /// <summary>Half a segment's mass stays at the cord's end on the hub until the cord is let go.</summary>
    public double EndMass => 0.5 * LineDensity * SegmentLength;
}
