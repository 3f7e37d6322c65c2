namespace Momentum.Cases.Report.Model;

/// <summary>One input as the case file gives it.</summary>
/// <param name="Key">Full key in the case file, such as <c>despin.hub_radius</c>.</param>
/// <param name="Name">What it is, in the trade's words.</param>
/// <param name="Given">The value with its unit as written in the file, without the tolerance.</param>
/// <param name="Tolerance">The tolerance as written; may be empty.</param>
/// <param name="Si">The same value in SI, where that differs from what was written.</param>
internal sealed record InputRow(string Key, string Name, string Given, string Tolerance = "", Figure? Si = null);
