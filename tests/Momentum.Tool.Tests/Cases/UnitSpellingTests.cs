using Momentum.Cases.Quantities;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Tool.Tests.Cases;

/// <summary>
/// Every spelling converts by its exact factor. The expected numbers are products of lb = 0.45359237 kg, in = 0.0254 m and
/// g_n = 9.80665 m/s^2 (NIST SP 811), worked out apart from the program.
/// </summary>
public sealed class UnitSpellingTests
{
    // A product of four factors, each rounded once, is within a few units in the last place.
    private const double Tolerance = 1e-15;

    [Theory]
    [InlineData(typeof(MassMomentOfInertia), "1 slug*ft^2", 1.3558179483314004)]
    [InlineData(typeof(MassMomentOfInertia), "1 slug-ft^2", 1.3558179483314004)]
    [InlineData(typeof(MassMomentOfInertia), "1 lbf*ft*s^2", 1.3558179483314004)]
    [InlineData(typeof(MassMomentOfInertia), "1 lbf*in*s^2", 0.1129848290276167)]
    [InlineData(typeof(MassMomentOfInertia), "1 lbf·in·s²", 0.1129848290276167)]
    [InlineData(typeof(MassMomentOfInertia), "1 lb*ft^2", 0.0421401100938048)]
    [InlineData(typeof(MassMomentOfInertia), "1 lb ft2", 0.0421401100938048)]
    [InlineData(typeof(MassMomentOfInertia), "1 lb*in^2", 2.926396534292e-4)]
    [InlineData(typeof(MassMomentOfInertia), "1 oz*in^2", 1.8289978339325e-5)]
    [InlineData(typeof(MassMomentOfInertia), "1 ozf*in*s^2", 0.00706155181422604375)]
    [InlineData(typeof(MassMomentOfInertia), "1 kgf*cm*s^2", 0.0980665)]
    [InlineData(typeof(MassMomentOfInertia), "1 kg*m^2", 1)]
    [InlineData(typeof(MassMomentOfInertia), "1 kg·m²", 1)]
    [InlineData(typeof(MassMomentOfInertia), "1e3 g*cm^2", 1e-4)]
    [InlineData(typeof(Mass), "1 lb", 0.45359237)]
    [InlineData(typeof(Mass), "1 lbm", 0.45359237)]
    [InlineData(typeof(Mass), "16 oz", 0.45359237)]
    [InlineData(typeof(Mass), "1 slug", 14.593902937206364829)]
    [InlineData(typeof(Mass), "1 g", 1e-3)]
    [InlineData(typeof(Length), "1 in", 0.0254)]
    [InlineData(typeof(Length), "1 ft", 0.3048)]
    [InlineData(typeof(Length), "1mm", 1e-3)]
    [InlineData(typeof(Force), "1 lbf", 4.4482216152605)]
    [InlineData(typeof(Force), "1 kgf", 9.80665)]
    [InlineData(typeof(Force), "1 kN", 1e3)]
    [InlineData(typeof(Torque), "1 lbf*in", 0.1129848290276167)]
    [InlineData(typeof(Torque), "1 in-lbf", 0.1129848290276167)]
    [InlineData(typeof(Torque), "1 ozf*in", 0.00706155181422604375)]
    [InlineData(typeof(Torque), "1 kgf*cm", 0.0980665)]
    [InlineData(typeof(Torque), "1 N*m", 1)]
    [InlineData(typeof(RotationalSpeed), "30 rpm", Math.PI)]
    [InlineData(typeof(RotationalSpeed), "30 rev/min", Math.PI)]
    [InlineData(typeof(RotationalSpeed), "1 rev/s", 2 * Math.PI)]
    [InlineData(typeof(RotationalSpeed), "180 deg/s", Math.PI)]
    [InlineData(typeof(RotationalSpeed), "2 rad/s", 2)]
    [InlineData(typeof(LinearDensity), "1 g/m", 1e-3)]
    [InlineData(typeof(LinearDensity), "1 lb/ft", 1.4881639435695537)]
    [InlineData(typeof(LinearDensity), "1 lb/in", 17.857967322834646)]
    [InlineData(typeof(Density), "1 g/cm^3", 1e3)]
    [InlineData(typeof(Density), "1 lb/in^3", 27679.904710203125)]
    [InlineData(typeof(Angle), "180 deg", Math.PI)]
    [InlineData(typeof(Angle), "10800 arcmin", Math.PI)]
    [InlineData(typeof(Duration), "2 ms", 2e-3)]
    [InlineData(typeof(Duration), "1 min", 60)]
    [InlineData(typeof(Ratio), "2 %", 0.02)]
    [InlineData(typeof(Ratio), "0.02", 0.02)]
    [InlineData(typeof(Acceleration), "9.80665 m/s^2", 9.80665)]
    public void A_quantity_converts_by_the_exact_factor(Type quantity, string text, double si)
    {
        QuantityText? parsed = QuantityText.Parse(text, QuantityKinds.ByType[quantity], out Trouble? trouble);

        Assert.True(parsed is not null, trouble?.Message);
        Assert.InRange(parsed.Si / si, 1 - Tolerance, 1 + Tolerance);
    }

    [Fact]
    public void Every_spelling_of_every_unit_agrees_with_UnitsNet_to_its_own_accuracy()
    {
        // UnitsNet 5.75 rounds some customary units: the slug and inertias by up to 1.2e-8, densities by up to 2e-7.
        foreach (QuantityKind kind in QuantityKinds.ByType.Values)
        {
            foreach ((string spelling, Unit unit) in kind.Units)
            {
                if (unit.Known is null && UnitsNetSetup.Default.UnitParser.TryParse(spelling, UnitTypeOf(kind), System.Globalization.CultureInfo.InvariantCulture, out Enum? known))
                {
                    Assert.InRange(kind.ToSi(1, unit) / kind.ToSi(1, new Unit(known, double.NaN)), 1 - 2e-7, 1 + 2e-7);
                }
            }
        }

        static Type UnitTypeOf(QuantityKind kind) => kind.Units.Values.First(u => u.Known is not null).Known!.GetType();
    }

    [Theory]
    [InlineData("18.4 kg*m^2 +/- 2 %", ScatterShape.Normal, 0.368, 0.368, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 ± 2 %", ScatterShape.Normal, 0.368, 0.368, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +/- 0.5 kg*m^2", ScatterShape.Normal, 0.5, 0.5, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +/- 6 % 3 sigma", ScatterShape.Normal, 0.368, 0.368, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +/- 1 kg*m^2 2 sigma", ScatterShape.Normal, 0.5, 0.5, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +/- 0.5 kg*m^2 max", ScatterShape.Uniform, 0.5, 0.5, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +/- 3 % max", ScatterShape.Uniform, 0.552, 0.552, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +0.2/-0 kg*m^2 max", ScatterShape.Uniform, 0, 0.2, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +0.2 kg*m^2/-1 %", ScatterShape.Normal, 0.184, 0.2, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 + 3 / -6 kg*m^2 3 sigma", ScatterShape.Normal, 2, 1, ScatterShape.None, 0)]
    [InlineData("18.4 kg*m^2 +/- 2 % +/- 0.1 kg*m^2 each", ScatterShape.Normal, 0.368, 0.368, ScatterShape.Normal, 0.1)]
    [InlineData("18.4 kg*m^2 +/- 0.1 kg*m^2 max each", ScatterShape.None, 0, 0, ScatterShape.Uniform, 0.1)]
    [InlineData("16.4 to 20.4 kg*m^2", ScatterShape.Uniform, 2, 2, ScatterShape.None, 0)]
    [InlineData("16.4 kg*m^2 to 20.4 kg*m^2 +/- 1 kg*m^2 each", ScatterShape.Uniform, 2, 2, ScatterShape.Normal, 1)]
    [InlineData("18.4 kg*m^2", ScatterShape.None, 0, 0, ScatterShape.None, 0)]
    public void A_tolerance_is_read_as_a_law_of_the_quantity(string text, ScatterShape shape, double below, double above, ScatterShape eachShape, double each)
    {
        QuantityText? parsed = QuantityText.Parse(text, QuantityKinds.ByType[typeof(MassMomentOfInertia)], out Trouble? trouble);

        Assert.True(parsed is not null, trouble?.Message);
        Assert.Equal(18.4, parsed.Si, 1e-13);
        Assert.Equal(shape, parsed.Tolerance.Shared.Shape);
        Assert.Equal(below, parsed.Tolerance.Shared.Below, 1e-13);
        Assert.Equal(above, parsed.Tolerance.Shared.Above, 1e-13);
        Assert.Equal(eachShape, parsed.Tolerance.Each.Shape);
        Assert.Equal(each, parsed.Tolerance.Each.Above, 1e-13);
    }

    [Theory]
    [InlineData("18.4 kg*m^2 +/- 2 % +/- 1 %", "more than one tolerance")]
    [InlineData("18.4 kg*m^2 +/- 2 % each +/- 1 % each", "more than one tolerance of each")]
    [InlineData("18.4 kg*m^2 +/- 0 kg*m^2", "not more than zero")]
    [InlineData("18.4 kg*m^2 +0/-0 kg*m^2", "not more than zero")]
    [InlineData("18.4 kg*m^2 +/- 200 %", "larger than the value itself")]
    [InlineData("18.4 kg*m^2 +/- 1 kg", "in its tolerance")]
    [InlineData("18.4 kg*m^2 +/- 3 sigma", "in its tolerance")]
    [InlineData("18.4 kg*m^2 +/- 2 % 0 sigma", "more than zero standard deviations")]
    [InlineData("18.4 kg*m^2 +/- 2 % 3 sigma max", "both limits")]
    [InlineData("20.4 to 16.4 kg*m^2", "does not go upward")]
    [InlineData("16.4 to 20.4 kg*m^2 +/- 1 %", "a range and has a tolerance")]
    public void A_tolerance_that_says_nothing_or_two_things_is_refused(string text, string says)
    {
        Assert.Null(QuantityText.Parse(text, QuantityKinds.ByType[typeof(MassMomentOfInertia)], out Trouble? trouble));
        Assert.Contains(says, trouble!.Message, StringComparison.Ordinal);
    }
}
