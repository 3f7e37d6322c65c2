namespace Momentum.Cases.Report.Model;

/// <summary>One conserved quantity in the ledger.</summary>
/// <param name="Name">The quantity, and about which point.</param>
/// <param name="Unit">Unit of every entry.</param>
/// <param name="Rows">Its entries.</param>
/// <param name="Closure">How well the sum closes, or why none is drawn.</param>
internal sealed record LedgerGroup(string Name, string Unit, IReadOnlyList<LedgerRow> Rows, string Closure);
