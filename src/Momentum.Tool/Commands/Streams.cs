namespace Momentum.Tool.Commands;

/// <summary>Where a command reads and writes. Results go to <see cref="Output"/>, everything else to <see cref="Error"/>.</summary>
/// <param name="Input">Standard input, for a case file named <c>-</c>.</param>
/// <param name="Output">Results only.</param>
/// <param name="Error">Messages.</param>
/// <param name="Terminal">Standard error as it is, if a person reads it on a terminal: only then is progress shown. Otherwise null.</param>
internal sealed record Streams(Stream Input, TextWriter Output, TextWriter Error, TextWriter? Terminal = null)
{
    /// <summary>A path by which the system knows <see cref="Output"/>; null if it knows none.</summary>
    public string? OutputPath { get; init; }
}
