using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>How a weight leaves as its cord lets go of the hub. Equality is by all members. <c>default</c> is cord 0 at rest at the origin.</summary>
/// <param name="Cord">Index of the cord, from 0.</param>
/// <param name="Time">When.</param>
/// <param name="Place">Where the weight is then.</param>
/// <param name="Velocity">
/// In inertial axes, in which the whole was at rest at the start: the travel of a vehicle is to be added. On a rig it is
/// relative to the room.
/// </param>
/// <param name="Energy">Kinetic energy of the weight alone, without the cord that it takes with it.</param>
public readonly record struct WeightLetGo(
    int Cord, Duration Time, Position<Inertial> Place, Vector<Speed, Inertial> Velocity, Energy Energy)
    : IEqualityOperators<WeightLetGo, WeightLetGo, bool>
{
    /// <summary>Which weight, when and how fast, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"cord {Cord} at {Time}: {Velocity.Magnitude}, {Energy}");
}
