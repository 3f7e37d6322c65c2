namespace Momentum.Cases.Report.Model;

/// <summary>One check of the computation on itself.</summary>
/// <param name="Name">What was compared.</param>
/// <param name="Passed">Whether the figure is within what is allowed.</param>
/// <param name="Found">The figure found, with its unit.</param>
/// <param name="Allowed">What is allowed, with its unit; may be empty.</param>
internal sealed record CheckRow(string Name, bool Passed, string Found, string Allowed = "");
