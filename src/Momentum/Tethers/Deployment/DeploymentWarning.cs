using System.Numerics;

namespace Momentum.Tethers.Deployment;

/// <summary>Something to look at before a design is trusted. Equality is by all members. <c>default</c> has no words.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Cord">The cord, in the order of the deployment; null if it is about the whole.</param>
/// <param name="Text">A sentence in plain words, numbers in the invariant culture.</param>
public readonly record struct DeploymentWarning(DeploymentWarningKind Kind, int? Cord, string Text) : IEqualityOperators<DeploymentWarning, DeploymentWarning, bool>
{
    /// <summary>The sentence.</summary>
    public override string ToString() => Text;
}
