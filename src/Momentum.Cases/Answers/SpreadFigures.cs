using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The numbers of a dispersion.</summary>
internal static class SpreadFigures
{
    private const double RpmPerRadian = 30 / Math.PI;

    public static AnswerGroup Of(Spread spread)
    {
        Sample<RotationalSpeed> spin = spread.Ensemble.FinalSpin;
        Sample<Force> tension = spread.Ensemble.PeakTension;
        List<AnswerFigure> figures =
        [
            Spin("final_spin_mean_rad_s", "Final spin rate, mean", spin.Mean, ""),
            .. spin.Count > 1 ? [Spin("final_spin_standard_deviation_rad_s", "Final spin rate, standard deviation", spin.StandardDeviation, "")] : Array.Empty<AnswerFigure>(),
            Spin("final_spin_lowest_rad_s", "Final spin rate, lowest", spin.Minimum, ""),
            Spin("final_spin_highest_rad_s", "Final spin rate, highest", spin.Maximum, ""),
            AnswerFigure.Si("peak_cord_tension_mean_n", "Peak cord tension, mean", tension.Mean.Newtons, "N"),
            .. tension.Count > 1 ? [AnswerFigure.Si("peak_cord_tension_standard_deviation_n", "Peak cord tension, standard deviation", tension.StandardDeviation.Newtons, "N")] : Array.Empty<AnswerFigure>(),
        ];
        if (spread is { FinalSpinBound: { } spinBound, PeakTensionBound: { } tensionBound })
        {
            figures.Insert(2, Spin("final_spin_magnitude_99_7_percent_rad_s", "Final spin rate, size at 99.7 % of cases", spinBound, "so many stay below it"));
            figures.Add(AnswerFigure.Si("peak_cord_tension_99_7_percent_n", "Peak cord tension at 99.7 % of cases", tensionBound.Newtons, "N", "so many stay below it"));
        }

        DespinEnsemble ensemble = spread.Ensemble;
        return new AnswerGroup("dispersion", "Spread over cases drawn from the stated tolerances",
        [
            new AnswerCount("cases", "Cases", ensemble.Cases),
            new AnswerCount("cases_without_final_spin", "Cases without a final spin", ensemble.Failed),
            new AnswerCount("seed", "Seed", spread.Seed, "chooses the draws"),
            .. figures,
            new AnswerTable("sensitivity", "Where the spread of the final spin comes from", [.. spread.Sensitivity.Select(Row)], "each input alone"),
        ]);
    }

    /// <summary>The spread of a spin rate.</summary>
    public static FigureSpread OfSpin(RotationalSpeed deviation) => new(deviation.RadiansPerSecond, deviation.RadiansPerSecond * RpmPerRadian);

    private static AnswerGroup Row(SensitivityBar bar) => AnswerTable.Row(
        new AnswerWord("input", "Input", Keys.KeyDescription.SpellingOf(bar.Input.ToString())),
        Spin("final_spin_change_at_plus_one_sigma_rad_s", "One sigma more", bar.AtPlusOneSigma, ""),
        Spin("final_spin_change_at_minus_one_sigma_rad_s", "One sigma less", bar.AtMinusOneSigma, ""),
        Spin("final_spin_standard_deviation_rad_s", "Standard deviation", bar.StandardDeviation, ""),
        AnswerFigure.Si("variance_share", "Share of the variance", bar.VarianceShare, ""));

    private static AnswerFigure Spin(string key, string name, RotationalSpeed speed, string note) =>
        new(key, name, speed.RadiansPerSecond, speed.RadiansPerSecond * RpmPerRadian, "rpm", note);
}
