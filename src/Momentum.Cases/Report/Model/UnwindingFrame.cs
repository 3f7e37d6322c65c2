using Momentum.Frames;
using Momentum.Tethers.Deployment;

namespace Momentum.Cases.Report.Model;

/// <summary>The whole picture at one instant.</summary>
/// <param name="Time">s from the start.</param>
/// <param name="Attitude">The hub's attitude.</param>
/// <param name="Spin">Spin rate in <see cref="Unwinding.SpinUnit"/>.</param>
/// <param name="Momentum">The hub's angular momentum.</param>
/// <param name="Wobble">The wobble; null in a motion that is taken as planar.</param>
/// <param name="Cords">The cords, in the same order in every frame.</param>
internal sealed record UnwindingFrame(
    double Time,
    Rotation<HubAxes, StageAxes> Attitude,
    double Spin,
    HubMomentum Momentum,
    WobbleFrame? Wobble,
    IReadOnlyList<CordFrame> Cords);
