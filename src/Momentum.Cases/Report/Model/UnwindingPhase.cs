namespace Momentum.Cases.Report.Model;

/// <summary>A stretch of the motion, up to the start of the next.</summary>
/// <param name="Name">Such as unwinding, hinging, free flight.</param>
/// <param name="Start">s from release of the weights.</param>
internal sealed record UnwindingPhase(string Name, double Start);
