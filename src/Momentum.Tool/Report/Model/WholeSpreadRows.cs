namespace Momentum.Tool.Report.Model;

/// <summary>What the spread of the whole motion comes to.</summary>
/// <param name="Cases">How many cases were deployed in three dimensions.</param>
/// <param name="Failed">In how many of them not all weights were let go.</param>
/// <param name="Rows">The figures.</param>
internal sealed record WholeSpreadRows(int Cases, int Failed, IReadOnlyList<AnswerRow> Rows);
