using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Springs;

namespace Momentum.Dispersion;

/// <summary>Computes one case of a planar de-spin after another without allocating; not thread-safe.</summary>
internal abstract class DespinCase
{
    /// <summary>Number of uncertain inputs.</summary>
    internal const int Inputs = 8;

    /// <summary>Makes room for cases of a design.</summary>
    /// <param name="design">The nominal design.</param>
    /// <param name="hubMass">Mass of the hub without weights and cords, kg; NaN if no weight lets go late.</param>
    internal static DespinCase Of(PlanarDesign design, double hubMass) => design switch
    {
        SpringCordDesign springs => new SpringCordCase(springs),
        _ => new InextensibleCordCase((DespinDesign)design, hubMass),
    };

    /// <summary>The nominal inputs, SI, in the order of <see cref="UncertainInput"/>.</summary>
    internal static double[] Nominal(PlanarDesign design) =>
    [
        design.Hub.SpinInertia.ToSi(),
        design.Hub.Spin.ToSi(),
        design.Hub.Radius.Meters,
        design.WeightMass.ToSi(),
        design.CordLength.Meters,
        design is DespinDesign { CordLineDensity: var density } ? density.ToSi() : 0,
        0,
        0,
    ];

    /// <summary>Final spin (rad/s) and peak tension of each cord up to the first let-go (N) for given inputs.</summary>
    internal DespinOutcome Run(
        ReadOnlySpan<double> input, out double finalSpin, out double peakTension, CancellationToken cancellation = default)
    {
        finalSpin = double.NaN;
        peakTension = double.NaN;
        return input[(int)UncertainInput.SpinInertia] > 0 && input[(int)UncertainInput.InitialSpin] > 0 && input[(int)UncertainInput.HubRadius] > 0 &&
            input[(int)UncertainInput.WeightMass] > 0 && input[(int)UncertainInput.CordLength] > 0 && input[(int)UncertainInput.CordLineDensity] >= 0
            ? Move(input, ref finalSpin, ref peakTension, cancellation)
            : DespinOutcome.NotPhysical;
    }

    /// <summary>The same of inputs that are physical.</summary>
    private protected abstract DespinOutcome Move(
        ReadOnlySpan<double> input, ref double finalSpin, ref double peakTension, CancellationToken cancellation);
}
