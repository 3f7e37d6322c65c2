using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>What one uncertain input does to the final spin, all others at their nominal values.</summary>
/// <param name="Input">The input.</param>
/// <param name="AtPlusOneSigma">Change of the final spin when the input is one standard deviation above nominal.</param>
/// <param name="AtMinusOneSigma">Change of the final spin when it is one standard deviation below; a delay counts by its size.</param>
/// <param name="StandardDeviation">Standard deviation of the final spin when only this input scatters.</param>
/// <param name="VarianceShare">Share of the summed variances of all inputs, 0 to 1.</param>
/// <remarks><c>default</c> is an input without effect. Equality is by all members.</remarks>
public readonly record struct SensitivityBar(
    UncertainInput Input,
    RotationalSpeed AtPlusOneSigma,
    RotationalSpeed AtMinusOneSigma,
    RotationalSpeed StandardDeviation,
    double VarianceShare)
    : IEqualityOperators<SensitivityBar, SensitivityBar, bool>
{
    /// <summary>Input, changes and share, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Input}: {AtPlusOneSigma} at +1 sigma, {AtMinusOneSigma} at -1 sigma, standard deviation {StandardDeviation}, {100 * VarianceShare:g4} % of variance");
}
