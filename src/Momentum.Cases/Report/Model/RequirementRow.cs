namespace Momentum.Cases.Report.Model;

/// <summary>One stated requirement and how it came out.</summary>
/// <param name="Name">What is limited.</param>
/// <param name="Limit">The limit with its unit, such as <c>&lt; 2 rpm</c>.</param>
/// <param name="Value">The computed value, or null where there is none to judge by.</param>
/// <param name="Outcome">Met, not met or not judged.</param>
/// <param name="Note">What the value stands for, or why it was not judged; may be empty.</param>
internal sealed record RequirementRow(string Name, string Limit, Figure? Value, Outcome Outcome, string Note = "");
