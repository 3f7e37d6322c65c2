namespace Momentum.Cases.Report.Model;

/// <summary>One curve.</summary>
/// <param name="Name">Its name in the legend; a chart of a single curve shows none.</param>
/// <param name="X">Abscissae in the unit of the horizontal axis, ascending.</param>
/// <param name="Y">Ordinates in the unit of the vertical axis, as many.</param>
/// <param name="Colour">Number of its colour, from 0; null for that of its place among the curves, which its dash is by in any case.</param>
internal sealed record ChartSeries(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Y, int? Colour = null);
