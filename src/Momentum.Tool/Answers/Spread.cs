using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Tool.Answers;

/// <summary>What the stated tolerances make of the design: an ensemble of cases, and which input matters.</summary>
/// <param name="Ensemble">The cases.</param>
/// <param name="Sensitivity">What each input does alone, the largest share first; empty if at its extremes there is no such motion.</param>
/// <param name="Seed">Chooses the draws.</param>
internal sealed record Spread(DespinEnsemble Ensemble, IReadOnlyList<SensitivityBar> Sensitivity, ulong Seed)
{
    /// <summary>The share of cases in which a requirement must hold.</summary>
    public const double Share = 0.997;

    /// <summary>The spin rate, by size, that this share of all cases stays below; infinite if more cases than that have no final spin.</summary>
    public RotationalSpeed FinalSpinBound { get; } = RotationalSpeed.FromRadiansPerSecond(Bound(
        Math.Max(Math.Abs(Ensemble.FinalSpin.Minimum.RadiansPerSecond), Math.Abs(Ensemble.FinalSpin.Maximum.RadiansPerSecond)),
        limit => Ensemble.ProbabilityThatFinalSpinIsWithin(RotationalSpeed.FromRadiansPerSecond(limit)).Estimate));

    /// <summary>The peak tension of one cord that this share of all cases stays below; infinite if more cases than that have no final spin.</summary>
    public Force PeakTensionBound { get; } = Force.FromNewtons(Bound(
        Ensemble.PeakTension.Maximum.Newtons,
        limit => Ensemble.ProbabilityThatPeakTensionIsBelow(Force.FromNewtons(limit)).Estimate));

    /// <summary>The least limit that holds in the share of cases, by halving.</summary>
    private static double Bound(double largest, Func<double, double> shareBelow)
    {
        double high = largest * (1 + 1e-12);
        if (!(high > 0) || shareBelow(high) < Share)
        {
            return high > 0 ? double.PositiveInfinity : 0;
        }

        double low = 0;
        for (int i = 0; i < 60 && high - low > 1e-15 * largest; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = shareBelow(middle) < Share ? (middle, high) : (low, middle);
        }

        return high;
    }
}
