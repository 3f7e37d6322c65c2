using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Momentum.Tests.Designs;

/// <summary>What became of many random designs: how many of each outcome, which were wrong, and which took the longest.</summary>
/// <param name="timed">Whether times are told; only outside the gate, where nothing fails for a slow machine.</param>
internal sealed class Tally(bool timed)
{
    // Times the median of its kind from which a design needs a reason.
    private const double Slow = 100;

    // Times the median of the work that is such a reason: the typical cost of a design is in part the same for all.
    private const double Reason = 10;
    private const int Repeats = 5;
    private const int Shown = 5;

    private readonly Lock _lock = new();
    private readonly SortedDictionary<string, int> _outcomes = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, List<Run>> _runs = new(StringComparer.Ordinal);
    private readonly List<string> _wrong = [];
    private readonly SortedDictionary<string, (double Closure, int Number)> _closures = new(StringComparer.Ordinal);

    /// <summary>Designs whose figures are not what they must be.</summary>
    internal IReadOnlyList<string> Wrong => _wrong;

    /// <summary>Runs one design and counts what comes of it.</summary>
    /// <param name="kind">What is compared with it.</param>
    /// <param name="number">To make it again.</param>
    /// <param name="work">What makes it take long, such as so many radians of a spring's swing; null for a closed form, which has no reason to.</param>
    /// <param name="compute">Gives what it shows, and throws what refuses it.</param>
    internal void Count(string kind, int number, (int Amount, string Of)? work, Func<Finding> compute)
    {
        long start = Stopwatch.GetTimestamp();
        Finding found = Compute(compute);
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        lock (_lock)
        {
            string outcome = $"{kind}: {found.Outcome}";
            _outcomes[outcome] = _outcomes.GetValueOrDefault(outcome) + 1;
            if (found.Wrong is not null)
            {
                _wrong.Add($"{kind} {number}: {found.Wrong}");
            }

            if (found.Closure > _closures.GetValueOrDefault(kind).Closure)
            {
                _closures[kind] = (found.Closure, number);
            }

            if (!_runs.TryGetValue(kind, out List<Run>? runs))
            {
                _runs[kind] = runs = [];
            }

            runs.Add(new Run(number, seconds, found.Work ?? work, timed ? compute : null, found));
        }
    }

    /// <summary>The table; and what took long without a reason is added to what is wrong.</summary>
    internal string Table()
    {
        StringBuilder text = new();
        foreach ((string outcome, int count) in _outcomes)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{count,9}  {outcome}");
        }

        foreach ((string kind, (double closure, int number)) in _closures)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{kind}: largest departure of a ledger {closure:g3} (of {number})");
            if (!(closure <= Ledger.LargestDeparture))
            {
                _wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{kind} {number}: a ledger departs by {closure:g3}"));
            }
        }

        foreach ((string kind, List<Run> runs) in timed ? _runs : [])
        {
            runs.Sort((a, b) => a.Seconds.CompareTo(b.Seconds));
            double median = runs[runs.Count / 2].Seconds;
            text.AppendLine(CultureInfo.InvariantCulture, $"{kind}: median {1e6 * median:g4} us, 99 % below {1e6 * runs[(int)(0.99 * (runs.Count - 1))].Seconds:g4} us");

            // What was held up by something else on the machine is quick when it is run again.
            IEnumerable<Run> slowest = runs
                .TakeLast(100)
                .Select(run => run with { Seconds = Math.Min(run.Seconds, Enumerable.Range(0, Repeats).Min(_ => Time(run.Compute!))) })
                .OrderByDescending(run => run.Seconds);
            foreach (Run run in slowest.Where((run, i) => i < Shown || run.Seconds > Slow * median))
            {
                string reason = run.Work is { } work ? $"{work.Amount} {work.Of}" : "no reason";
                text.AppendLine(CultureInfo.InvariantCulture, $"    {run.Number}: {1e6 * run.Seconds:g4} us, {run.Seconds / median:g3} medians: {reason}; {run.Found.Outcome}");
                if (run.Seconds > Slow * median && !(run.Work is { } done && done.Amount > Reason * Typical(runs)))
                {
                    _wrong.Add(string.Create(CultureInfo.InvariantCulture, $"{kind} {run.Number} took {run.Seconds / median:g3} times the median, without a reason"));
                }
            }
        }

        foreach (string wrong in _wrong.Take(50))
        {
            text.AppendLine(wrong);
        }

        return text.ToString();
    }

    private static double Typical(List<Run> runs)
    {
        int[] amounts = [.. runs.Select(run => run.Work?.Amount ?? 0).Where(amount => amount > 0).Order()];
        return amounts.Length > 0 ? amounts[amounts.Length / 2] : double.PositiveInfinity;
    }

    private static double Time(Func<Finding> compute)
    {
        long start = Stopwatch.GetTimestamp();
        Compute(compute);
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static Finding Compute(Func<Finding> compute)
    {
        try
        {
            return compute();
        }
        catch (ArgumentException refused)
        {
            return new Finding($"refused, {refused.ParamName} is not allowed");
        }
        catch (ComputationRefusedException refused)
        {
            return new Finding($"refused, {Gist(refused.Message)}");
        }
        catch (Exception unforeseen)
        {
            return new Finding("unforeseen") { Wrong = unforeseen.ToString() };
        }
    }

    // A message up to its first figure.
    private static string Gist(string message)
    {
        int end = message.AsSpan().IndexOfAnyInRange('0', '9');
        return message[..Math.Min(end < 0 ? 70 : end, 70)].TrimEnd(' ', '(', '-');
    }

    private sealed record Run(int Number, double Seconds, (int Amount, string Of)? Work, Func<Finding>? Compute, Finding Found);
}

/// <summary>What one design showed.</summary>
/// <param name="Outcome">In a few words, to be counted.</param>
internal sealed record Finding(string Outcome)
{
    /// <summary>What is wrong with its figures; null if nothing is.</summary>
    internal string? Wrong { get; init; }

    /// <summary>The largest departure of its ledger.</summary>
    internal double Closure { get; init; }

    /// <summary>The work that it turned out to take; null if that was told before.</summary>
    internal (int Amount, string Of)? Work { get; init; }
}
