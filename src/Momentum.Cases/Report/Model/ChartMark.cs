namespace Momentum.Cases.Report.Model;

/// <summary>A named point of a chart, such as a peak or the chosen design.</summary>
/// <param name="X">Abscissa in the unit of the axis.</param>
/// <param name="Y">Ordinate in the unit of the axis.</param>
/// <param name="Label">A few words, with the figure and its unit.</param>
/// <param name="Under">Whether the words stand under the point, where the curve goes on level at its height.</param>
internal sealed record ChartMark(double X, double Y, string Label, bool Under = false);
