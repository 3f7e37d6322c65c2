namespace Momentum.Tool.Report.Model;

/// <summary>The whole picture at one instant.</summary>
/// <param name="Time">s from release of the weights.</param>
/// <param name="HubAngle">How far the hub has turned, rad, not wrapped.</param>
/// <param name="Spin">Spin rate in <see cref="Unwinding.SpinUnit"/>.</param>
/// <param name="FreeLength">Free length of each cord, m.</param>
/// <param name="Tension">Tension of each cord, N.</param>
/// <param name="Cords">The cords, in the same order in every frame.</param>
internal sealed record UnwindingFrame(
    double Time, double HubAngle, double Spin, double FreeLength, double Tension, IReadOnlyList<CordFrame> Cords);
