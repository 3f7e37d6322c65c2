using System.Globalization;
using System.Numerics;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Momentum.Dispersion;

/// <summary>
/// The share of cases in which a requirement must hold, and the confidence with which that must be shown: a test that may be
/// looked at again and again as cases come in.
/// </summary>
/// <remarks>
/// <para>Looking at a growing sample until its interval suits is not one test but many, and a bound made for one look is wrong
/// more often than it says. So the looks fall at case counts fixed beforehand, each about twice the one before, and the error is spent over
/// them: look k has the part 1 / (k (k + 1)) of it, and all looks without end have the whole of it together (Boole's
/// inequality). At each look the bounds are those of Clopper and Pearson (Biometrika 26, 1934, from memory) with that look's
/// error. Spending an error over fixed looks is the idea of K. K. G. Lan and D. L. DeMets (Biometrika 70, 1983, from memory),
/// here with the simplest spending that asks for no last look.</para>
/// <para>A wrong "met" and a wrong "not met" each happen at most as often as the confidence leaves, over all looks, whether
/// one stops at the first verdict or not. A case whose computation was refused is unknown: it counts as failed where "met"
/// is judged and as passed where "not met" is.</para>
/// <para>Immutable; equality is by value.</para>
/// </remarks>
public sealed record RequiredShare : IEqualityOperators<RequiredShare, RequiredShare, bool>
{
    /// <summary>No look lies beyond this number of cases.</summary>
    public const long MostCases = 1_000_000_000;

    // Fewer cases show no mean worth printing, whatever share is required.
    private const long LeastFirstLook = 100;

    /// <summary>States share and confidence.</summary>
    /// <param name="share">The share of cases in which the requirement must hold, 0.5 to 0.999999; 0.997 stands for three standard deviations.</param>
    /// <param name="confidence">Of each verdict, 0.5 to 0.999999.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public RequiredShare(double share = 0.997, double confidence = 0.95)
    {
        Share = Checked(share, nameof(share));
        Confidence = Checked(confidence, nameof(confidence));

        // The fewest cases that show the share if none of them fails.
        double fewest = Math.Ceiling(Math.Log(ErrorOf(1)) / Math.Log(share));
        FirstLook = Math.Max(LeastFirstLook, (long)fewest);
    }

    /// <summary>The share of cases in which the requirement must hold, 0 to 1.</summary>
    public double Share { get; }

    /// <summary>Confidence of each verdict over all looks, 0 to 1.</summary>
    public double Confidence { get; }

    /// <summary>Number of cases at the first look: as many as show the share if none fails, at least 100.</summary>
    public long FirstLook { get; }

    /// <summary>Number of cases at a look.</summary>
    /// <param name="look">Number of the look, from 1.</param>
    /// <returns>The number; <see cref="MostCases"/> or less.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such look.</exception>
    public long CasesAt(int look)
    {
        if (look < 1 || look > LooksWithin(MostCases))
        {
            throw new ArgumentOutOfRangeException(nameof(look), look, $"Looks are numbered from 1 to {LooksWithin(MostCases)}.");
        }

        return FirstLook << (look - 1);
    }

    /// <summary>How many looks fall within a number of cases.</summary>
    /// <param name="cases">The number of cases.</param>
    public int LooksWithin(long cases)
    {
        int looks = 0;
        for (long next = FirstLook; next <= Math.Min(cases, MostCases); next *= 2)
        {
            looks++;
        }

        return looks;
    }

    /// <summary>Judges the cases of a look.</summary>
    /// <param name="cases">All cases: those of a look. With fewer than <see cref="FirstLook"/> nothing is shown.</param>
    /// <param name="passed">Cases that meet the requirement.</param>
    /// <param name="unknown">Cases whose outcome is not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The number of cases is no look's, or the parts are negative or more than the whole.
    /// </exception>
    public JudgedShare Judge(long cases, long passed, long unknown = 0)
    {
        if (passed < 0 || unknown < 0 || passed + unknown > cases)
        {
            throw new ArgumentOutOfRangeException(
                nameof(passed), passed, string.Create(CultureInfo.InvariantCulture, $"Of {cases} cases {passed} cannot pass and {unknown} be unknown."));
        }

        int look = LooksWithin(cases);
        if (look == 0)
        {
            return new JudgedShare(ShareVerdict.NotShown, cases, passed, unknown, 0, 1, 0, WouldShow(cases, passed, unknown, 0));
        }

        if (CasesAt(look) != cases)
        {
            throw new ArgumentOutOfRangeException(
                nameof(cases),
                cases,
                string.Create(CultureInfo.InvariantCulture, $"The cases are judged where a look falls, here at {CasesAt(look)} or {2 * CasesAt(look)}, or the error is larger than stated."));
        }

        double error = ErrorOf(look);
        ShareVerdict verdict = VerdictOf(cases, passed, unknown, error);
        return new JudgedShare(
            verdict, cases, passed, unknown, LowerBound(cases, passed, error), 1 - LowerBound(cases, cases - passed - unknown, error), look,
            verdict == ShareVerdict.NotShown ? WouldShow(cases, passed, unknown, look) : null);
    }

    /// <summary>Share and confidence, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{100 * Share:g6} % of cases at {100 * Confidence:g6} % confidence");

    /// <summary>Equality is by share and confidence.</summary>
    public bool Equals(RequiredShare? other) => other is not null && Share == other.Share && Confidence == other.Confidence;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Share, Confidence);

    /// <summary>The error that a look may spend, on either side.</summary>
    private double ErrorOf(int look) => (1 - Confidence) / ((double)look * (look + 1));

    private ShareVerdict VerdictOf(long cases, long passed, long unknown, double error) =>
        AtLeast(cases, passed, Share) <= error ? ShareVerdict.Met
        : AtLeast(cases, cases - passed - unknown, 1 - Share) <= error ? ShareVerdict.NotMet
        : ShareVerdict.NotShown;

    /// <summary>The first later look that would tell if passed, failed and unknown cases kept their shares.</summary>
    private long? WouldShow(long cases, long passed, long unknown, int look)
    {
        if (cases == 0)
        {
            return null;
        }

        int last = LooksWithin(MostCases);
        for (int next = look + 1; next <= last; next++)
        {
            long all = CasesAt(next);
            double grown = (double)all / cases;

            // Rounded against either verdict.
            long passing = (long)Math.Floor(passed * grown);
            long failing = (long)Math.Floor((cases - passed - unknown) * grown);
            if (VerdictOf(all, passing, all - passing - failing, ErrorOf(next)) != ShareVerdict.NotShown)
            {
                return all;
            }
        }

        return null;
    }

    /// <summary>The chance of at least so many passes if each case passes with the given chance.</summary>
    private static double AtLeast(long cases, long passed, double chance) =>
        passed == 0 ? 1 : SpecialFunctions.BetaRegularized(passed, cases - passed + 1, chance);

    /// <summary>The share at which so many passes or more are as likely as the error.</summary>
    private static double LowerBound(long cases, long passed, double error) =>
        passed == 0 ? 0
        : passed == cases ? Math.Pow(error, 1.0 / cases)
        : Beta.InvCDF(passed, cases - passed + 1, error);

    private static double Checked(double value, string name) => value is >= 0.5 and <= 0.999999
        ? value
        : throw new ArgumentOutOfRangeException(name, value, $"The {name} must be from 0.5 to 0.999999, such as {(name == "share" ? "0.997" : "0.95")}.");
}
