namespace Momentum.Cases.Report.Model;

/// <summary>Something that happened.</summary>
/// <param name="Time">s from the start.</param>
/// <param name="Words">What, and to which cord.</param>
internal sealed record EventRow(double Time, string Words);
