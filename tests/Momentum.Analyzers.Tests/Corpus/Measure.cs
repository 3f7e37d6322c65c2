using UnitsNet;

namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>
/// A unit as the generator uses it: a member of a quantity type, how an attribute and a name would write it, and its size in
/// SI taken from the units library's own conversion, so that the truth does not come from the analyzer's algebra.
/// </summary>
internal sealed record Measure(string Quantity, string Member, string Singular, string Text, IReadOnlyList<string> Suffixes, double Size)
{
    private static readonly Dictionary<string, Measure[]> _all = All();

    internal static IReadOnlyList<Measure> Of(string quantity) => _all[quantity];

    /// <summary>The quantity read as a number; the library gives powers as decimals.</summary>
    internal string Read(string quantity) => Quantity == "Power" ? $"(double){quantity}.{Member}" : $"{quantity}.{Member}";

    internal bool HasSize(double size) => Math.Abs(Size - size) <= 1e-9 * Math.Abs(size);

    // Quantity, stem of a name, then unit: member, singular, attribute text, name suffixes.
    private static Dictionary<string, Measure[]> All()
    {
        (string Quantity, string Member, string Singular, string Text, string Suffixes)[] rows =
        [
            ("Length", "Meters", "Meter", "m", "Meters|M|_m"), ("Length", "Millimeters", "Millimeter", "mm", "Mm|_mm|Millimeters"), ("Length", "Feet", "Foot", "ft", "Ft|_ft|Feet"),
            ("Length", "Inches", "Inch", "in", "Inches|_in"), ("Length", "Kilometers", "Kilometer", "km", "Km|_km"), ("Length", "Centimeters", "Centimeter", "cm", "Cm|_cm"),
            ("Mass", "Kilograms", "Kilogram", "kg", "Kg|_kg|Kilograms"), ("Mass", "Grams", "Gram", "g", "G|Grams|_g"), ("Mass", "Pounds", "Pound", "lb", "Lbm|_lbm"), ("Mass", "Slugs", "Slug", "slug", "Slugs"),
            ("Duration", "Seconds", "Second", "s", "Seconds|Sec|_s"), ("Duration", "Milliseconds", "Millisecond", "ms", "Ms|_ms|Milliseconds"), ("Duration", "Minutes", "Minute", "min", "Minutes"), ("Duration", "Hours", "Hour", "h", "Hours"),
            ("Angle", "Radians", "Radian", "rad", "Rad|_rad|Radians"), ("Angle", "Degrees", "Degree", "deg", "Deg|_deg|Degrees"), ("Angle", "Revolutions", "Revolution", "rev", "Revolutions"),
            ("RotationalSpeed", "RadiansPerSecond", "RadianPerSecond", "rad/s", "RadPerSec|_rad_s|RadiansPerSecond"), ("RotationalSpeed", "RevolutionsPerMinute", "RevolutionPerMinute", "rpm", "Rpm|_rpm"),
            ("RotationalSpeed", "DegreesPerSecond", "DegreePerSecond", "deg/s", "DegPerSec|_deg_s|DegreesPerSecond"), ("RotationalSpeed", "RevolutionsPerSecond", "RevolutionPerSecond", "rev/s", "Rps|RevolutionsPerSecond"),
            ("RotationalAcceleration", "RadiansPerSecondSquared", "RadianPerSecondSquared", "rad/s^2", "_rad_s2|RadiansPerSecondSquared"), ("RotationalAcceleration", "DegreesPerSecondSquared", "DegreePerSecondSquared", "deg/s^2", "_deg_s2|DegreesPerSecondSquared"),
            ("Speed", "MetersPerSecond", "MeterPerSecond", "m/s", "Mps|_m_s|MetersPerSecond"), ("Speed", "KilometersPerHour", "KilometerPerHour", "km/h", "Kmh|_km_h"), ("Speed", "FeetPerSecond", "FootPerSecond", "ft/s", "_ft_s|FeetPerSecond"),
            ("Speed", "MillimetersPerSecond", "MillimeterPerSecond", "mm/s", "_mm_s|MmPerSec"),
            ("Acceleration", "MetersPerSecondSquared", "MeterPerSecondSquared", "m/s^2", "_m_s2|MetersPerSecondSquared"), ("Acceleration", "FeetPerSecondSquared", "FootPerSecondSquared", "ft/s^2", "_ft_s2"), ("Acceleration", "StandardGravity", "StandardGravity", "g0", ""),
            ("Force", "Newtons", "Newton", "N", "N|Newtons|_N"), ("Force", "Kilonewtons", "Kilonewton", "kN", "Kilonewtons|_kN"), ("Force", "PoundsForce", "PoundForce", "lbf", "Lbf|_lbf"), ("Force", "KilogramsForce", "KilogramForce", "kgf", "Kgf|_kgf"),
            ("Torque", "NewtonMeters", "NewtonMeter", "N*m", "Nm|NewtonMeters|_N_m"), ("Torque", "PoundForceInches", "PoundForceInch", "lbf*in", "_lbf_in|InLbf"), ("Torque", "NewtonMillimeters", "NewtonMillimeter", "N*mm", "_N_mm"), ("Torque", "PoundForceFeet", "PoundForceFoot", "lbf*ft", "FtLbf|_lbf_ft"),
            ("Energy", "Joules", "Joule", "J", "Joules|J"), ("Energy", "Kilojoules", "Kilojoule", "kJ", "KJ|Kilojoules"), ("Energy", "Millijoules", "Millijoule", "mJ", "Millijoules"),
            ("Power", "Watts", "Watt", "W", "Watts|W"), ("Power", "Kilowatts", "Kilowatt", "kW", "KW|Kilowatts"),
            ("Pressure", "Pascals", "Pascal", "Pa", "Pascals|Pa"), ("Pressure", "Kilopascals", "Kilopascal", "kPa", "KPa|Kilopascals"), ("Pressure", "PoundsForcePerSquareInch", "PoundForcePerSquareInch", "psi", "Psi|_psi"),
            ("Impulse", "NewtonSeconds", "NewtonSecond", "N*s", "_N_s|NewtonSeconds"), ("Impulse", "PoundForceSeconds", "PoundForceSecond", "lbf*s", ""),
            ("MassMomentOfInertia", "KilogramSquareMeters", "KilogramSquareMeter", "kg*m^2", "KgM2|_kg_m2"), ("MassMomentOfInertia", "SlugSquareFeet", "SlugSquareFoot", "slug*ft^2", "SlugFt2|_slug_ft2"),
            ("MassMomentOfInertia", "PoundSquareInches", "PoundSquareInch", "lb*in^2", "LbIn2|_lb_in2"), ("MassMomentOfInertia", "KilogramSquareMillimeters", "KilogramSquareMillimeter", "kg*mm^2", ""),
            ("Area", "SquareMeters", "SquareMeter", "m^2", "M2|_m2|SquareMeters"), ("Area", "SquareMillimeters", "SquareMillimeter", "mm^2", "Mm2|_mm2"), ("Area", "SquareInches", "SquareInch", "in^2", "In2|_in2"),
            ("Volume", "CubicMeters", "CubicMeter", "m^3", "M3|_m3|CubicMeters"), ("Volume", "CubicCentimeters", "CubicCentimeter", "cm^3", "Cm3|_cm3"),
            ("LinearDensity", "KilogramsPerMeter", "KilogramPerMeter", "kg/m", "_kg_m|KilogramsPerMeter"), ("LinearDensity", "GramsPerMeter", "GramPerMeter", "g/m", "_g_m|GramsPerMeter"),
            ("Density", "KilogramsPerCubicMeter", "KilogramPerCubicMeter", "kg/m^3", "_kg_m3|KilogramsPerCubicMeter"), ("Density", "GramsPerCubicCentimeter", "GramPerCubicCentimeter", "g/cm^3", ""),
            ("ForcePerLength", "NewtonsPerMeter", "NewtonPerMeter", "N/m", "NewtonsPerMeter"), ("ForcePerLength", "NewtonsPerMillimeter", "NewtonPerMillimeter", "N/mm", "NewtonsPerMillimeter"), ("ForcePerLength", "PoundsForcePerInch", "PoundForcePerInch", "lbf/in", "LbfPerInch"),
            ("RotationalStiffness", "NewtonMetersPerRadian", "NewtonMeterPerRadian", "N*m/rad", ""), ("RotationalStiffness", "NewtonMetersPerDegree", "NewtonMeterPerDegree", "N*m/deg", ""),
        ];
        return rows
            .Select(r => new Measure(r.Quantity, r.Member, r.Singular, r.Text, r.Suffixes.Split('|', StringSplitOptions.RemoveEmptyEntries), SizeOf(r.Quantity, r.Singular)))
            .GroupBy(m => m.Quantity)
            .ToDictionary(g => g.Key, g => g.ToArray());
    }

    // The library's size of the coherent SI unit is 1 for each of these quantities except those whose base unit is another.
    private static double SizeOf(string quantity, string singular)
    {
        string coherent = quantity switch
        {
            "Angle" => "Radian",
            "MassMomentOfInertia" => "KilogramSquareMeter",
            "LinearDensity" => "KilogramPerMeter",
            "Mass" => "Kilogram",
            "RotationalStiffness" => "NewtonMeterPerRadian",
            _ => Info(quantity).BaseUnitInfo.Name,
        };

        // Slug and pound square inch have six digits there; exact here, from the pound, the foot and standard gravity.
        const double Slug = 0.45359237 * 9.80665 / 0.3048;
        return singular switch
        {
            "Slug" => Slug,
            "SlugSquareFoot" => Slug * 0.3048 * 0.3048,
            "PoundSquareInch" => 0.45359237 * 0.0254 * 0.0254,
            _ => UnitsNet.Quantity.From(1, quantity, singular).As(Info(quantity).UnitInfos.First(u => u.Name == coherent).Value),
        };
    }

    private static QuantityInfo Info(string name) => UnitsNet.Quantity.ByName[name];
}
