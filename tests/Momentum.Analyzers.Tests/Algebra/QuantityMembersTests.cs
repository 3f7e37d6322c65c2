using Momentum.Analyzers.Algebra;
using UnitsNet;
using UnitUnderTest = Momentum.Analyzers.Algebra.Unit;

namespace Momentum.Analyzers.Tests.Algebra;

/// <summary>
/// The analyzer's own table of units against a general-purpose units library: each unit of the mechanical quantities has
/// the dimension and the size that the library's conversions give it.
/// </summary>
public sealed class QuantityMembersTests
{
    // Quantities whose every unit must be read; the other quantities' units may be unknown but never wrong.
    private static readonly string[] _complete =
    [
        "Angle", "RotationalSpeed", "RotationalAcceleration", "Force", "Torque", "MassMomentOfInertia", "Impulse", "ForcePerLength", "RotationalStiffness", "TorquePerLength",
        "LinearDensity", "Acceleration", "Jerk", "AreaMomentOfInertia", "TemperatureDelta",
    ];

    // No units of mechanics, or need an offset, or (compressibility, specific fuel consumption) given by the library another
    // dimension or the inverse size than their names say.
    private static readonly string[] _outside =
        ["Temperature", "Ratio", "Level", "Information", "BitRate", "FuelEfficiency", "AmountOfSubstance", "Compressibility", "SpecificFuelConsumption"];

    // No product of unit words, or misspelt.
    private static readonly string[] _unreadable = ["NatoMils", "Tilt", "DegreesDelisle", "DegreesNewton", "DegreesReaumur", "DegreesRoemer", "KilotonneSquareMilimeters", "MegatonneSquareMilimeters", "TonneSquareMilimeters"];

    // Some of the library's factors have only four digits (its pound foot per second is 3.3e-4 off); the analyzer's are exact.
    private const double Tolerance = 4e-4;

    public static TheoryData<string> Quantities() => new(Quantity.Infos.Select(i => i.Name).Except(_outside));

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Units_have_the_dimension_and_size_of_a_units_library(string name)
    {
        QuantityInfo info = Quantity.ByName[name];
        List<string> unread = [];
        foreach (UnitInfo member in info.UnitInfos)
        {
            UnitUnderTest? unit = QuantityMembers.Read(name, member.PluralName);
            if (unit is null)
            {
                unread.Add(member.PluralName);
                continue;
            }

            BaseDimensions expected = info.BaseDimensions;
            Dimension actual = unit.Dimension.WithoutAngle;
            Assert.True(
                actual.Equals(Dimension.Of(expected.Mass, expected.Length, expected.Time, 0, 0, expected.Temperature)),
                $"{name}.{member.PluralName} has dimension {expected} and is read as {unit.Symbol}");

            double size = Quantity.From(1, member.Value).As(info.BaseUnitInfo.Value);
            if (QuantityMembers.Read(name, info.BaseUnitInfo.PluralName) is { } baseUnit)
            {
                double read = UnitMatch.Between(unit, baseUnit).Ratio.Value;
                Assert.True(Math.Abs(read - size) <= Tolerance * size, $"{name}.{member.PluralName} is {size} base units and is read as {read}");
            }
        }

        if (_complete.Contains(name))
        {
            Assert.Empty(unread.Except(_unreadable));
        }
    }

    [Fact]
    public void A_singular_and_a_plural_are_one_unit()
    {
        foreach (string name in _complete)
        {
            foreach (UnitInfo member in Quantity.ByName[name].UnitInfos)
            {
                Assert.Equal(QuantityMembers.Read(name, member.PluralName), QuantityMembers.Read(name, member.Name));
            }
        }
    }
}
