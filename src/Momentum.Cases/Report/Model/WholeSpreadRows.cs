using Momentum.Cases.Answers;

namespace Momentum.Cases.Report.Model;

/// <summary>What the spread comes to.</summary>
/// <param name="Heading">How many cases of which kind.</param>
/// <param name="Rows">The figures.</param>
internal sealed record WholeSpreadRows(string Heading, IReadOnlyList<AnswerFigure> Rows);
