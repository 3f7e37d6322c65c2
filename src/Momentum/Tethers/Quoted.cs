using System.Globalization;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>A quantity as an error message quotes it.</summary>
internal static class Quoted
{
    /// <summary>Every digit, the unit the caller used, invariant culture.</summary>
    internal static string Text(IQuantity quantity) => quantity.ToString("g17", CultureInfo.InvariantCulture);

    /// <summary>A rate in the two units people think in.</summary>
    internal static string Spin(double radiansPerSecond) => string.Create(
        CultureInfo.InvariantCulture,
        $"{radiansPerSecond:g6} rad/s ({radiansPerSecond * 30 / Math.PI:g6} rpm)");

    /// <summary>A bare SI number with its unit.</summary>
    internal static string Si(double value, string unit) => string.Create(CultureInfo.InvariantCulture, $"{value:g6} {unit}");
}
