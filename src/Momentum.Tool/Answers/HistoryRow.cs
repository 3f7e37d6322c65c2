using Momentum.Tethers;

namespace Momentum.Tool.Answers;

/// <summary>One instant of the history.</summary>
/// <param name="State">The state.</param>
/// <param name="Event">What happens just then, or an empty text.</param>
internal sealed record HistoryRow(DespinState State, string Event);
