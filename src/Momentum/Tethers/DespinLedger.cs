using System.Globalization;
using System.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>
/// Whether angular momentum and energy, summed over hub, weights and cords from their positions and velocities, stay what
/// they were at the start.
/// </summary>
/// <remarks>
/// With spring cords the energy is that in their stretch too, and what their damping has taken. <c>default</c> is a body at rest.
/// Equality is by all members.
/// </remarks>
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

    /// <summary>Compares sums with what they were at the start.</summary>
    /// <param name="carried">Spin inertia with the weights stowed and the cords wound, kg·m².</param>
    /// <param name="spin">Initial spin, rad/s.</param>
    /// <param name="sums">Angular momentum and energy at several instants.</param>
    /// <param name="allowed">The largest relative departure allowed.</param>
    internal static DespinLedger Close(
        double carried, double spin, IEnumerable<(AngularMomentum Momentum, Energy Energy)> sums, double allowed)
    {
        double momentum = carried * spin;
        double energy = 0.5 * momentum * spin;
        double momentumClosure = 0;
        double energyClosure = 0;
        foreach ((AngularMomentum nowMomentum, Energy nowEnergy) in sums)
        {
            momentumClosure = Math.Max(momentumClosure, Math.Abs((nowMomentum.KilogramSquareMetersPerSecond / momentum) - 1));
            energyClosure = Math.Max(energyClosure, Math.Abs((nowEnergy.Joules / energy) - 1));
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
