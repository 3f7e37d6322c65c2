namespace Momentum.Cases.Report.Model;

/// <summary>A part of the final spin rate.</summary>
/// <param name="Name">Where it comes from.</param>
/// <param name="Value">The part, with its sign.</param>
/// <param name="IsWhole">Whether this is the sum of the others.</param>
internal sealed record SpinPart(string Name, double Value, bool IsWhole = false);
