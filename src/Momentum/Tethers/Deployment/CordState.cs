using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>One cord and its weight at one moment. Equality is by all members, of the joints by reference to their list.</summary>
public sealed record CordState
{
    /// <summary>The phase.</summary>
    public required CordPhase Phase { get; init; }

    /// <summary>Whether the cord hangs slack.</summary>
    public required bool IsSlack { get; init; }

    /// <summary>Tension where the cord meets the hub; zero while held, slack or let go.</summary>
    public required Force Tension { get; init; }

    /// <summary>Length between the hub and the weight along the cord's free pieces, stretched.</summary>
    public required Length FreeLength { get; init; }

    /// <summary>
    /// Angle of the free cord at the hub, seen along the axis, from the tangent (0°) through radial (90°); 0° on the drum.
    /// </summary>
    public required Angle CordAngle { get; init; }

    /// <summary>Angle of the free cord at the hub out of the drum's plane, positive towards the spin axis's positive end.</summary>
    public required Angle OutOfPlane { get; init; }

    /// <summary>Where the free cord begins: tangent point, or hinge. Where it was at let-go, once let go.</summary>
    public required Position<Inertial> Root { get; init; }

    /// <summary>
    /// The joints of the free cord from the root outward, between which a cord with mass is straight: from
    /// <see cref="Root"/> through these to <see cref="Weight"/> is the line of the cord. Those still wound are not among
    /// them; empty for a cord of one piece, and while it is held or once it has let go.
    /// </summary>
    public required IReadOnlyList<Position<Inertial>> Joints { get; init; }

    /// <summary>The weight.</summary>
    public required Position<Inertial> Weight { get; init; }

    /// <summary>
    /// Velocity of the weight in inertial axes, in which the whole was at rest at the start; on a rig that is relative to
    /// the room.
    /// </summary>
    public required Vector<Speed, Inertial> WeightVelocity { get; init; }

    /// <summary>Phase, tension, free length and angle, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Phase}, tension {Tension}, {FreeLength} free, cord angle {CordAngle}");
}
