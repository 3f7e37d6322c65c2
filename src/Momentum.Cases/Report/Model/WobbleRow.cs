namespace Momentum.Cases.Report.Model;

/// <summary>How the hub wobbles over a stretch of time.</summary>
/// <param name="Stretch">Which stretch.</param>
/// <param name="Nutation">Largest nutation angle in it.</param>
/// <param name="TransverseRate">Largest rate across the spin axis in it.</param>
/// <param name="Momentum">Size of the hub's angular momentum at its end.</param>
/// <param name="Direction">Where that points, along the stage's axes.</param>
/// <param name="Tilt">Its angle to the hub's angular momentum at the start; null if too little is left to point anywhere.</param>
internal sealed record WobbleRow(string Stretch, Figure Nutation, Figure TransverseRate, Figure Momentum, string Direction, Figure? Tilt);
