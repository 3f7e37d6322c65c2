namespace Momentum.Cases.Answers;

/// <summary>One instant of the history.</summary>
/// <param name="Values">A number for each column.</param>
/// <param name="Phase">Unwinding, hinging or let go; held if no weight is released yet.</param>
/// <param name="Event">What happens just then, or an empty text.</param>
internal sealed record HistoryRow(IReadOnlyList<double> Values, string Phase, string Event);
