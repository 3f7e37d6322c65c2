using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>How one case of many deployments came out.</summary>
/// <param name="Number">Number of the case.</param>
/// <param name="Outcome">Whether all weights were let go as they should be; only then are there figures, and else they are zero.</param>
/// <param name="FinalTransverseRates">Rates of the hub across the spin axis at the last let-go.</param>
/// <param name="FinalSpin">Rate about the spin axis at the last let-go, with its sign.</param>
/// <param name="LargestSpin">Largest size of the rate about the spin axis over all time after it.</param>
/// <param name="TransverseRate">Largest rate across the spin axis over all time after it.</param>
/// <param name="Nutation">Largest nutation angle over all time after it: between the angular momentum and the nearer end of the spin axis.</param>
/// <param name="MomentumTilt">Angle between the hub's angular momentum after it and before the first weight is free.</param>
/// <param name="PeakTension">Largest tension of all cords, where they meet the hub.</param>
/// <param name="BreakingLoadRatio">Breaking load over peak tension, of the cord in which it is least; null if no cord states a breaking load.</param>
/// <param name="WentSlack">Whether a cord went slack on the way.</param>
/// <param name="TouchedDeck">Whether a cord touched the deck's edge, whose force is not computed.</param>
/// <param name="Reason">Why there are no figures, in words; empty if there are.</param>
/// <remarks><c>default</c> is case 0 without a motion. Equality is by all members.</remarks>
public readonly record struct DeployedCase(
    long Number,
    DeploymentOutcome Outcome,
    Vector<RotationalSpeed, Body> FinalTransverseRates,
    RotationalSpeed FinalSpin,
    RotationalSpeed LargestSpin,
    RotationalSpeed TransverseRate,
    Angle Nutation,
    Angle MomentumTilt,
    Force PeakTension,
    double? BreakingLoadRatio,
    bool WentSlack,
    bool TouchedDeck,
    string Reason)
    : IEqualityOperators<DeployedCase, DeployedCase, bool>
{
    /// <summary>Number, outcome and figures, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"case {Number}: {Outcome}, final spin {FinalSpin}, transverse rate {TransverseRate}, peak tension {PeakTension} {Reason}").TrimEnd();
}
