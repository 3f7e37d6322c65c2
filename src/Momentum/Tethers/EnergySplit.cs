using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>Where the kinetic energy is.</summary>
/// <remarks><c>default</c> is no energy anywhere. Equality is by all three.</remarks>
/// <param name="Hub">Of the hub's spin.</param>
/// <param name="Weights">Of all weights.</param>
/// <param name="Cords">Of all cords, wound and free.</param>
public readonly record struct EnergySplit(Energy Hub, Energy Weights, Energy Cords) : IEqualityOperators<EnergySplit, EnergySplit, bool>
{
    /// <summary>All of it; it does not change, since inextensible cords do no work in all.</summary>
    public Energy Total => Hub + Weights + Cords;

    /// <summary>The three energies in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"hub {Hub}, weights {Weights}, cords {Cords}");
}
