using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>Where a departed weight meets the floor or a wall of the room, with no drag. Equality is by all members. <c>default</c> is cord 0 at rest at the origin.</summary>
/// <param name="Cord">Index of the cord, from 0.</param>
/// <param name="Time">When.</param>
/// <param name="Place">Where.</param>
/// <param name="Speed">How fast.</param>
/// <param name="Energy">Kinetic energy of the weight then.</param>
/// <param name="OnFloor">True for the floor, false for a wall.</param>
public readonly record struct Landing(int Cord, Duration Time, Position<Inertial> Place, Speed Speed, Energy Energy, bool OnFloor)
    : IEqualityOperators<Landing, Landing, bool>
{
    /// <summary>Which weight, when, where and how fast, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"cord {Cord} at {Time}: {Place}, {Speed}, {Energy}");
}
