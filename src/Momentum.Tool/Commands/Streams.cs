namespace Momentum.Tool.Commands;

/// <summary>Where a command reads and writes. Results go to <see cref="Output"/>, everything else to <see cref="Error"/>.</summary>
/// <param name="Input">Standard input, for a case file named <c>-</c>.</param>
/// <param name="Output">Results only.</param>
/// <param name="Error">Messages.</param>
/// <param name="IsTerminal">True if a person reads the messages on a terminal: only then is progress shown.</param>
internal sealed record Streams(Stream Input, TextWriter Output, TextWriter Error, bool IsTerminal);
