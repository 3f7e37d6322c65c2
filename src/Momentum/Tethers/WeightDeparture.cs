using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>How a weight leaves as its cord lets go of the hub.</summary>
/// <remarks><c>default</c> is the weight of cord 0 at rest at the origin. Equality is by all members.</remarks>
/// <param name="Cord">Index of the cord and its weight, from 0.</param>
/// <param name="Time">When, since release of the weights.</param>
/// <param name="Place">Where the weight is then.</param>
/// <param name="Velocity">
/// In inertial axes, in which the whole was at rest at the start: the travel of a vehicle is to be added. On a rig it is
/// relative to the room.
/// </param>
/// <param name="VelocityInBodyAxes">The same velocity along the body axes as they stand then.</param>
/// <param name="Energy">Kinetic energy of the weight alone, without the cord that it takes with it.</param>
public readonly record struct WeightDeparture(
    int Cord,
    Duration Time,
    Position<Inertial> Place,
    Vector<Speed, Inertial> Velocity,
    Vector<Speed, Body> VelocityInBodyAxes,
    Energy Energy)
    : IEqualityOperators<WeightDeparture, WeightDeparture, bool>
{
    /// <summary>Size of the velocity.</summary>
    public Speed Speed => Velocity.Magnitude;

    /// <summary>Which weight, when and how fast, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"cord {Cord} at {Time}: {Speed}, {Energy}");
}
