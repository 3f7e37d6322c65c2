using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>A motion against time: evenly spaced instants, and those where something happens.</summary>
/// <param name="Columns">Keys of the columns, each with its SI unit.</param>
/// <param name="Rows">In order of time, computed as they are asked for: a long history is never whole in memory.</param>
internal sealed record History(IReadOnlyList<string> Columns, IEnumerable<HistoryRow> Rows)
{
    private const int Together = 4096;

    /// <summary>How many rows there are.</summary>
    public required int Count { get; init; }

    /// <summary>The rows of these instants, some thousands at a time.</summary>
    /// <param name="instants">When, and what happens then.</param>
    /// <param name="states">The states at some times.</param>
    /// <param name="row">The row of a state.</param>
    public static IEnumerable<HistoryRow> RowsOf<TState>(
        IReadOnlyList<(double Time, string Event)> instants, Func<IEnumerable<Duration>, IEnumerable<TState>> states, Func<TState, string, HistoryRow> row) =>
        instants.Chunk(Together).SelectMany(some => states(some.Select(i => Duration.FromSeconds(i.Time))).Zip(some, (state, instant) => row(state, instant.Event)));

    /// <summary>Evenly spaced instants with the events among them.</summary>
    /// <param name="samples">How many evenly spaced ones, two or more.</param>
    /// <param name="last">The last, s.</param>
    /// <param name="events">When something happens, s, and what; those later than the last are left out.</param>
    public static IReadOnlyList<(double Time, string Event)> Instants(int samples, double last, IEnumerable<(double Time, string Name)> events)
    {
        var instants = new List<(double Time, string Event)>();
        for (int i = 0; i < samples; i++)
        {
            // The quotient alone may come out a rounding error beyond the last.
            instants.Add((i == samples - 1 ? last : Math.Min(last, last * i / (samples - 1)), ""));
        }

        foreach ((double time, string name) in events.Where(e => e.Time <= last))
        {
            int same = instants.FindIndex(i => i.Time == time);
            if (same < 0)
            {
                instants.Add((time, name));
            }
            else
            {
                instants[same] = (time, instants[same].Event.Length == 0 ? name : $"{instants[same].Event}; {name}");
            }
        }

        instants.Sort((a, b) => a.Time.CompareTo(b.Time));
        return instants;
    }
}
