using System.Globalization;
using System.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>
/// Whether angular momentum and energy, summed over hub, weights and cords from their positions and velocities, stay what
/// they were at the start.
/// </summary>
/// <remarks><c>default</c> is a body at rest. Equality is by all members.</remarks>
/// <param name="AngularMomentum">About the spin axis, at the start.</param>
/// <param name="Energy">Kinetic energy at the start.</param>
/// <param name="MomentumClosure">Largest departure of angular momentum over the motion, relative to the start.</param>
/// <param name="EnergyClosure">Largest departure of energy over the motion, relative to the start.</param>
public readonly record struct DespinLedger(
    AngularMomentum AngularMomentum, Energy Energy, double MomentumClosure, double EnergyClosure)
    : IEqualityOperators<DespinLedger, DespinLedger, bool>
{
    /// <summary>Momentum, energy and how they close, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"momentum {AngularMomentum} closes to {MomentumClosure:g3}, energy {Energy} to {EnergyClosure:g3}");

    internal static DespinLedger Close(DespinDesign design, IEnumerable<DespinState> states, double allowed)
    {
        double spin = design.Hub.Spin.ToSi();
        double momentum = design.Cords.Carried * spin;
        double energy = 0.5 * momentum * spin;
        double momentumClosure = 0;
        double energyClosure = 0;
        foreach (DespinState state in states)
        {
            momentumClosure = Math.Max(
                momentumClosure, Math.Abs((state.AngularMomentum.KilogramSquareMetersPerSecond / momentum) - 1));
            energyClosure = Math.Max(energyClosure, Math.Abs((state.Energy.Total.Joules / energy) - 1));
        }

        if (!(momentumClosure <= allowed && energyClosure <= allowed))
        {
            throw new ComputationRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"Angular momentum and energy of the computed motion do not close (relative departure {momentumClosure:g3} and {energyClosure:g3}, allowed {allowed:g3}). The inertia, masses and lengths given are too far apart for the arithmetic; check their units."));
        }

        return new DespinLedger(
            AngularMomentum.FromKilogramSquareMetersPerSecond(momentum), Energy.FromJoules(energy), momentumClosure, energyClosure);
    }
}
