using Momentum.Cases.Report.Model;
using Momentum.Cases.Report.Pictures;

namespace Momentum.Cases.Report.Composing;

/// <summary>
/// One curve a cord. Cords that are alike are one curve; of more than can be told apart, a band holds all and those that
/// come highest have curves and names.
/// </summary>
/// <param name="Series">The curves; none if nothing lasts.</param>
/// <param name="Band">What all lie between; null if each has its curve.</param>
/// <param name="Caption">A sentence about the band; empty without one.</param>
internal sealed record CordCurves(IReadOnlyList<ChartSeries> Series, ChartBand? Band, string Caption)
{
    private const int Named = 3;

    // Values closer than this, as a share of the largest, no reader could tell apart.
    private const double Alike = 1e-5;

    /// <summary>The curves.</summary>
    /// <param name="subject">What each is of, in lower case and in the singular.</param>
    /// <param name="times">Times, s.</param>
    /// <param name="values">Of each cord, from the first time on; as many as it has.</param>
    public static CordCurves Of(string subject, double[] times, double[][] values)
    {
        (double[] Values, int Cord)[] lasting = [.. values.Select((v, c) => (v, c)).Where(v => v.v.Length > 1)];
        if (lasting.Length == values.Length && AreAlike(values))
        {
            return new([new ChartSeries($"Each {subject}", times[..values[0].Length], values[0])], null, "");
        }

        if (values.Length <= Ink.CurveCount)
        {
            return new([.. lasting.Select(l => Curve(l.Values, l.Cord))], null, "");
        }

        double[] shared = times[..lasting.Max(l => l.Values.Length)];
        var band = new ChartBand(
            FormattableString.Invariant($"All {lasting.Length} {subject}s"),
            shared,
            [.. shared.Select((_, i) => lasting.Where(l => i < l.Values.Length).Min(l => l.Values[i]))],
            [.. shared.Select((_, i) => lasting.Where(l => i < l.Values.Length).Max(l => l.Values[i]))]);
        return new(
            [.. lasting.OrderByDescending(l => l.Values.Max()).Take(Named).Select(l => Curve(l.Values, l.Cord))],
            band,
            FormattableString.Invariant($"The band holds all {lasting.Length} {subject}s, from the least to the greatest at each time; the {Named} that come highest are named, and the table has every one."));

        ChartSeries Curve(double[] of, int cord) => new(
            FormattableString.Invariant($"{char.ToUpperInvariant(subject[0])}{subject[1..]} {cord + 1}"), times[..of.Length], of, Ink.OfCord(cord) - 1);
    }

    private static bool AreAlike(double[][] values) =>
        values.All(v => v.Length == values[0].Length && v.Zip(values[0], (a, b) => Math.Abs(a - b)).Max() <= Alike * values[0].Max());
}
