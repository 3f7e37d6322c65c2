using Momentum.Quantities;
using Momentum.Tethers;

namespace Momentum.Dispersion;

/// <summary>What one case of a planar de-spin is computed from, as bare SI numbers: nominal at first, then moved by the rows of <see cref="UncertainInputs"/>.</summary>
internal struct PlanarDraw
{
    internal double SpinInertia;
    internal double InitialSpin;
    internal double HubRadius;
    internal double WeightMass;
    internal double CordLength;
    internal double CordLineDensity;

    /// <summary>By how much the cords miss the direction at which they are to let go; late is positive.</summary>
    internal double LetGoMiss;

    /// <summary>How much later than the others the last weight lets go.</summary>
    internal double LateBy;

    /// <summary>The nominal case of a design.</summary>
    internal static PlanarDraw Of(PlanarDesign design) => new()
    {
        SpinInertia = design.Hub.SpinInertia.ToSi(),
        InitialSpin = design.Hub.Spin.ToSi(),
        HubRadius = design.Hub.Radius.Meters,
        WeightMass = design.WeightMass.ToSi(),
        CordLength = design.CordLength.Meters,
        CordLineDensity = design is DespinDesign { CordLineDensity: var density } ? density.ToSi() : 0,
    };

    /// <summary>Whether there can be such a de-spin.</summary>
    internal readonly bool IsPhysical =>
        SpinInertia > 0 && InitialSpin > 0 && HubRadius > 0 && WeightMass > 0 && CordLength > 0 && CordLineDensity >= 0;
}
