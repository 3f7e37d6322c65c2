using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>Where a rigid body is, how it stands and how it moves, at one time.</summary>
/// <typeparam name="TBody">The body's frame.</typeparam>
/// <param name="CentreOfMass">The centre of mass along inertial axes, from the inertial origin.</param>
/// <param name="Velocity">Velocity of the centre of mass along inertial axes.</param>
/// <param name="Rate">Angular velocity against inertial axes, along the body's axes.</param>
/// <param name="Attitude">The rotation from the body's axes to inertial axes.</param>
/// <remarks>Equality is exact. <c>default</c> is a body at rest at the origin. Immutable, so safe to share between threads.</remarks>
public readonly record struct BodyState<TBody>(
    Position<Inertial> CentreOfMass,
    Vector<Speed, Inertial> Velocity,
    Vector<RotationalSpeed, TBody> Rate,
    Rotation<TBody, Inertial> Attitude)
    : IEqualityOperators<BodyState<TBody>, BodyState<TBody>, bool>
    where TBody : struct, IFrame;
