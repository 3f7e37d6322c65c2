using System.Globalization;
using System.Numerics;

namespace Momentum.Dispersion;

/// <summary>What a number of cases says of a required share.</summary>
/// <param name="Verdict">Met, not met or not shown.</param>
/// <param name="Cases">Number of cases.</param>
/// <param name="Passed">Cases that meet the requirement.</param>
/// <param name="Unknown">Cases whose outcome is not known, because the computation refused them.</param>
/// <param name="Lower">
/// Lower bound of the share, 0 to 1, at the confidence of the <see cref="RequiredShare"/> over all its looks; an unknown case
/// counts as failed. Zero where the cases are fewer than those of the first look.
/// </param>
/// <param name="Upper">Upper bound likewise; an unknown case counts as passed. One where the cases are too few.</param>
/// <param name="Look">Number of the look, from 1; zero if the cases are fewer than those of the first one.</param>
/// <param name="CasesThatWouldShow">
/// Cases of the later look that would tell, met or not met, if the shares seen held; null if none up to
/// <see cref="RequiredShare.MostCases"/> would, or if the verdict stands.
/// </param>
/// <remarks><c>default</c> is nothing shown by no cases. Equality is by all members.</remarks>
public readonly record struct JudgedShare(
    ShareVerdict Verdict, long Cases, long Passed, long Unknown, double Lower, double Upper, int Look, long? CasesThatWouldShow)
    : IEqualityOperators<JudgedShare, JudgedShare, bool>
{
    /// <summary>Cases that do not meet the requirement.</summary>
    public long Failed => Cases - Passed - Unknown;

    /// <summary>The share of the cases that passed, 0 to 1; NaN is never returned: zero without cases.</summary>
    public double Estimate => Cases == 0 ? 0 : (double)Passed / Cases;

    /// <summary>Verdict, counts and bounds, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Verdict}: {Passed} of {Cases} cases pass, {Unknown} unknown; the share is {100 * Lower:g6} % to {100 * Upper:g6} %");
}
