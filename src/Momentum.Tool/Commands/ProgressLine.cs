using Spectre.Console;

namespace Momentum.Tool.Commands;

/// <summary>A line that shows how far long work has come: on a terminal only, on standard error.</summary>
internal static class ProgressLine
{
    /// <summary>Does the work, showing its progress if somebody watches and it is long enough to be worth it.</summary>
    /// <param name="streams">Where messages go.</param>
    /// <param name="what">What is being done.</param>
    /// <param name="isLong">Whether it takes more than a moment.</param>
    /// <param name="work">The work; it reports shares from 0 to 1.</param>
    public static T Of<T>(Streams streams, string what, bool isLong, Func<IProgress<double>?, T> work)
    {
        if (!streams.IsTerminal || !isLong)
        {
            return work(null);
        }

        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(streams.Error) });
        return console.Progress().AutoClear(true).Start(context =>
        {
            ProgressTask task = context.AddTask(Markup.Escape(what), maxValue: 1);
            return work(new Share(task));
        });
    }

    /// <summary>Reports at once, on the thread that works.</summary>
    private sealed class Share(ProgressTask task) : IProgress<double>
    {
        public void Report(double value) => task.Value = value;
    }
}
