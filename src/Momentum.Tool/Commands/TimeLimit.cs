using System.CommandLine;
using Momentum.Cases;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Tool.Commands;

/// <summary>How long the verbs that compute may take.</summary>
/// <param name="Seconds">The limit; infinite if none is set.</param>
/// <param name="Text">As the user wrote it.</param>
internal sealed record TimeLimit(double Seconds, string Text)
{
    // What a timer takes; nobody waits for a month.
    private const double Longest = 1e6;

    public static TimeLimit None { get; } = new(double.PositiveInfinity, "");

    /// <summary>When to cancel; infinite if never.</summary>
    public TimeSpan Span => double.IsFinite(Seconds) ? TimeSpan.FromSeconds(Seconds) : Timeout.InfiniteTimeSpan;

    public static Option<string?> Option() =>
        new("--time-limit") { Description = "Stop with exit code 3 if there is no result after this time, such as \"30 s\". Left out: no limit.", HelpName = "duration" };

    /// <exception cref="UsageException">It is no duration from 1 ms to 1e6 s.</exception>
    public static TimeLimit Of(string? text)
    {
        if (text is null)
        {
            return None;
        }

        QuantityText? parsed = QuantityText.Parse(text, QuantityKinds.ByType[typeof(Duration)], out Trouble? trouble);
        string shown = $"--time-limit \"{Printable.Line(text)}\"";
        return parsed is null ? throw new UsageException($"{shown}: {trouble!.Message}", trouble.Remedy)
            : !parsed.Tolerance.IsNone || parsed.Si is < 1e-3 or > Longest
                ? throw new UsageException($"{shown}: allowed is 1 ms to {Longest:0} s, without a tolerance", "Write for example --time-limit \"30 s\".")
                : new TimeLimit(parsed.Si, text.Trim());
    }
}
