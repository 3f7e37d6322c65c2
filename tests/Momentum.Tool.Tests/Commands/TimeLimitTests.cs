using Momentum.Tool.Commands;

namespace Momentum.Tool.Tests.Commands;

/// <summary>A limit of time ends the work, whether it looks at its token or not.</summary>
public sealed class TimeLimitTests
{
    private static readonly Streams _streams = new(Stream.Null, TextWriter.Null, TextWriter.Null);

    [Fact]
    public void Work_within_the_limit_gives_its_result() =>
        Assert.Equal(7, LongWork.Of(_streams, "", TimeLimit.Of("1000 s"), (_, _) => 7));

    [Fact]
    public void Work_that_looks_at_its_token_ends_at_the_limit() =>
        Assert.Throws<TimeLimitException>(() => LongWork.Of(_streams, "", TimeLimit.Of("20 ms"), (_, token) =>
        {
            token.WaitHandle.WaitOne();
            token.ThrowIfCancellationRequested();
            return 0;
        }));

    [Fact]
    public void Work_that_never_ends_is_left_behind()
    {
        using var never = new ManualResetEventSlim();
        Assert.Throws<TimeLimitException>(() => LongWork.Of(_streams, "", TimeLimit.Of("20 ms"), (_, _) =>
        {
            never.Wait(CancellationToken.None);
            return 0;
        }));
        never.Set();
    }

    [Fact]
    public void A_refusal_in_the_work_comes_out_as_it_is() =>
        Assert.Throws<ComputationRefusedException>(() => LongWork.Of<int>(_streams, "", TimeLimit.None, (_, _) => throw new ComputationRefusedException("no")));

    [Fact]
    public void A_case_beyond_the_limit_exits_with_3_and_says_how_to_allow_more()
    {
        Invocation run = Invocation.WithInput(SampleCase.Text, "size", "-", "--cases", "10000000", "--time-limit", "50 ms");

        Assert.Equal(3, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.Contains("stopped at the time limit of 50 ms", run.Error, StringComparison.Ordinal);
        Assert.Contains("--time-limit", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5")]
    [InlineData("5 m")]
    [InlineData("0 s")]
    [InlineData("-1 s")]
    [InlineData("2 s +/- 1 s")]
    [InlineData("100000 h")]
    public void A_limit_that_is_no_duration_is_refused(string text)
    {
        Invocation run = Invocation.WithInput(SampleCase.Text, "run", "-", "--time-limit", text);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--time-limit", run.Error, StringComparison.Ordinal);
    }
}
