using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>Everything at one moment of a deployment.</summary>
/// <remarks>
/// "The hub" means here the hub with all that rides on it at that moment: wound cord, held weights. Equality is by
/// reference to the cords and by value of the rest.
/// </remarks>
public sealed record DeploymentState : IDespinState
{
    /// <summary>From the start of the deployment.</summary>
    public required Duration Time { get; init; }

    /// <summary>Rate about the spin axis; positive about its positive end.</summary>
    public required RotationalSpeed Spin { get; init; }

    /// <summary>Rate across the spin axis, never negative.</summary>
    public required RotationalSpeed TransverseRate { get; init; }

    /// <summary>Rates in body axes.</summary>
    public required Vector<RotationalSpeed, Body> Rates { get; init; }

    /// <summary>Attitude.</summary>
    public required Rotation<Body, Inertial> Attitude { get; init; }

    /// <summary>The body origin.</summary>
    public required Position<Inertial> Origin { get; init; }

    /// <summary>Velocity of the body origin.</summary>
    public required Vector<Speed, Inertial> OriginVelocity { get; init; }

    /// <summary>Angular momentum of the hub about its own centre of mass.</summary>
    public required Vector<AngularMomentum, Inertial> HubAngularMomentum { get; init; }

    /// <summary>Angle between the spin axis and the hub's angular momentum, 0° to 90° (taken from the nearer end of the axis).</summary>
    public required Angle NutationAngle { get; init; }

    /// <summary>Angle between the spin axis and where it pointed at the start.</summary>
    public required Angle AxisTilt { get; init; }

    /// <summary>Energy of what is still together.</summary>
    public required DeploymentEnergy Energy { get; init; }

    /// <summary>The cords, in the order of the deployment.</summary>
    public required IReadOnlyList<CordState> Cords { get; init; }

    /// <inheritdoc/>
    public CordPhase Phase => Cords.Min(c => c.Phase);

    /// <inheritdoc/>
    public Force TensionOf(int cord) => CordOf(cord, nameof(cord)).Tension;

    /// <inheritdoc/>
    public Position<Inertial> WeightPosition(int weight) => CordOf(weight, nameof(weight)).Weight;

    private CordState CordOf(int number, string name) => number >= 0 && number < Cords.Count
        ? Cords[number]
        : throw new ArgumentOutOfRangeException(name, number, $"The deployment has {Cords.Count} cords; ask for 0 to {Cords.Count - 1}.");

    /// <summary>Time, spin and nutation, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"at {Time}: spin {Spin}, transverse rate {TransverseRate}, nutation {NutationAngle}");
}
