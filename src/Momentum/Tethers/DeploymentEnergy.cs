using System.Globalization;
using System.Numerics;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>
/// Where the energy of what is still together is, in the plane and in space; what departed weights and cords carry is in the
/// ledger. <c>default</c> is none anywhere. Equality is by all members.
/// </summary>
/// <param name="HubRotation">Of the hub about its centre of mass, without weights and cords.</param>
/// <param name="HubTranslation">Of the motion of the hub's centre of mass; zero in the plane.</param>
/// <param name="Weights">Kinetic, of all weights that have not departed.</param>
/// <param name="Cords">Kinetic, of the mass of the cords that have not let go.</param>
/// <param name="Elastic">In the stretch of the cords. At let-go it goes with them: a cord under stretch snaps back.</param>
/// <param name="Gravity">Potential, from the inertial origin; zero but on a rig.</param>
public readonly record struct DeploymentEnergy(
    Energy HubRotation, Energy HubTranslation, Energy Weights, Energy Cords, Energy Elastic, Energy Gravity)
    : IEqualityOperators<DeploymentEnergy, DeploymentEnergy, bool>
{
    /// <summary>All of it.</summary>
    public Energy Total => HubRotation + HubTranslation + Weights + Cords + Elastic + Gravity;

    internal static DeploymentEnergy Of(in Balance balance) => new(
        Energy.FromJoules(balance.HubRotation),
        Energy.FromJoules(balance.HubTranslation),
        Energy.FromJoules(balance.Weights),
        Energy.FromJoules(balance.Cords),
        Energy.FromJoules(balance.Elastic),
        Energy.FromJoules(balance.Gravity));

    /// <summary>The energies, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"hub rotation {HubRotation}, hub translation {HubTranslation}, weights {Weights}, cords {Cords}, elastic {Elastic}, gravity {Gravity}");
}
