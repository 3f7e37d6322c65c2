namespace Momentum.Cases.Quantities;

/// <summary>Units that are often taken for one another, and what to tell who did so.</summary>
internal static class Confusions
{
    /// <summary>The hint for a unit of one kind used for another, or null if it is no known confusion.</summary>
    public static string? Between(string unit, string wanted) => (wanted, unit) switch
    {
        ("force", "kg" or "g" or "lb" or "lbm" or "oz") => $"Mass is not force: write {unit}f for the weight of that mass, or newtons, for example \"2.1 kN\".",
        ("mass", "lbf" or "kgf" or "ozf" or "N") => "Force is not mass: write the mass, for example \"2 lb\" or \"0.9 kg\".",
        ("spin rate", "Hz" or "1/s" or "s⁻¹") => "A frequency does not say whether turns or radians are counted: write \"1 rev/s\" or \"6.2832 rad/s\".",
        ("spin rate", "rad" or "deg" or "°") => "That is an angle: write it a second, for example \"7.5 rad/s\" or \"430 deg/s\".",
        ("moment of inertia", "slug" or "kg" or "lb") => "That is a mass: multiply by the square of the radius of gyration, for example \"18.4 kg*m^2\" or \"13.6 slug*ft^2\".",
        ("moment of inertia", "lbf·ft" or "lbf·in" or "in·lbf" or "ft·lbf" or "N·m") => "That is a torque: an inertia in these units has a second squared, for example \"163 lbf*in*s^2\".",
        ("moment of inertia", "m⁴" or "mm⁴" or "in⁴" or "m^4" or "mm^4" or "in^4" or "m4" or "mm4" or "in4") => "That is a second moment of area of a cross-section, not of mass: write for example \"18.4 kg*m^2\".",
        ("duration", "m") => "\"m\" is a metre: write \"min\" for minutes or \"s\" for seconds.",
        ("angle", "g" or "r") => "Write an angle in \"deg\" or \"rad\", for example \"4 deg\".",
        ("angle", "min" or "sec") => "Write \"arcmin\" or \"arcsec\" for parts of a degree, for example \"30 arcmin\".",
        ("linear density", "kg" or "g" or "lb" or "oz") => "That is the mass of a piece: divide by its length, for example \"7.4 g/m\".",
        _ => null,
    };
}
