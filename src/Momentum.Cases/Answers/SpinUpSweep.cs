using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The final spin of spring cords over the initial spins that a spin-up may leave.</summary>
internal static class SpinUpSweep
{
    private const int Tries = 40;

    // Initial spins tried, either way of the nominal one, as a share of it: beyond any usual error of a spin-up.
    private const double Widest = 0.1;

    /// <summary>Evenly spaced initial spins and what is left of each; null where the cords do not come to let-go.</summary>
    public static IReadOnlyList<(RotationalSpeed Initial, RotationalSpeed? Final)> Of(SpringCordDesign design) =>
    [
        .. Enumerable.Range(0, Tries + 1)
            .Select(i => RotationalSpeed.FromRevolutionsPerMinute(design.Hub.Spin.RevolutionsPerMinute * (1 + (Widest * ((2.0 * i / Tries) - 1)))))
            .Select(initial => (initial, Final(design, initial))),
    ];

    private static RotationalSpeed? Final(SpringCordDesign design, RotationalSpeed initial)
    {
        try
        {
            return design.On(new DespinHub(design.Hub.SpinInertia, design.Hub.Radius, initial)).Deploy().FinalSpin;
        }
        catch (ComputationRefusedException)
        {
            return null;
        }
    }
}
