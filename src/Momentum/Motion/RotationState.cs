using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>Angular velocity and attitude of a body at one time.</summary>
/// <typeparam name="TBody">The body's frame.</typeparam>
/// <param name="Rate">Angular velocity of the body against inertial axes, by its components along the body's axes.</param>
/// <param name="Attitude">The rotation from the body's axes to inertial axes.</param>
/// <remarks>Equality is exact. <c>default</c> is a body at rest whose axes are the inertial ones. Immutable, so safe to share between threads.</remarks>
public readonly record struct RotationState<TBody>(Vector<RotationalSpeed, TBody> Rate, Rotation<TBody, Inertial> Attitude)
    : IEqualityOperators<RotationState<TBody>, RotationState<TBody>, bool>
    where TBody : struct, IFrame;
