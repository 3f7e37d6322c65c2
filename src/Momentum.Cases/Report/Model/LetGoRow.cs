namespace Momentum.Cases.Report.Model;

/// <summary>How one weight leaves.</summary>
/// <param name="Cord">Number of its cord, from 1.</param>
/// <param name="Time">When its cord lets go; null if it does not, and then there is neither speed nor energy.</param>
/// <param name="Speed">How fast.</param>
/// <param name="Energy">Kinetic energy of the weight alone.</param>
internal sealed record LetGoRow(int Cord, Figure? Time, Figure? Speed, Figure? Energy);
