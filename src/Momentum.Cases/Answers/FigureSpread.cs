namespace Momentum.Cases.Answers;

/// <summary>How far a figure scatters over the cases drawn from the stated tolerances.</summary>
/// <param name="StandardDeviation">In SI.</param>
/// <param name="Shown">The standard deviation in the unit in which the figure is shown.</param>
public sealed record FigureSpread(double StandardDeviation, double Shown);
