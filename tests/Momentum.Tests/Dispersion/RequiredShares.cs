using MathNet.Numerics.Distributions;
using Momentum.Dispersion;

namespace Momentum.Tests.Dispersion;

/// <summary>A verdict on a share claims only what its cases can show, however often one looks.</summary>
public class RequiredShares
{
    private static readonly RequiredShare _usual = new();

    // So many looks; a run goes on to the last unless a verdict stops it.
    private const int Looks = 7;

    [Theory]
    [InlineData(0.997, 0.95)]
    [InlineData(0.9, 0.95)]
    [InlineData(0.9987, 0.8)]
    public void With_the_true_share_just_below_the_required_one_met_is_said_at_most_as_often_as_the_confidence_leaves(double share, double confidence)
    {
        var required = new RequiredShare(share, confidence);
        const int Runs = 1500;
        var random = new Random(20);

        int wrong = Enumerable.Range(0, Runs).Count(_ => FirstVerdict(required, random, share * (1 - 1e-9), 0) == ShareVerdict.Met);

        // Three standard errors of the count, were the error spent to the last; it is not, so that this never fails by chance.
        double allowed = 1 - confidence;
        Assert.InRange((double)wrong / Runs, 0, allowed + (3 * Math.Sqrt(allowed * (1 - allowed) / Runs)));
        Assert.True(wrong > 0, "A test that never errs asks for more cases than it must.");
    }

    [Fact]
    public void With_the_true_share_just_above_the_required_one_not_met_is_said_at_most_as_often_as_the_confidence_leaves()
    {
        const int Runs = 1500;
        var random = new Random(21);

        int wrong = Enumerable.Range(0, Runs).Count(_ => FirstVerdict(_usual, random, _usual.Share, 0) == ShareVerdict.NotMet);

        Assert.InRange((double)wrong / Runs, 0, 0.05 + (3 * Math.Sqrt(0.05 * 0.95 / Runs)));
    }

    [Fact]
    public void A_plain_interval_looked_at_again_and_again_is_wrong_more_often_than_it_says()
    {
        const int Runs = 1500;
        var random = new Random(22);

        // What the looks are for: the bound of one look at 95 %, taken at each of them.
        int wrong = 0;
        for (int run = 0; run < Runs; run++)
        {
            long failed = 0;
            for (int look = 1; look <= Looks; look++)
            {
                long cases = _usual.CasesAt(look);
                failed += Failures(random, cases - (look == 1 ? 0 : _usual.CasesAt(look - 1)), 1 - _usual.Share);
                if (Binomial.CDF(1 - _usual.Share, (int)cases, failed) <= 0.05)
                {
                    wrong++;
                    break;
                }
            }
        }

        Assert.True(wrong > 0.08 * Runs, $"{wrong} of {Runs}");
    }

    [Fact]
    public void Cases_that_were_refused_never_help_a_verdict()
    {
        // One in a hundred refused, and all others pass: nobody knows whether 99.7 % meet it.
        Assert.Equal(ShareVerdict.NotShown, _usual.Judge(_usual.FirstLook, _usual.FirstLook - 12, unknown: 12).Verdict);
        Assert.Null(_usual.Judge(_usual.FirstLook, _usual.FirstLook - 12, unknown: 12).CasesThatWouldShow);

        // The same number failed: it is not met, though some are refused besides.
        Assert.Equal(ShareVerdict.NotMet, _usual.Judge(_usual.FirstLook, _usual.FirstLook - 24, unknown: 12).Verdict);
        Assert.Equal(ShareVerdict.Met, _usual.Judge(_usual.FirstLook, _usual.FirstLook).Verdict);
    }

    [Fact]
    public void A_thousand_cases_do_not_show_the_usual_share_and_the_first_look_does_without_a_failure()
    {
        Assert.Equal(ShareVerdict.NotShown, _usual.Judge(1000, 1000).Verdict);
        Assert.Equal(_usual.FirstLook, _usual.Judge(1000, 1000).CasesThatWouldShow);

        // Half of the error is the first look's: 0.997^n = 0.025.
        Assert.Equal((long)Math.Ceiling(Math.Log(0.025) / Math.Log(0.997)), _usual.FirstLook);
        Assert.Equal(ShareVerdict.NotShown, _usual.Judge(_usual.FirstLook, _usual.FirstLook - 1).Verdict);
    }

    [Fact]
    public void What_would_show_it_shows_it_if_the_share_holds()
    {
        JudgedShare open = _usual.Judge(_usual.FirstLook, _usual.FirstLook - 2);
        Assert.Equal(ShareVerdict.NotShown, open.Verdict);
        long more = open.CasesThatWouldShow!.Value;

        Assert.Equal(ShareVerdict.Met, _usual.Judge(more, (long)(open.Estimate * more)).Verdict);
        Assert.Equal(ShareVerdict.NotShown, _usual.Judge(more / 2, (long)(open.Estimate * (more / 2))).Verdict);
    }

    [Fact]
    public void The_bounds_hold_the_verdict()
    {
        for (int failed = 0; failed < 40; failed++)
        {
            JudgedShare judged = _usual.Judge(_usual.CasesAt(3), _usual.CasesAt(3) - failed);

            Assert.Equal(judged.Verdict == ShareVerdict.Met, judged.Lower >= 0.997);
            Assert.Equal(judged.Verdict == ShareVerdict.NotMet, judged.Upper < 0.997);
            Assert.InRange(judged.Estimate, judged.Lower, judged.Upper);
        }
    }

    // What Clopper and Pearson define (Biometrika 26, 1934, from memory), by the sum of the binomial tail.
    [Fact]
    public void The_bound_is_the_share_at_which_so_many_passes_are_as_likely_as_the_error()
    {
        JudgedShare judged = new RequiredShare(0.5, 0.9).Judge(100, 90);

        // The tail of the binomial at the bound is the error of the first look, half of a tenth.
        Assert.Equal(0.05, 1 - Binomial.CDF(judged.Lower, 100, 89), 1e-9);
        Assert.Equal(0.05, Binomial.CDF(judged.Upper, 100, 90), 1e-9);
    }

    [Fact]
    public void Cases_are_judged_only_where_a_look_falls() =>
        Assert.Contains("where a look falls", Assert.Throws<ArgumentOutOfRangeException>(() => _usual.Judge(2000, 2000)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(1.0)]
    [InlineData(0.4)]
    [InlineData(double.NaN)]
    public void A_share_that_cannot_be_shown_is_refused(double share) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new RequiredShare(share));

    private static ShareVerdict FirstVerdict(RequiredShare required, Random random, double share, double refused)
    {
        long failed = 0;
        long unknown = 0;
        for (int look = 1; look <= Looks; look++)
        {
            long more = required.CasesAt(look) - (look == 1 ? 0 : required.CasesAt(look - 1));
            failed += Failures(random, more, 1 - share);
            unknown += Failures(random, more, refused);
            long cases = required.CasesAt(look);
            JudgedShare judged = required.Judge(cases, cases - failed - unknown, unknown);
            if (judged.Verdict != ShareVerdict.NotShown)
            {
                return judged.Verdict;
            }
        }

        return ShareVerdict.NotShown;
    }

    /// <summary>Failures among so many cases, by the gaps between them.</summary>
    private static long Failures(Random random, long cases, double chance)
    {
        long failures = 0;
        if (chance == 0)
        {
            return 0;
        }

        for (double at = Gap(); at <= cases; at += Gap())
        {
            failures++;
        }

        return failures;

        double Gap() => Math.Ceiling(Math.Log(1 - random.NextDouble()) / Math.Log(1 - chance));
    }
}
