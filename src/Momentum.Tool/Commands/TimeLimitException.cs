namespace Momentum.Tool.Commands;

/// <summary>The time limit that the user set was reached before there was a result.</summary>
internal sealed class TimeLimitException(string limit) : Exception($"stopped at the time limit of {limit}, before there was a result");
