namespace Momentum.Cases.Report.Model;

/// <summary>A named place on the horizontal axis, drawn as an upright line.</summary>
/// <param name="X">Abscissa in the unit of the axis.</param>
/// <param name="Label">A few words.</param>
internal sealed record ChartEvent(double X, string Label);
