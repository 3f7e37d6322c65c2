using Momentum.Tethers;

namespace Momentum.Tool.Answers;

/// <summary>One column of the history: its key with the SI unit, and how to read it off a state.</summary>
internal sealed record HistoryColumn(string Key, Func<DespinState, double> Of);
