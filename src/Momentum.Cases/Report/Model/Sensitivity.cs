namespace Momentum.Cases.Report.Model;

/// <summary>The result's change for each input taken alone, largest first as given.</summary>
/// <param name="Result">The result that changes, and the unit of every bar.</param>
/// <param name="Bars">One for each input.</param>
/// <param name="Caption">A sentence under the picture; may be empty.</param>
internal sealed record Sensitivity(ChartAxis Result, IReadOnlyList<SensitivityBar> Bars, string Caption = "");
