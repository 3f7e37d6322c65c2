namespace Momentum.Dispersion;

/// <summary>Computes what each number of a range stands for, on as many threads as there are, and gives it out in the order of the numbers.</summary>
/// <remarks>
/// What a number gives must depend on the number alone: then any piece of a run, on any number of threads, gives the same. Only
/// the cases under way are kept. In a browser, which has one thread, it computes on the caller's.
/// </remarks>
public static class NumberedCases
{
    // So many cases are under way before the first of them is given out; and so many a thread takes at a time.
    private const int Batch = 512;
    private const int Chunk = 8;

    /// <summary>The results, computed as they are asked for.</summary>
    /// <typeparam name="TResult">What a number gives.</typeparam>
    /// <param name="first">The first number, from zero.</param>
    /// <param name="count">How many.</param>
    /// <param name="compute">What a number gives; called from many threads at once.</param>
    /// <param name="threads">On how many threads at most; zero for as many as the machine has.</param>
    /// <param name="cancellation">Stops it; what was given out before stands.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IEnumerable<TResult> Run<TResult>(
        long first, long count, Func<long, TResult> compute, int threads = 0, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(compute);
        CounterRandom.RequireCase(first, nameof(first));
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        CounterRandom.RequireCase(first + count, nameof(count));
        return Stream(first, count, compute, OperatingSystem.IsBrowser() ? 1 : threads, cancellation);
    }

    private static IEnumerable<TResult> Stream<TResult>(long first, long count, Func<long, TResult> compute, int threads, CancellationToken cancellation)
    {
        var batch = new TResult[Math.Min(Batch, count)];
        var options = new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = threads == 0 ? -1 : threads };
        for (long done = 0; done < count; done += batch.Length)
        {
            int size = (int)Math.Min(batch.Length, count - done);
            long start = first + done;
            if (threads == 1)
            {
                for (int i = 0; i < size; i++)
                {
                    cancellation.ThrowIfCancellationRequested();
                    batch[i] = compute(start + i);
                }
            }
            else
            {
                Parallel.For(0, (size + Chunk - 1) / Chunk, options, chunk =>
                {
                    for (int i = chunk * Chunk; i < Math.Min(size, (chunk + 1) * Chunk); i++)
                    {
                        batch[i] = compute(start + i);
                    }
                });
            }

            for (int i = 0; i < size; i++)
            {
                yield return batch[i];
            }
        }
    }
}
