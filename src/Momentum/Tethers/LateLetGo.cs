using UnitsNet;

namespace Momentum.Tethers;

/// <summary>What becomes of a de-spin whose last weight lets go late.</summary>
/// <remarks>
/// Until its let-go the last weight stays on its cord and pulls the hub, which is free to move, to its side: linear
/// momentum, angular momentum about the system's centre of mass, and energy are conserved. Planar; the hub's centre of mass
/// is taken as the centre of the hub.
/// </remarks>
/// <param name="Delay">How long after the others the last cord let go.</param>
/// <param name="FinalSpin">Spin of the hub afterwards; negative if reversed.</param>
/// <param name="CordAngle">Cord angle of the last cord at its let-go; zero while it still unwinds.</param>
/// <param name="HubDrift">Speed that the hub's centre of mass is left with.</param>
/// <param name="Closure">Largest departure of angular momentum and energy over the delay, relative.</param>
public readonly record struct LateLetGo(Duration Delay, RotationalSpeed FinalSpin, Angle CordAngle, Speed HubDrift, double Closure);
