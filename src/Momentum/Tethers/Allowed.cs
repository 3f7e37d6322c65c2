using System.Diagnostics.CodeAnalysis;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>The checks at the public door: each refusal names the parameter, its value, what is allowed and the remedy.</summary>
internal static class Allowed
{
    // Past these the squares and cubes in the formulas leave the range of a double.
    private const double Smallest = 1e-30;
    private const double Largest = 1e30;

    /// <summary>Returns the SI number if it is positive and of a size that can be computed with.</summary>
    internal static double Positive(double si, IQuantity given, string name, string remedy) =>
        si is >= Smallest and <= Largest
            ? si
            : throw new ArgumentOutOfRangeException(
                name, Quoted.Text(given), $"{name} must be positive (1e-30 to 1e30 in SI units). {remedy}");

    /// <summary>Returns the SI number if it is zero or positive and of a size that can be computed with.</summary>
    internal static double ZeroOrPositive(double si, IQuantity given, string name, string remedy) =>
        si == 0 || si is >= Smallest and <= Largest
            ? si
            : throw new ArgumentOutOfRangeException(
                name, Quoted.Text(given), $"{name} must be zero or positive (up to 1e30 in SI units). {remedy}");

    /// <summary>Returns the number of weights if they can be spaced evenly around the hub.</summary>
    internal static int Weights(int weights, string name) =>
        weights is >= 2 and <= 1000
            ? weights
            : throw new ArgumentOutOfRangeException(
                name,
                weights,
                $"{name} must be 2 to 1000, evenly spaced, so that the pulls on the hub cancel. A single weight also moves the " +
                "hub's centre of mass; use the three-dimensional deployment for it.");

    /// <summary>Refuses a value that is not what is allowed.</summary>
    /// <param name="holds">Whether it is.</param>
    /// <param name="name">The value's name.</param>
    /// <param name="given">The value; a quantity is quoted in its own unit.</param>
    /// <param name="allowed">What it must be, to follow "it must be".</param>
    internal static void Require([DoesNotReturnIf(false)] bool holds, string name, object? given, string allowed)
    {
        if (!holds)
        {
            string text = given is IQuantity quantity ? Quoted.Text(quantity) : FormattableString.Invariant($"{given ?? "null"}");
            throw new ArgumentOutOfRangeException(name, text, $"{name} is {text}; it must be {allowed}.");
        }
    }
}
