namespace Momentum.Cases.Report.Model;

/// <summary>One line of the ledger; an entry that does not apply is null.</summary>
/// <param name="Name">What is counted.</param>
/// <param name="Start">At the start.</param>
/// <param name="Gone">What was taken away between.</param>
/// <param name="End">What is left at the end.</param>
/// <param name="IsSum">Whether this is the sum of the lines above.</param>
internal sealed record LedgerRow(string Name, Figure? Start = null, Figure? Gone = null, Figure? End = null, bool IsSum = false);
