using System.Diagnostics;
using Spectre.Console;

namespace Momentum.Tool.Commands;

/// <summary>Work that may take long: a line on the terminal shows how far it has come, and a limit ends it.</summary>
internal static class LongWork
{
    // What is done by then shows no progress.
    private static readonly TimeSpan _patience = TimeSpan.FromSeconds(1);

    // How long after the limit work that looks at its token is waited for.
    private static readonly TimeSpan _grace = TimeSpan.FromSeconds(1);

    private static readonly TimeSpan _step = TimeSpan.FromMilliseconds(100);

    /// <summary>Does the work.</summary>
    /// <param name="streams">Where progress is shown, if somebody watches.</param>
    /// <param name="what">What is being done.</param>
    /// <param name="limit">How long it may take.</param>
    /// <param name="work">The work; it reports shares from 0 to 1.</param>
    /// <exception cref="TimeLimitException">The limit was reached. Work that does not look at its token is left behind, to end with the program.</exception>
    public static T Of<T>(Streams streams, string what, TimeLimit limit, Func<IProgress<double>, CancellationToken, T> work)
    {
        var clock = Stopwatch.StartNew();
        var source = new CancellationTokenSource(limit.Span);
        var share = new Share();
        Task<T> task = Task.Run(() => work(share, source.Token), CancellationToken.None);
        double end = limit.Seconds + _grace.TotalSeconds;
        if (!HasEnded(task, _patience) && streams.Terminal is { } terminal)
        {
            IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(terminal) });
            console.Progress().AutoClear(true).Columns(new SpinnerColumn(), new TaskDescriptionColumn(), new ProgressBarColumn(), new ElapsedTimeColumn()).Start(context =>
            {
                ProgressTask line = context.AddTask(Markup.Escape(what), maxValue: 1);
                do
                {
                    line.IsIndeterminate = share.Latest == 0;
                    line.Value = share.Latest;
                }
                while (clock.Elapsed.TotalSeconds < end && !HasEnded(task, _step));
            });
        }

        while (!HasEnded(task, _step))
        {
            if (clock.Elapsed.TotalSeconds > end)
            {
                throw new TimeLimitException(limit.Text);
            }
        }

        try
        {
            return task.GetAwaiter().GetResult();
        }
        catch (OperationCanceledException) when (source.IsCancellationRequested)
        {
            throw new TimeLimitException(limit.Text);
        }
    }

    private static bool HasEnded(Task task, TimeSpan within) => Task.WaitAny([task], within) == 0;

    private sealed class Share : IProgress<double>
    {
        private double _latest;

        public double Latest => Volatile.Read(ref _latest);

        public void Report(double value) => Volatile.Write(ref _latest, value);
    }
}
