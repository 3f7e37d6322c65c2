using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Tool.Answers;

/// <summary>What the stated tolerances, and a wobble that may point anywhere, make of the whole motion.</summary>
/// <param name="Ensemble">The cases, each a deployment in three dimensions.</param>
/// <param name="Seed">Chooses the draws.</param>
internal sealed record WholeSpread(DeploymentEnsemble Ensemble, ulong Seed)
{
    /// <summary>The spin rate, by size and over all time after let-go, that the required share of all cases stays below.</summary>
    public RotationalSpeed? SpinBound { get; } = RequiredShare.Bound(
        Ensemble.LargestSpin.Maximum.RadiansPerSecond,
        limit => Ensemble.ProbabilityThatSpinIsWithin(RotationalSpeed.FromRadiansPerSecond(limit)).Estimate) is { } bound ? RotationalSpeed.FromRadiansPerSecond(bound) : null;

    /// <summary>The transverse rate that it stays below.</summary>
    public RotationalSpeed? TransverseRateBound { get; } = RequiredShare.Bound(
        Ensemble.TransverseRate.Maximum.RadiansPerSecond,
        limit => Ensemble.ProbabilityThatTransverseRateIsBelow(RotationalSpeed.FromRadiansPerSecond(limit)).Estimate) is { } bound ? RotationalSpeed.FromRadiansPerSecond(bound) : null;

    /// <summary>The nutation half-angle that it stays below.</summary>
    public Angle? NutationBound { get; } = RequiredShare.Bound(
        Ensemble.Nutation.Maximum.Radians,
        limit => Ensemble.ProbabilityThatNutationIsBelow(Angle.FromRadians(limit)).Estimate) is { } bound ? Angle.FromRadians(bound) : null;

    /// <summary>The peak tension of any cord that it stays below.</summary>
    public Force? PeakTensionBound { get; } = RequiredShare.Bound(
        Ensemble.PeakTension.Maximum.Newtons,
        limit => Ensemble.ProbabilityThatPeakTensionIsBelow(Force.FromNewtons(limit)).Estimate) is { } bound ? Force.FromNewtons(bound) : null;
}
