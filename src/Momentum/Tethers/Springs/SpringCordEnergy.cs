using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers.Springs;

/// <summary>Where the energy of a de-spin with spring cords is.</summary>
/// <remarks><c>default</c> is no energy anywhere. Equality is by all four.</remarks>
/// <param name="Hub">Of the hub's spin.</param>
/// <param name="Weights">Of all weights.</param>
/// <param name="Elastic">In the stretch of all cords. At let-go it goes with them: a cord under stretch snaps back.</param>
/// <param name="Damped">What the damping of the cords has turned into heat.</param>
public readonly record struct SpringCordEnergy(Energy Hub, Energy Weights, Energy Elastic, Energy Damped)
    : IEqualityOperators<SpringCordEnergy, SpringCordEnergy, bool>
{
    /// <summary>All of it; it does not change.</summary>
    public Energy Total => Hub + Weights + Elastic + Damped;

    /// <summary>The four energies in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"hub {Hub}, weights {Weights}, elastic {Elastic}, damped {Damped}");
}
