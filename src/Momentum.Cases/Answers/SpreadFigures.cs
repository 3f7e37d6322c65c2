using System.Globalization;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The numbers of a spread.</summary>
internal static class SpreadFigures
{
    private const double RpmPerRadian = 30 / Math.PI;

    /// <summary>How many cases of which kind and draws, as one line.</summary>
    public static string Heading(Spread spread)
    {
        DeploymentEnsemble e = spread.Ensemble;
        string[] kinds =
        [
            .. Kind(e.WrappedBack, "wrap back"), .. Kind(e.Struck, "strike"), .. Kind(e.NotLetGo, "do not let go"),
            .. Kind(e.Refused, "are refused and unknown"), .. Kind(e.NotPhysical, "have draws that do not exist, a defect of the tolerances or of this program"),
        ];
        string without = kinds.Length == 0 ? "" : "; " + string.Join(", ", kinds);
        return string.Create(CultureInfo.InvariantCulture, $"{e.Cases} cases drawn from the stated tolerances, computed {spread.Model.Name} (seed {spread.Seed}{without})");

        static IEnumerable<string> Kind(int count, string words) => count == 0 ? [] : [string.Create(CultureInfo.InvariantCulture, $"{count} {words}")];
    }

    /// <summary>The figures, and what each input does.</summary>
    public static AnswerGroup Of(Spread spread)
    {
        DeploymentEnsemble ensemble = spread.Ensemble;
        Sample<RotationalSpeed> spin = ensemble.FinalSpin;
        Sample<Force> tension = ensemble.PeakTension;
        string share = spread.Required.Share.ToString("0.######%", CultureInfo.InvariantCulture).Replace("%", " %", StringComparison.Ordinal);
        string below = $"{share} of all cases are below";
        List<AnswerFigure> figures =
        [
            Rate("final_spin_mean_rad_s", "Final spin rate, mean", spin.Mean, ""),
            .. spin.Count > 1 ? [Rate("final_spin_standard_deviation_rad_s", "Final spin rate, standard deviation", spin.StandardDeviation, "")] : Array.Empty<AnswerFigure>(),
            Rate("final_spin_lowest_rad_s", "Final spin rate, lowest", spin.Minimum, ""),
            Rate("final_spin_highest_rad_s", "Final spin rate, highest", spin.Maximum, ""),
        ];

        // With more failures than that no limit holds in so many cases.
        if (spread.SpinBound is { } spinBound)
        {
            figures.Add(Rate("spin_magnitude_at_share_rad_s", spread.Model.IsSpatial ? "Spin rate ever after let-go, size" : "Final spin rate, size", spinBound, below));
        }

        if (spread is { NutationBound: { } nutation, TransverseRateBound: { } transverse } && ensemble.TransverseRate.Maximum > RotationalSpeed.Zero)
        {
            Angle median = ensemble.Nutation.Quantile(0.5);
            figures.AddRange(
            [
                new("nutation_median_rad", "Nutation half-angle after let-go, median", median.Radians, median.Degrees, "deg"),
                new("nutation_at_share_rad", "Nutation half-angle after let-go", nutation.Radians, nutation.Degrees, "deg", below),
                Rate("transverse_rate_median_rad_s", "Transverse rate after let-go, median", ensemble.TransverseRate.Quantile(0.5), ""),
                Rate("transverse_rate_at_share_rad_s", "Transverse rate after let-go", transverse, below),
            ]);
        }

        figures.Add(AnswerFigure.Si("peak_tension_mean_n", "Peak cord tension, mean", tension.Mean.Newtons, "N"));
        if (tension.Count > 1)
        {
            figures.Add(AnswerFigure.Si("peak_tension_standard_deviation_n", "Peak cord tension, standard deviation", tension.StandardDeviation.Newtons, "N"));
        }

        if (spread.PeakTensionBound is { } tensionBound)
        {
            figures.Add(AnswerFigure.Si("peak_tension_at_share_n", "Peak cord tension", tensionBound.Newtons, "N", below));
        }

        if (spread.SafetyFactorBound is { } factor)
        {
            figures.Add(AnswerFigure.Si("cord_safety_factor_at_share", "Cord safety factor", factor, "", $"{share} of all cases are above"));
        }

        return new AnswerGroup("dispersion", "Spread: " + Heading(spread),
        [
            new AnswerCount("cases", "Cases", ensemble.Cases),
            new AnswerWord("model", "Computed", spread.Model.Name),
            new AnswerCount("seed", "Seed", spread.Seed, "chooses the draws"),
            AnswerFigure.Si("required_share", "Share of cases required", spread.Required.Share, ""),
            AnswerFigure.Si("confidence", "Confidence of a verdict", spread.Required.Confidence, "", "over all looks together"),
            new AnswerCount("cases_wrapped_back", "Cases in which a cord wraps back", ensemble.WrappedBack, "counted as missed"),
            new AnswerCount("cases_struck", "Cases in which something is struck", ensemble.Struck, "counted as missed"),
            new AnswerCount("cases_not_let_go", "Cases in which a weight is not let go", ensemble.NotLetGo, "counted as missed"),
            new AnswerCount("cases_refused", "Cases that the computation refused", ensemble.Refused, "unknown: counted against either verdict"),
            new AnswerCount("cases_not_physical", "Cases whose draws do not exist", ensemble.NotPhysical, "unknown; there should be none"),
            new AnswerCount("cases_with_a_slack_cord", "Cases in which a cord goes slack", ensemble.WentSlack),
            new AnswerCount("cases_touching_the_deck", "Cases in which a cord touches the deck", ensemble.TouchedDeck),
            .. figures,
            .. spread.Joint is { } joint ? (AnswerGroup[])[Joint(joint, spread.Required)] : [],
            new AnswerTable("inputs", "Each input alone, one standard deviation either way", [.. spread.Effects.Select(e => Row(e, spread.Model.IsSpatial))]),
            .. spread.DrawnOtherwise.Count > 0
                ? (AnswerNode[])[new AnswerTable("drawn_otherwise", "Where what was drawn is not what was stated", [.. spread.DrawnOtherwise.Select(t => AnswerTable.Row(new AnswerWord("text", "Because a limit is near", t)))])]
                : [],
        ]);

        static AnswerFigure Rate(string key, string name, RotationalSpeed speed, string note) =>
            new(key, name, speed.RadiansPerSecond, speed.RadiansPerSecond * RpmPerRadian, "rpm", note);
    }

    /// <summary>The spread of a spin rate.</summary>
    public static FigureSpread OfSpin(RotationalSpeed deviation) => new(deviation.RadiansPerSecond, deviation.RadiansPerSecond * RpmPerRadian);

    private static AnswerGroup Joint(JudgedShare share, RequiredShare required) => new("all_requirements", "All requirements together",
    [
        AnswerFigure.Si("share", "Share of the cases", share.Estimate, ""),
        AnswerFigure.Si("lower_bound", "At least", share.Lower, "", "of all cases"),
        AnswerFigure.Si("upper_bound", "At most", share.Upper, "", "of all cases"),
    ], RequirementJudge.Words(share, required));

    private static AnswerGroup Row(InputEffect effect, bool spatial) => AnswerTable.Row(
    [
        new AnswerWord("input", "Input", effect.Input.Path),
        new AnswerWord("stated", "Stated", effect.Input.Text.Length > 0 ? effect.Input.Text : "any"),
        Change("final_spin_change_at_minus_one_sigma_rad_s", "Final spin, less", effect.Below),
        Change("final_spin_change_at_plus_one_sigma_rad_s", "Final spin, more", effect.Above),
        spatial ? Change("transverse_rate_change_rad_s", "Transverse rate", effect.Transverse) : null,
    ]);

    private static AnswerFigure Change(string key, string name, RotationalSpeed change) =>
        new(key, name, change.RadiansPerSecond, change.RadiansPerSecond * RpmPerRadian, "rpm");
}
