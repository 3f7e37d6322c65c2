using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Quantities;

#pragma warning disable RS0030 // Banned everywhere else: this is the one place that may ask UnitsNet.

/// <summary>
/// SI numbers of scalars by exact factors. UnitsNet 5.75 rounds some: a revolution by 3e-12, the slug and the inertias
/// and line densities in customary units by up to 1.2e-8. Those units are converted here, the rest as UnitsNet does.
/// </summary>
/// <remarks>
/// Exact by definition: the inch 0.0254 m, the foot 0.3048 m, the pound 0.45359237 kg, standard gravity 9.80665 m/s²
/// (NIST SP 811, 2008, appendix B); hence the slug, one pound-force second squared a foot.
/// </remarks>
internal static class ExactUnits
{
    private const double Inch = 0.0254;
    private const double Foot = 0.3048;
    private const double Pound = 0.45359237;
    private const double PoundForce = Pound * 9.80665;
    private const double Slug = PoundForce / Foot;

    /// <summary>The number of radians a second.</summary>
    internal static double ToSi(this RotationalSpeed speed) => speed.Unit switch
    {
        RotationalSpeedUnit.RevolutionPerMinute => (double)speed.Value * Math.PI / 30,
        RotationalSpeedUnit.RevolutionPerSecond => (double)speed.Value * Math.Tau,
        _ => speed.RadiansPerSecond,
    };

    /// <summary>The number of kilogram square metres.</summary>
    internal static double ToSi(this MassMomentOfInertia inertia) => inertia.Unit switch
    {
        MassMomentOfInertiaUnit.PoundSquareFoot => inertia.Value * (Pound * Foot * Foot),
        MassMomentOfInertiaUnit.PoundSquareInch => inertia.Value * (Pound * Inch * Inch),
        MassMomentOfInertiaUnit.SlugSquareFoot => inertia.Value * (PoundForce * Foot),
        MassMomentOfInertiaUnit.SlugSquareInch => inertia.Value * (Slug * Inch * Inch),
        _ => inertia.KilogramSquareMeters,
    };

    /// <summary>The number of kilograms.</summary>
    internal static double ToSi(this Mass mass) => mass.Unit switch
    {
        MassUnit.Slug => mass.Value * Slug,
        _ => mass.Kilograms,
    };

    /// <summary>The number of kilograms a metre.</summary>
    internal static double ToSi(this LinearDensity density) => density.Unit switch
    {
        LinearDensityUnit.PoundPerFoot => density.Value * (Pound / Foot),
        LinearDensityUnit.PoundPerInch => density.Value * (Pound / Inch),
        _ => density.KilogramsPerMeter,
    };
}
