using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>
/// Whether angular momentum and energy, summed over hub, weights and cords from their positions and velocities, stay what
/// they were at the start.
/// </summary>
/// <param name="AngularMomentum">About the spin axis, at the start.</param>
/// <param name="Energy">Kinetic energy at the start.</param>
/// <param name="MomentumClosure">Largest departure of angular momentum over the motion, relative to the start.</param>
/// <param name="EnergyClosure">Largest departure of energy over the motion, relative to the start.</param>
public readonly record struct DespinLedger(
    AngularMomentum AngularMomentum, Energy Energy, double MomentumClosure, double EnergyClosure);
