using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Cases.Quantities;

/// <summary>The table of quantities a case file can state. A new one is a new line.</summary>
internal static class QuantityKinds
{
    /// <summary>Name, SI unit, example, smallest and largest magnitude (SI) that the computation is meant for.</summary>
    public static readonly IReadOnlyDictionary<Type, QuantityKind> ByType = new Dictionary<Type, QuantityKind>
    {
        [typeof(Mass)] = new QuantityKind<Mass>("mass", "kg", "12.5 kg", 1e-9, 1e9, typeof(MassUnit), v => Mass.FromKilograms(v), q => q.Kilograms),
        [typeof(Length)] = new QuantityKind<Length>("length", "m", "430 mm", 1e-9, 1e9, typeof(LengthUnit), v => Length.FromMeters(v), q => q.Meters),
        [typeof(MassMomentOfInertia)] = new QuantityKind<MassMomentOfInertia>("moment of inertia", "kg·m²", "18.4 kg*m^2", 1e-15, 1e15, typeof(MassMomentOfInertiaUnit), v => MassMomentOfInertia.FromKilogramSquareMeters(v), q => q.KilogramSquareMeters),
        [typeof(RotationalSpeed)] = new QuantityKind<RotationalSpeed>("spin rate", "rad/s", "72 rpm", 1e-9, 1e6, typeof(RotationalSpeedUnit), v => RotationalSpeed.FromRadiansPerSecond(v), q => q.RadiansPerSecond),
        [typeof(Angle)] = new QuantityKind<Angle>("angle", "rad", "4 deg", 1e-12, 1e6, typeof(AngleUnit), v => Angle.FromRadians(v), q => q.Radians),
        [typeof(Duration)] = new QuantityKind<Duration>("duration", "s", "2 ms", 1e-12, 1e12, typeof(DurationUnit), v => Duration.FromSeconds(v), q => q.Seconds),
        [typeof(Force)] = new QuantityKind<Force>("force", "N", "2.1 kN", 1e-9, 1e12, typeof(ForceUnit), v => Force.FromNewtons(v), q => q.Newtons),
        [typeof(LinearDensity)] = new QuantityKind<LinearDensity>("linear density", "kg/m", "7.4 g/m", 1e-12, 1e6, typeof(LinearDensityUnit), v => LinearDensity.FromKilogramsPerMeter(v), q => q.KilogramsPerMeter),
        [typeof(Density)] = new QuantityKind<Density>("density", "kg/m³", "2700 kg/m^3", 1e-6, 1e6, typeof(DensityUnit), v => Density.FromKilogramsPerCubicMeter(v), q => q.KilogramsPerCubicMeter),
        [typeof(Torque)] = new QuantityKind<Torque>("torque", "N·m", "0.02 N*m", 1e-15, 1e12, typeof(TorqueUnit), v => Torque.FromNewtonMeters(v), q => q.NewtonMeters),
        [typeof(Acceleration)] = new QuantityKind<Acceleration>("acceleration", "m/s²", "9.81 m/s^2", 1e-12, 1e9, typeof(AccelerationUnit), v => Acceleration.FromMetersPerSecondSquared(v), q => q.MetersPerSecondSquared),
        [typeof(Ratio)] = new QuantityKind<Ratio>("ratio", "1", "2 %", 1e-12, 1e9, typeof(RatioUnit), v => Ratio.FromDecimalFractions(v), q => q.DecimalFractions),
    };

    /// <summary>The kinds that have a unit so spelled.</summary>
    public static IEnumerable<QuantityKind> WithUnit(string normalised) => ByType.Values.Where(kind => kind.Units.ContainsKey(normalised));
}
