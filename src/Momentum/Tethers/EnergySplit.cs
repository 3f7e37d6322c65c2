using UnitsNet;

namespace Momentum.Tethers;

/// <summary>Where the kinetic energy is.</summary>
/// <param name="Hub">Of the hub's spin.</param>
/// <param name="Weights">Of all weights.</param>
/// <param name="Cords">Of all cords, wound and free.</param>
public readonly record struct EnergySplit(Energy Hub, Energy Weights, Energy Cords)
{
    /// <summary>All of it; it does not change, since inextensible cords do no work in all.</summary>
    public Energy Total => Hub + Weights + Cords;
}
