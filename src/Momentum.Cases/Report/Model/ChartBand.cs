namespace Momentum.Cases.Report.Model;

/// <summary>What many curves lie between, drawn under those that have names.</summary>
/// <param name="Name">Its name in the legend.</param>
/// <param name="X">Abscissae in the unit of the horizontal axis, ascending.</param>
/// <param name="Low">The least of the curves there, in the unit of the vertical axis.</param>
/// <param name="High">The greatest of them.</param>
internal sealed record ChartBand(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Low, IReadOnlyList<double> High);
