namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>The hub, and what holds it, as bare SI numbers in body axes from the body origin.</summary>
internal sealed record HubConstants
{
    public required double Mass { get; init; }

    public Vec Centre { get; init; }

    /// <summary>About the hub's own centre of mass, without weights and cords.</summary>
    public required Tensor Inertia { get; init; }

    /// <summary>The drums' axis through the body origin, and two axes across it.</summary>
    public Vec Axis { get; init; } = new(0, 0, 1);

    public Vec First { get; init; } = new(1, 0, 0);

    public Vec Second { get; init; } = new(0, 1, 0);

    /// <summary>Whether the hub turns on a bearing along its axis instead of floating free.</summary>
    public bool OnBearing { get; init; }

    /// <summary>N·m·s.</summary>
    public double ViscousFriction { get; init; }

    /// <summary>N·m.</summary>
    public double CoulombFriction { get; init; }

    /// <summary>m/s², inertial axes.</summary>
    public Vec Gravity { get; init; }
}
