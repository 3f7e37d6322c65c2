namespace Momentum.Tests;

internal static class Allocation
{
    /// <summary>
    /// Bytes that a piece of work takes on this thread once all is compiled: the least of five runs, for the runtime now and
    /// then takes some of its own while it compiles anew what runs often. Work that allocates does so every time.
    /// </summary>
    internal static long Of(Action work)
    {
        const int Runs = 5;
        work();
        long least = long.MaxValue;
        for (int i = 0; i < Runs; i++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            work();
            least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
        }

        return least;
    }
}
