namespace Momentum;

/// <summary>How well the momenta and the energy of a motion must close: one limit for every motion that the library returns.</summary>
/// <remarks>
/// A motion sums its momenta and its energy from the positions and velocities of its parts, with what left and what was lost;
/// how far a sum departs from what it was at the start tells how far the whole can be trusted. Rounding leaves some 1e-14, and a
/// hundred times more where long sums cancel. A motion beyond the limit is refused with a <see cref="ComputationRefusedException"/>.
/// Only the cases of an ensemble, which are counted and not returned, have a wider one of their own.
/// </remarks>
public static class Ledger
{
    /// <summary>The largest relative departure of a motion computed to full accuracy: 1e-11.</summary>
    public const double LargestDeparture = 1e-11;

    // Steps that add up one way.
    private const double Steps = 10;

    /// <summary>The largest relative departure of a motion integrated with steps of a stated relative tolerance.</summary>
    /// <param name="tolerance">Relative tolerance of a step.</param>
    /// <returns>Ten times the tolerance, and no less than <see cref="LargestDeparture"/>.</returns>
    internal static double Allowed(double tolerance) => Math.Max(LargestDeparture, Steps * tolerance);
}
