namespace Momentum.Cases.Quantities;

/// <summary>
/// Units by their exact factors: those that UnitsNet lacks, spells otherwise or rounds (a revolution by 3e-12, the slug and
/// customary inertias by up to 1.2e-8, densities by up to 2e-7), and the commonest, so that a usual case does without UnitsNet's
/// tables, whose making takes a fifth of a second. Further, spellings of UnitsNet's that this file format refuses because they
/// mean something else to an engineer. Factors are exact products of lb = 0.45359237 kg, in = 0.0254 m and
/// g_n = 9.80665 m/s^2 (NIST SP 811); oz = lb/16.
/// </summary>
internal static class TradeUnits
{
    private const double Pound = 0.45359237;
    private const double Ounce = Pound / 16;
    private const double Inch = 0.0254;
    private const double Foot = 12 * Inch;
    private const double Gravity = 9.80665;
    private const double Slug = Pound * Gravity / Foot;
    private const double Revolution = 2 * Math.PI;
    private const double RevolutionPerMinute = Math.PI / 30;
    private const double Degree = Math.PI / 180;

    /// <summary>Quantity name, spelling, SI value of one unit.</summary>
    public static readonly IReadOnlyList<(string Quantity, string Spelling, double SiFactor)> Exact =
    [
        ("mass", "kg", 1),
        ("mass", "g", 1e-3),
        ("mass", "lb", Pound),
        ("mass", "lbm", Pound),
        ("length", "m", 1),
        ("length", "mm", 1e-3),
        ("length", "cm", 1e-2),
        ("length", "km", 1e3),
        ("length", "in", Inch),
        ("length", "ft", Foot),
        ("moment of inertia", "kg·m²", 1),
        ("spin rate", "rad/s", 1),
        ("spin rate", "deg/s", Degree),
        ("angle", "rad", 1),
        ("angle", "deg", Degree),
        ("angle", "°", Degree),
        ("duration", "s", 1),
        ("duration", "ms", 1e-3),
        ("force", "N", 1),
        ("force", "kN", 1e3),
        ("force", "lbf", Pound * Gravity),
        ("linear density", "kg/m", 1),
        ("linear density", "g/m", 1e-3),
        ("density", "kg/m³", 1),
        ("density", "g/cm³", 1e3),
        ("torque", "N·m", 1),
        ("acceleration", "m/s²", 1),
        ("ratio", "%", 0.01),
        ("moment of inertia", "lbf·in·s²", Pound * Gravity * Inch),
        ("moment of inertia", "lbf·ft·s²", Pound * Gravity * Foot),
        ("moment of inertia", "ozf·in·s²", Ounce * Gravity * Inch),
        ("moment of inertia", "kgf·m·s²", Gravity),
        ("moment of inertia", "kgf·cm·s²", Gravity / 100),
        ("moment of inertia", "oz·in²", Ounce * Inch * Inch),
        ("moment of inertia", "lb·in²", Pound * Inch * Inch),
        ("moment of inertia", "lb·ft²", Pound * Foot * Foot),
        ("moment of inertia", "lbm·in²", Pound * Inch * Inch),
        ("moment of inertia", "lbm·ft²", Pound * Foot * Foot),
        ("moment of inertia", "slug·ft²", Slug * Foot * Foot),
        ("moment of inertia", "slug·in²", Slug * Inch * Inch),
        ("mass", "slug", Slug),
        ("linear density", "lb/ft", Pound / Foot),
        ("linear density", "lb/in", Pound / Inch),
        ("linear density", "lbm/ft", Pound / Foot),
        ("linear density", "lbm/in", Pound / Inch),
        ("linear density", "oz/ft", Ounce / Foot),
        ("linear density", "kg/km", 1e-3),
        ("spin rate", "rpm", RevolutionPerMinute),
        ("spin rate", "r/min", RevolutionPerMinute),
        ("spin rate", "r/s", Revolution),
        ("spin rate", "RPM", RevolutionPerMinute),
        ("spin rate", "rev/min", RevolutionPerMinute),
        ("spin rate", "rev/s", Revolution),
        ("spin rate", "rps", Revolution),
        ("torque", "ozf·in", Ounce * Gravity * Inch),
        ("torque", "in·lbf", Pound * Gravity * Inch),
        ("torque", "ft·lbf", Pound * Gravity * Foot),
        ("density", "lb/in³", Pound / (Inch * Inch * Inch)),
        ("density", "lb/ft³", Pound / (Foot * Foot * Foot)),
        ("density", "lbm/in³", Pound / (Inch * Inch * Inch)),
        ("density", "lbm/ft³", Pound / (Foot * Foot * Foot)),
    ];

    /// <summary>
    /// Quantity name and spelling: "m" is a metre and not a minute, "g" a gram or standard gravity and not a gradian,
    /// "sec" a second and not a second of arc.
    /// </summary>
    public static readonly IReadOnlySet<(string Quantity, string Spelling)> Refused = new HashSet<(string, string)>
    {
        ("duration", "m"),
        ("angle", "g"),
        ("angle", "r"),
        ("angle", "sec"),
        ("angle", "min"),
        ("angle", "sin(θ)"),
    };
}
