namespace Momentum.Cases.Report.Model;

/// <summary>One line of the answer table.</summary>
/// <param name="Name">What the number is, in the trade's words.</param>
/// <param name="Value">The number with its unit.</param>
/// <param name="Note">How it is meant or where it occurs; may be empty.</param>
/// <param name="Solved">Whether this is the unknown the case asked for.</param>
internal sealed record AnswerRow(string Name, Figure Value, string Note = "", bool Solved = false);
