namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What an evaluation finds of a link, relative to the body.</summary>
internal struct LinkMotion
{
    /// <summary>Of the node.</summary>
    public Vec Position;
    public Vec Velocity;
    public Vec Acceleration;

    /// <summary>Force on the node, tensions included.</summary>
    public Vec Force;

    /// <summary>The drum's directions at the tangent point; along the free cord, and across it out of the drum's plane.</summary>
    public Vec Radial;
    public Vec Trailing;
    public Vec Along;
    public Vec Across;

    /// <summary>Rates of the unwound angle and of the angle out of the drum's plane.</summary>
    public double Unwinding;
    public double Swinging;

    /// <summary>Length from the tangent point or hinge; on a smooth drum that of its projection on the drum's plane.</summary>
    public double Free;

    /// <summary>Of the angle out of the drum's plane.</summary>
    public double Cos;
    public double Sin;

    /// <summary>Gradient of the cord's length by the node's position.</summary>
    public Vec Gradient;

    /// <summary>Force on the node for unit tension, reversed: the gradient and drum friction.</summary>
    public Vec Pull;

    /// <summary>Acceleration of the cord's length that the velocities alone bring.</summary>
    public double Bias;

    public double Tension;

    /// <summary>Of a link whose length is free.</summary>
    public double Stretch;
    public double StretchRate;

    /// <summary>Of a link hinged at fixed length: length of the integrated displacement, and velocity along it, by the true length.</summary>
    public double Elongation;
    public double Elongating;
}
