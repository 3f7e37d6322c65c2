using System.Globalization;
using FsCheck.Xunit;
using Momentum.Cases.Report.Model;

namespace Momentum.Tool.Tests.Report;

public sealed class FigureTests
{
    [Theory]
    [InlineData(4.5, 4, "4.500")]
    [InlineData(-0.012345, 3, "\u22120.0123")]
    [InlineData(9.9996, 4, "10.00")]
    [InlineData(12345.6, 4, "12\u202F346")]
    [InlineData(1234.5, 5, "1234.5")]
    [InlineData(0, 4, "0")]
    [InlineData(-0.0, 4, "0")]
    [InlineData(1.2e-7, 3, "1.20\u00A0×\u00A010⁻⁷")]
    [InlineData(-6.02214076e23, 4, "\u22126.022\u00A0×\u00A010²³")]
    public void Number_shows_its_significant_digits(double value, int digits, string shown)
    {
        Assert.Equal(shown, new Figure(value, "", digits).Number);
    }

    [Fact]
    public void Unit_stays_on_the_line_of_its_number()
    {
        Assert.Equal("72.00\u00A0rpm", new Figure(72, "rpm").ToString());
    }

    [Fact]
    public void What_rounding_left_of_nothing_is_shown_as_nothing()
    {
        Assert.Equal("0", new Figure(-3e-15, "rpm", zeroBelow: 1e-9).Number);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Number_that_is_none_is_refused(double value)
    {
        Assert.Throws<ArgumentException>(() => new Figure(value, "m"));
    }

    [Property]
    public bool Number_read_back_is_the_value_to_its_digits(double value)
    {
        if (!double.IsFinite(value) || Math.Abs(value) is < 1e-300 or > 1e300)
        {
            return true;
        }

        string[] parts = new Figure(value, "", 6).Number.Replace("\u202F", "", StringComparison.Ordinal).Replace('\u2212', '-').Split("\u00A0×\u00A010");
        double read = double.Parse(parts[0], CultureInfo.InvariantCulture)
            * (parts.Length == 1 ? 1 : Math.Pow(10, int.Parse(string.Concat(parts[1].Select(c => c == '⁻' ? '-' : (char)('0' + "⁰¹²³⁴⁵⁶⁷⁸⁹".IndexOf(c, StringComparison.Ordinal)))), CultureInfo.InvariantCulture)));

        // Half a unit in the sixth digit is at most 5e-6 of the value; the power of ten adds a few units in the last place.
        return Math.Abs(read - value) <= 5.000001e-6 * Math.Abs(value);
    }
}
