using Momentum.Cases.Answers;

namespace Momentum.Cases.Report.Model;

/// <summary>What the spread of the whole motion comes to.</summary>
/// <param name="Cases">How many cases were deployed in three dimensions.</param>
/// <param name="Failed">How many of them have no result: not all weights let go, or refused.</param>
/// <param name="Rows">The figures.</param>
internal sealed record WholeSpreadRows(int Cases, int Failed, IReadOnlyList<AnswerFigure> Rows);
