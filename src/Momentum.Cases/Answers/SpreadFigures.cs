using System.Text.Json.Nodes;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The numbers of a dispersion.</summary>
internal static class SpreadFigures
{
    private const double RpmPerRadian = 30 / Math.PI;

    public static IReadOnlyList<AnswerFigure> Of(Spread spread)
    {
        Sample<RotationalSpeed> spin = spread.Ensemble.FinalSpin;
        Sample<Force> tension = spread.Ensemble.PeakTension;
        List<AnswerFigure> figures =
        [
            Spin("final_spin_mean_rad_s", "Final spin rate, mean", spin.Mean, ""),
            Spin("final_spin_standard_deviation_rad_s", "Final spin rate, standard deviation", spin.StandardDeviation, ""),
            Spin("final_spin_lowest_rad_s", "Final spin rate, lowest", spin.Minimum, ""),
            Spin("final_spin_highest_rad_s", "Final spin rate, highest", spin.Maximum, ""),
            AnswerFigure.Si("peak_cord_tension_mean_n", "Peak cord tension, mean", tension.Mean.Newtons, "N"),
            AnswerFigure.Si("peak_cord_tension_standard_deviation_n", "Peak cord tension, standard deviation", tension.StandardDeviation.Newtons, "N"),
        ];
        if (spread is { FinalSpinBound: { } spinBound, PeakTensionBound: { } tensionBound })
        {
            figures.Insert(2, Spin("final_spin_magnitude_99_7_percent_rad_s", "Final spin rate, size at 99.7 % of cases", spinBound, "so many stay below it"));
            figures.Add(AnswerFigure.Si("peak_cord_tension_99_7_percent_n", "Peak cord tension at 99.7 % of cases", tensionBound.Newtons, "N", "so many stay below it"));
        }

        return figures;
    }

    public static JsonObject Json(Spread spread)
    {
        var json = new JsonObject
        {
            ["cases"] = spread.Ensemble.Cases,
            ["cases_without_final_spin"] = spread.Ensemble.Failed,
            ["seed"] = spread.Seed,
        };
        foreach (AnswerFigure figure in Of(spread))
        {
            json[figure.Key] = figure.Value;
        }

        json["sensitivity"] = new JsonArray([.. spread.Sensitivity.Select(bar => new JsonObject
        {
            ["input"] = Cases.Keys.KeyDescription.SpellingOf(bar.Input.ToString()),
            ["final_spin_change_at_plus_one_sigma_rad_s"] = bar.AtPlusOneSigma.RadiansPerSecond,
            ["final_spin_change_at_minus_one_sigma_rad_s"] = bar.AtMinusOneSigma.RadiansPerSecond,
            ["final_spin_standard_deviation_rad_s"] = bar.StandardDeviation.RadiansPerSecond,
            ["variance_share"] = bar.VarianceShare,
        })]);
        return json;
    }

    private static AnswerFigure Spin(string key, string name, RotationalSpeed speed, string note) =>
        new(key, name, speed.RadiansPerSecond, speed.RadiansPerSecond * RpmPerRadian, "rpm", note);
}
