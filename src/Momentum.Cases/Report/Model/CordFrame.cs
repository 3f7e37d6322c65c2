using Momentum.Frames;

namespace Momentum.Cases.Report.Model;

/// <summary>One cord and its weight at one instant.</summary>
/// <param name="RootAngle">Where the free cord leaves the drum, rad about the drums' axis from the hub's first axis, not wrapped.</param>
/// <param name="RootHeight">The height of that place from the hub's centre of mass, m.</param>
/// <param name="Joints">
/// The joints of the free cord from its root outward, as many in every frame: one that is still wound is where the root is.
/// </param>
/// <param name="Weight">The weight.</param>
/// <param name="FreeLength">Free length, m.</param>
/// <param name="Tension">Tension, N.</param>
/// <param name="Hold">Whether and how the weight hangs on the hub.</param>
internal sealed record CordFrame(
    double RootAngle,
    double RootHeight,
    IReadOnlyList<Position<StageAxes>> Joints,
    Position<StageAxes> Weight,
    double FreeLength,
    double Tension,
    CordHold Hold)
{
    /// <summary>Whether the cord is still on the hub.</summary>
    public bool Attached => Hold != CordHold.Gone;
}
