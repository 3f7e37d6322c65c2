using System.Globalization;
using System.Numerics;

namespace Momentum.Tethers;

/// <summary>How the final spin answers to what is not known well before the flight, to first order.</summary>
/// <remarks><c>default</c> is a final spin that answers to nothing. Equality is by both members.</remarks>
/// <param name="ToInitialSpin">
/// Change of the final spin by change of the initial spin, the same units in both. With cords that do not stretch it is the
/// ratio of the two spins.
/// </param>
/// <param name="ToSpinInertia">
/// Change of the final spin, as a fraction of the initial spin, by relative change of the hub's spin inertia. With cords that do
/// not stretch, let go at the tangent, it is (1 - r²)/2 · I/(I + m R²), with r the ratio of final to initial spin and m the
/// mass of all weights (own derivation).
/// </param>
public readonly record struct SpinSensitivity(double ToInitialSpin, double ToSpinInertia)
    : IEqualityOperators<SpinSensitivity, SpinSensitivity, bool>
{
    /// <summary>Four-point central difference by a logarithm.</summary>
    /// <param name="function">What is differentiated, as a function of a factor around one.</param>
    /// <param name="step">Step of the logarithm.</param>
    internal static double Slope(Func<double, double> function, double step)
    {
        double one = function(Math.Exp(step)) - function(Math.Exp(-step));
        double two = function(Math.Exp(2 * step)) - function(Math.Exp(-2 * step));
        return ((8 * one) - two) / (12 * step);
    }

    /// <summary>The two numbers in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"to initial spin {ToInitialSpin:g4}, to spin inertia {ToSpinInertia:g4}");
}
