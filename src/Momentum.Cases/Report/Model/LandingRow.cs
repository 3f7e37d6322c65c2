namespace Momentum.Cases.Report.Model;

/// <summary>Where a departed weight lands in the room of a rig.</summary>
/// <param name="Cord">Number of its cord, from 1.</param>
/// <param name="Place">On what, and where.</param>
/// <param name="Time">When.</param>
/// <param name="Speed">How fast.</param>
/// <param name="Energy">With how much energy.</param>
internal sealed record LandingRow(int Cord, string Place, Figure Time, Figure Speed, Figure Energy);
