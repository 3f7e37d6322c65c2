namespace Momentum.Tool.Report.Model;

/// <summary>How far one input's tolerance moves the result.</summary>
/// <param name="Input">The input, in the trade's words.</param>
/// <param name="Tolerance">Its tolerance with unit.</param>
/// <param name="AtLow">Change of the result with the input at the low end of its tolerance.</param>
/// <param name="AtHigh">Change of the result with the input at the high end.</param>
internal sealed record SensitivityBar(string Input, string Tolerance, double AtLow, double AtHigh);
