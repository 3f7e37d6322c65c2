using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>What the stated tolerances make of the design: an ensemble of cases, and which input matters.</summary>
/// <param name="Ensemble">The cases.</param>
/// <param name="Sensitivity">What each input does alone, the largest share first; empty if at its extremes there is no such motion.</param>
/// <param name="Seed">Chooses the draws.</param>
internal sealed record Spread(DespinEnsemble Ensemble, IReadOnlyList<SensitivityBar> Sensitivity, ulong Seed)
{
    /// <summary>The spin rate, by size, that this share of all cases stays below; null if more cases than that have no final spin.</summary>
    public RotationalSpeed? FinalSpinBound { get; } = RequiredShare.Bound(
        Math.Max(Math.Abs(Ensemble.FinalSpin.Minimum.RadiansPerSecond), Math.Abs(Ensemble.FinalSpin.Maximum.RadiansPerSecond)),
        si => RotationalSpeed.FromRadiansPerSecond(si),
        limit => Ensemble.ProbabilityThatFinalSpinIsWithin(limit));

    /// <summary>The peak tension of one cord that this share of all cases stays below; null if more cases than that have no final spin.</summary>
    public Force? PeakTensionBound { get; } = RequiredShare.Bound(
        Ensemble.PeakTension.Maximum.Newtons,
        si => Force.FromNewtons(si),
        limit => Ensemble.ProbabilityThatPeakTensionIsBelow(limit));
}
