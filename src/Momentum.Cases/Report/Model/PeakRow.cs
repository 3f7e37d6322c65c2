namespace Momentum.Cases.Report.Model;

/// <summary>The largest tension of one cord.</summary>
/// <param name="Cord">Number of the cord, from 1.</param>
/// <param name="Tension">The tension.</param>
/// <param name="Time">When.</param>
internal sealed record PeakRow(int Cord, Figure Tension, Figure Time);
