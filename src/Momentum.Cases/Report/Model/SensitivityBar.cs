namespace Momentum.Cases.Report.Model;

/// <summary>How far one input's tolerance moves the result.</summary>
/// <param name="Input">The input, in the trade's words.</param>
/// <param name="Tolerance">Its tolerance with unit.</param>
/// <param name="AtLow">Change of the result with the input one standard deviation below nominal.</param>
/// <param name="AtHigh">Change of the result with the input one standard deviation above nominal.</param>
internal sealed record SensitivityBar(string Input, string Tolerance, double AtLow, double AtHigh);
