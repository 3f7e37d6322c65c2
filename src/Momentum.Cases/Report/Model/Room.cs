using Momentum.Frames;
using Momentum.Quantities;

namespace Momentum.Cases.Report.Model;

/// <summary>The room that a rig stands in, at rest in the stage's axes: a level floor, and one upright wall all round.</summary>
/// <param name="Bearing">Where the body origin is, which stays; heights count from here.</param>
/// <param name="Up">Upward.</param>
/// <param name="Floor">How far the floor is below, m; null if there is none within reach.</param>
/// <param name="Walls">Distance of the walls from the upright line through the bearing, m; null if there are none within reach.</param>
/// <param name="Landings">Where each departed weight lands; null for one that does not.</param>
internal sealed record Room(
    Position<StageAxes> Bearing, Direction<StageAxes> Up, double? Floor, double? Walls, IReadOnlyList<Position<StageAxes>?> Landings)
{
    /// <summary>Whether there is anything to be drawn.</summary>
    public bool IsSeen => Floor is not null || Walls is not null;
}
