using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>What the stated tolerances, and a wobble that may point anywhere, make of the whole motion.</summary>
/// <param name="Ensemble">The cases, each a deployment in three dimensions.</param>
/// <param name="Seed">Chooses the draws.</param>
internal sealed record WholeSpread(DeploymentEnsemble Ensemble, ulong Seed)
{
    /// <summary>The spin rate, by size and over all time after let-go, that the required share of all cases stays below.</summary>
    public RotationalSpeed? SpinBound { get; } = RequiredShare.Bound(
        Ensemble.LargestSpin.Maximum.RadiansPerSecond,
        si => RotationalSpeed.FromRadiansPerSecond(si),
        limit => Ensemble.ProbabilityThatSpinIsWithin(limit));

    /// <summary>The transverse rate that it stays below.</summary>
    public RotationalSpeed? TransverseRateBound { get; } = RequiredShare.Bound(
        Ensemble.TransverseRate.Maximum.RadiansPerSecond,
        si => RotationalSpeed.FromRadiansPerSecond(si),
        limit => Ensemble.ProbabilityThatTransverseRateIsBelow(limit));

    /// <summary>The nutation half-angle that it stays below.</summary>
    public Angle? NutationBound { get; } = RequiredShare.Bound(
        Ensemble.Nutation.Maximum.Radians,
        si => Angle.FromRadians(si),
        limit => Ensemble.ProbabilityThatNutationIsBelow(limit));

    /// <summary>The peak tension of any cord that it stays below.</summary>
    public Force? PeakTensionBound { get; } = RequiredShare.Bound(
        Ensemble.PeakTension.Maximum.Newtons,
        si => Force.FromNewtons(si),
        limit => Ensemble.ProbabilityThatPeakTensionIsBelow(limit));
}
