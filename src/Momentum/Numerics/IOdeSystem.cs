namespace Momentum.Numerics;

/// <summary>
/// A system of ordinary differential equations of first order, y' = f(t, y). Implement it as a struct: the integrator
/// is generic over it, so that the calls are bound at compile time and nothing is boxed.
/// </summary>
/// <remarks>Components may have any units, each its own; a derivative has the unit of its component per unit of time.</remarks>
public interface IOdeSystem
{
    /// <summary>Number of components of the state; at least one, and constant.</summary>
    int Dimension { get; }

    /// <summary>Computes the derivatives. Must depend on its arguments and on constants only, and must not throw.</summary>
    /// <param name="time">The time t.</param>
    /// <param name="state">The state y; <see cref="Dimension"/> long.</param>
    /// <param name="derivatives">Receives f(t, y); <see cref="Dimension"/> long, every element must be written.</param>
    void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives);
}
