using System.Runtime.ExceptionServices;

namespace Momentum.Tests;

/// <summary>Runs what must come to an end, so that a hang fails one test and does not stop all.</summary>
internal static class Bounded
{
    // Far beyond what anything here takes on the slowest machine.
    private static readonly TimeSpan _limit = TimeSpan.FromMinutes(2);

    /// <summary>Runs it on a thread of its own; what it throws is thrown here.</summary>
    public static void Run(Action action)
    {
        Exception? thrown = null;
        Thread thread = new(() => thrown = Record.Exception(action)) { IsBackground = true };
        thread.Start();
        Assert.True(thread.Join(_limit), $"It did not come to an end in {_limit.TotalMinutes} minutes.");
        if (thrown is not null)
        {
            ExceptionDispatchInfo.Throw(thrown);
        }
    }
}
