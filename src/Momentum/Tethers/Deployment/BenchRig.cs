using System.Globalization;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// A rig on the ground: the hub turns on a bearing along the drums' axis through the body origin, which stays at the
/// inertial origin. Gravity pulls along the inertial −z axis. Immutable; equality is by value.
/// </summary>
/// <remarks>
/// Spinning rigs and flying weights hurt people. Run one only behind guards made for it, with nobody in the plane of the
/// cords, under the site's own safety rules.
/// </remarks>
public sealed record BenchRig
{
    /// <summary>Standard gravity unless set; zero or positive.</summary>
    public Acceleration Gravity { get; init; } = Acceleration.FromMetersPerSecondSquared(9.80665);

    /// <summary>Torque of dry friction, whatever the rate; zero or positive. It also holds the hub once it stands.</summary>
    public Torque CoulombFriction { get; init; }

    /// <summary>Torque of viscous friction at the initial spin, in proportion to the rate; zero or positive.</summary>
    public Torque ViscousFriction { get; init; }

    /// <summary>How far the floor is below the body origin; null if it is out of reach.</summary>
    public Length? FloorBelow { get; init; }

    /// <summary>Distance of the walls from the vertical line through the body origin; null if they are out of reach.</summary>
    public Length? Walls { get; init; }

    /// <summary>Gravity and friction, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"gravity {Gravity}, dry friction {CoulombFriction}, viscous friction {ViscousFriction}");
}
