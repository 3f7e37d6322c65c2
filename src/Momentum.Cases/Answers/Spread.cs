using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>What the stated tolerances make of the design: cases drawn from them, on the best model that the case allows.</summary>
internal sealed record Spread
{
    /// <summary>What computed the cases.</summary>
    public required CaseModel Model { get; init; }

    /// <summary>The cases.</summary>
    public required DeploymentEnsemble Ensemble { get; init; }

    /// <summary>The share and confidence that are required.</summary>
    public required RequiredShare Required { get; init; }

    /// <summary>Chooses the draws.</summary>
    public required ulong Seed { get; init; }

    /// <summary>How each requirement came out over the cases, in the order in which they were asked for.</summary>
    public required IReadOnlyList<JudgedShare> Shares { get; init; }

    /// <summary>In how many cases all requirements hold together; null if there are none.</summary>
    public required JudgedShare? Joint { get; init; }

    /// <summary>What each input does alone, the largest effect on the final spin first.</summary>
    public required IReadOnlyList<InputEffect> Effects { get; init; }

    /// <summary>Where what was drawn is not what was stated, because a limit is too near: sentences.</summary>
    public required IReadOnlyList<string> DrawnOtherwise { get; init; }

    /// <summary>The spin rate, by size and over all time after let-go, that the required share of all cases stays below; null if more cases than that have none.</summary>
    public RotationalSpeed? SpinBound => Bound(Ensemble.LargestSpin);

    /// <summary>The transverse rate likewise; null in the plane too.</summary>
    public RotationalSpeed? TransverseRateBound => Model.IsSpatial ? Bound(Ensemble.TransverseRate) : null;

    /// <summary>The nutation half-angle likewise.</summary>
    public Angle? NutationBound => Model.IsSpatial ? Bound(Ensemble.Nutation) : null;

    /// <summary>The peak tension of any cord likewise.</summary>
    public Force? PeakTensionBound => Bound(Ensemble.PeakTension);

    /// <summary>Breaking load over peak tension that the required share of all cases exceeds.</summary>
    public double? SafetyFactorBound => Ensemble.BreakingLoadRatio is { } ratios && Place(ratios.Count) is { } place ? ratios.Quantile(1 - place).DecimalFractions : null;

    private TQuantity? Bound<TQuantity>(Sample<TQuantity> sample)
        where TQuantity : struct, IQuantity => Place(sample.Count) is { } place ? sample.Quantile(place) : null;

    /// <summary>Where the bound lies among the cases that have the figure: the others are beyond every bound.</summary>
    private double? Place(int count) => Required.Share * Ensemble.Cases / count is <= 1 and var place ? place : null;
}
