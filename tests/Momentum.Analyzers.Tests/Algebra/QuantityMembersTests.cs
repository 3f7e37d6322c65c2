using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Momentum.Analyzers.Algebra;
using UnitsNet;
using UnitUnderTest = Momentum.Analyzers.Algebra.Unit;

namespace Momentum.Analyzers.Tests.Algebra;

/// <summary>
/// The analyzer's units against a general-purpose units library, member by member: each is known, and has the dimension and
/// the size that the library's own conversions give it.
/// </summary>
public sealed class QuantityMembersTests
{
    // Given by the library another dimension or the inverse size than their names say.
    private static readonly string[] _outside = ["Compressibility", "SpecificFuelConsumption"];

    // Some of the library's factors have only four digits (its pound foot per second is 3.3e-4 off, its inch of mercury 1e-4);
    // the analyzer's are exact.
    private const double Tolerance = 4e-4;

    public static TheoryData<string> Quantities() => new(Quantity.Infos.Select(i => i.Name).Except(_outside));

    [Theory]
    [MemberData(nameof(Quantities))]
    public void Every_unit_has_the_dimension_and_size_of_a_units_library(string name)
    {
        QuantityInfo info = Quantity.ByName[name];
        UnitUnderTest first = QuantityMembers.Read(name, info.UnitInfos[0].PluralName)!;
        foreach (UnitInfo member in info.UnitInfos)
        {
            UnitUnderTest? unit = QuantityMembers.Read(name, member.PluralName);
            Assert.True(unit is not null, $"{name}.{member.PluralName} is not known; run with MOMENTUM_WRITE_TABLES=1.");
            Assert.Equal(unit, QuantityMembers.Read(name, member.Name));
            Assert.True(unit.Dimension.WithoutAngle.Equals(Of(info.BaseDimensions)), $"{name}.{member.PluralName} has dimension {info.BaseDimensions} and is read as {unit.Symbol}");
            if (IsLinear(info, member) && IsLinear(info, info.UnitInfos[0]))
            {
                double size = Quantity.From(1, member.Value).As(info.UnitInfos[0].Value);
                double read = UnitMatch.Between(unit, first).Ratio.Value;
                Assert.True(Math.Abs(read - size) <= Tolerance * size, $"{name}.{member.PluralName} is {size} {info.UnitInfos[0].PluralName} and is read as {read}");
            }
        }
    }

    [Fact]
    public void Two_units_of_one_quantity_differ()
    {
        foreach (QuantityInfo info in Quantity.Infos)
        {
            foreach (UnitInfo one in info.UnitInfos)
            {
                foreach (UnitInfo other in info.UnitInfos.Where(o => string.CompareOrdinal(o.Name, one.Name) > 0))
                {
                    bool same = IsLinear(info, one) && IsLinear(info, other) && Math.Abs(Quantity.From(1, one.Value).As(other.Value) - 1) < 1e-3;
                    Assert.True(
                        same || !UnitMatch.Between(QuantityMembers.Read(info.Name, one.PluralName)!, QuantityMembers.Read(info.Name, other.PluralName)!).Agree,
                        $"{info.Name}: {one.PluralName} and {other.PluralName} are taken for one unit");
                }
            }
        }
    }

    [Fact]
    public async Task The_table_of_members_is_the_one_that_the_library_gives()
    {
        StringBuilder text = new();
        foreach (QuantityInfo info in Quantity.Infos.OrderBy(i => i.Name, StringComparer.Ordinal))
        {
            BaseDimensions powers = info.BaseDimensions;
            foreach (UnitInfo member in info.UnitInfos.Where(m => !IsReadByWords(info.Name, m.PluralName)).OrderBy(m => m.Name, StringComparer.Ordinal))
            {
                string size = IsLinear(info, member) ? Size(info, member).ToString("R", CultureInfo.InvariantCulture) : "own";
                string symbol = UnitsNetSetup.Default.UnitAbbreviations.GetDefaultAbbreviation(member.Value.GetType(), Convert.ToInt32(member.Value, CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
                _ = text.Append(CultureInfo.InvariantCulture, $"{info.Name}\t{member.Name}\t{member.PluralName}\t{(symbol.Length == 0 ? member.Name : symbol)}\t{powers.Mass} {powers.Length} {powers.Time} {powers.Temperature} {powers.Current} {powers.Amount} {powers.LuminousIntensity}\t{size}\n");
            }
        }

        if (Environment.GetEnvironmentVariable("MOMENTUM_WRITE_TABLES") == "1")
        {
            await File.WriteAllTextAsync(Table(), text.ToString());
        }

        Assert.Equal(text.ToString(), await File.ReadAllTextAsync(Table()));
    }

    private static bool IsReadByWords(string quantity, string member) => QuantityMembers.Read(quantity, member) is not null && MemberTable.Read(quantity, member) is null;

    // The library's base unit of a quantity may be another than the SI's (a degree, a bit): the size is in units of one that
    // is read by words, where there is one.
    private static double Size(QuantityInfo info, UnitInfo member)
    {
        UnitInfo anchor = info.UnitInfos.FirstOrDefault(m => IsReadByWords(info.Name, m.PluralName)) ?? info.BaseUnitInfo;
        return Quantity.From(1, member.Value).As(anchor.Value) * (IsReadByWords(info.Name, anchor.PluralName) ? QuantityMembers.Read(info.Name, anchor.PluralName)!.Scale.Value : 1);
    }

    // Neither logarithmic, nor with an offset, nor inverse.
    private static bool IsLinear(QuantityInfo info, UnitInfo member)
    {
        if (info.Name is "Level" or "AmplitudeRatio" or "PowerRatio" || member.Name == "Tilt")
        {
            return false;
        }

        double one = Quantity.From(1, member.Value).As(info.BaseUnitInfo.Value);
        double two = Quantity.From(2, member.Value).As(info.BaseUnitInfo.Value);
        return one > 0 && Math.Abs(two - (2 * one)) <= 1e-9 * one;
    }

    private static Dimension Of(BaseDimensions powers) => Dimension.Of(
        mass: powers.Mass, length: powers.Length, time: powers.Time, temperature: powers.Temperature, current: powers.Current, amount: powers.Amount, light: powers.LuminousIntensity);

    private static string Table([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "analyzers", "Momentum.Analyzers", "Algebra", "MemberTable.txt");
}
