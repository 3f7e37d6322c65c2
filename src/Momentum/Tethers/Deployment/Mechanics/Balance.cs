namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>Momentum and energy of everything at one moment, SI, inertial axes and inertial origin.</summary>
internal struct Balance
{
    public Vec Linear;
    public Vec Angular;

    /// <summary>Of the hub alone about its centre of mass, and of that centre's motion.</summary>
    public double HubRotation;
    public double HubTranslation;

    public double Weights;

    /// <summary>Kinetic energy of the cords' own mass.</summary>
    public double Cords;

    public double Elastic;
    public double Gravity;

    public readonly double Energy => HubRotation + HubTranslation + Weights + Cords + Elastic + Gravity;
}
