using System.Runtime.CompilerServices;

namespace Momentum.Quantities;

/// <summary>The check at every public door that takes bare numbers: a NaN or an infinity does not come in.</summary>
internal static class Finite
{
    /// <summary>Returns <paramref name="value"/> if it is finite.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    internal static double Require(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) ? value : throw Refusal(value, name);

    /// <summary>Returns <paramref name="value"/> if something can be divided by it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is zero, NaN or infinite.</exception>
    internal static double Divisor(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        value != 0 && double.IsFinite(value) ? value : throw NoDivisor(value, name);

    private static ArgumentOutOfRangeException NoDivisor(double value, string name) =>
        new(name, value, $"{name} divides and must be a finite number that is not zero.");

    private static ArgumentOutOfRangeException Refusal(double value, string name) =>
        new(name, value, $"{name} must be a finite number; give a value that is neither NaN nor infinite.");
}
