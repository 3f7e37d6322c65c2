using Momentum.Tethers;
using Momentum.Tethers.Springs;

namespace Momentum.Dispersion;

/// <summary>Computes one case of a planar de-spin after another; not thread-safe.</summary>
internal abstract class DespinCase
{
    /// <summary>Makes room for cases of a design.</summary>
    /// <param name="design">The nominal design.</param>
    /// <param name="hubMass">Mass of the hub without weights and cords, kg; null if no weight lets go late.</param>
    internal static DespinCase Of(PlanarDesign design, double? hubMass) => design switch
    {
        SpringCordDesign springs => new SpringCordCase(springs),
        _ => new InextensibleCordCase((DespinDesign)design, hubMass),
    };

    /// <summary>Final spin (rad/s) and peak tension of each cord up to the first let-go (N) of a drawn case.</summary>
    internal DespinOutcome Run(
        in PlanarDraw draw, out double finalSpin, out double peakTension, CancellationToken cancellation = default)
    {
        finalSpin = double.NaN;
        peakTension = double.NaN;
        return draw.IsPhysical ? Move(draw, ref finalSpin, ref peakTension, cancellation) : DespinOutcome.NotPhysical;
    }

    /// <summary>The same of a case that is physical.</summary>
    private protected abstract DespinOutcome Move(
        in PlanarDraw draw, ref double finalSpin, ref double peakTension, CancellationToken cancellation);
}
