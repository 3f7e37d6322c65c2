using Momentum.Quantities;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// Axes fixed in the hub for its cords: the third along the spin axis, the first where <see cref="Cord.StartAngle"/> counts from.
/// </summary>
public readonly struct HubAxes : IFrame;
