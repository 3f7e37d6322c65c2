using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>What acts on a body from outside at one time, fixed in the body or in space. All parts add; <c>default</c> is none.</summary>
/// <typeparam name="TBody">The body's frame.</typeparam>
/// <remarks>Torques are about the centre of mass, those of the forces included. Equality is exact. Immutable.</remarks>
public readonly record struct BodyLoads<TBody> : IEqualityOperators<BodyLoads<TBody>, BodyLoads<TBody>, bool>
    where TBody : struct, IFrame
{
    /// <summary>Force along the body's axes, such as thrust.</summary>
    public Vector<Force, TBody> BodyForce { get; init; }

    /// <summary>Force along inertial axes, such as weight.</summary>
    public Vector<Force, Inertial> SpaceForce { get; init; }

    /// <summary>Torque about the centre of mass along the body's axes, such as that of a misaligned motor.</summary>
    public Vector<Torque, TBody> BodyTorque { get; init; }

    /// <summary>Torque about the centre of mass along inertial axes.</summary>
    public Vector<Torque, Inertial> SpaceTorque { get; init; }
}
