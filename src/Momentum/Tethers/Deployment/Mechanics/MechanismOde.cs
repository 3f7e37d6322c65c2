using Momentum.Numerics;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>The mechanism as the integrator wants to see it.</summary>
internal readonly struct MechanismOde(Mechanism mechanism) : IOdeSystem
{
    public int Dimension => mechanism.Dimension;

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives) =>
        mechanism.Derivatives(state, derivatives);
}
