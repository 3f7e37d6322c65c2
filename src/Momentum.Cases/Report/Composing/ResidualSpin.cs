using System.Globalization;
using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>How often the final spin rate came out where, over the cases drawn from the stated tolerances.</summary>
internal static class ResidualSpin
{
    private const int Bins = 41;
    private const double RpmPerRadian = 30 / Math.PI;

    /// <summary>The histogram; null if the case states no tolerance.</summary>
    public static Histogram? Of(Case given, Spread? spread)
    {
        if (spread is null || spread.Ensemble.FinalSpin.Count < 2 || !(spread.Ensemble.FinalSpin.StandardDeviation.RadiansPerSecond > 0))
        {
            return null;
        }

        IReadOnlyList<HistogramBin<RotationalSpeed>> bins = spread.Ensemble.FinalSpin.Histogram(Bins);
        double lowest = bins[0].From.RadiansPerSecond * RpmPerRadian;
        double highest = bins[^1].To.RadiansPerSecond * RpmPerRadian;
        List<ChartEvent> limits = [];
        if (given.Require?.FinalRate is { } limit)
        {
            double bound = limit.Bound.RadiansPerSecond * RpmPerRadian;
            limits.AddRange(new[] { -bound, bound }.Where(x => x > lowest && x < highest).Select(x => new ChartEvent(x, "limit")));
        }

        string cases = spread.Ensemble.Cases.ToString("#,0", CultureInfo.InvariantCulture).Replace(',', ' ');
        string failed = spread.Ensemble.Failed == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {spread.Ensemble.Failed} of them have no final spin and are not drawn.");
        return new Histogram
        {
            Title = "Residual spin rate",
            X = new ChartAxis("Final spin rate", "rpm"),
            Edges = [lowest, .. bins.Select(b => b.To.RadiansPerSecond * RpmPerRadian)],
            Counts = [.. bins.Select(b => (long)b.Count)],
            Events = limits,
            Caption = $"{cases} cases drawn from the stated tolerances.{failed}",
        };
    }
}
