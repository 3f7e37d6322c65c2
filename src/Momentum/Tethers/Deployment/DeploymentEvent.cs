using System.Globalization;
using System.Numerics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>Something that happened during a deployment. Equality is by all members. <c>default</c> is the first kind at the start.</summary>
/// <param name="Kind">What happened.</param>
/// <param name="Time">When, from the start of the deployment.</param>
/// <param name="Cord">Index of the cord, from 0; null if it concerns the hub.</param>
/// <param name="EnergyLost">What an impulse took from the energy; zero where there was none.</param>
public readonly record struct DeploymentEvent(DeploymentEventKind Kind, Duration Time, int? Cord, Energy EnergyLost)
    : IEqualityOperators<DeploymentEvent, DeploymentEvent, bool>
{
    /// <summary>What happened and when, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kind} at {Time}, {EnergyLost} lost");
}
