using System.Globalization;
using System.Text.RegularExpressions;

namespace Momentum.Package.Tests;

/// <summary>
/// The analyzer as it comes in the package. One built for a newer compiler than the user's is dropped with a mere warning,
/// CS9057; the consumer treats warnings as errors, so that here it is not.
/// </summary>
[Collection(PackedOnce.Name)]
public sealed partial class PackedAnalyzerTests(Packages packages)
{
    // Each statement in two forms, «right|wrong»; the comment names the rule that stops the wrong one.
    private const string Program = """
        using Momentum.Quantities;
        using UnitsNet;

        MassMomentOfInertia inertia = MassMomentOfInertia.FromKilogramSquareMeters(41.2);
        RotationalSpeed spin = RotationalSpeed.FromRevolutionsPerMinute(72);
        Length radius = Length.FromMillimeters(430);
        Length cord = Length.FromMeters(6.5);
        double reach = «radius.Meters|radius.Millimeters» + cord.Meters; // MOM001
        bool longer = «cord.Meters|cord.Feet» > radius.Meters; // MOM002
        AngularMomentum stored = AngularMomentum.FromKilogramSquareMetersPerSecond(inertia.KilogramSquareMeters * «spin.RadiansPerSecond|spin.RevolutionsPerMinute»); // MOM005
        double slope = Math.Sin(«Angle.FromDegrees(30).Radians|Angle.FromDegrees(30).Degrees»); // MOM006
        Rig.Turn(«spin.RadiansPerSecond|spin.RevolutionsPerMinute»); // MOM008
        Console.WriteLine($"{reach} {longer} {stored} {slope}");

        internal static class Rig
        {
            internal static void Turn([Unit("rad/s")] double rate) => Console.WriteLine(rate);
        }
        """;

    [Fact]
    public void It_stops_the_build_at_each_mixed_unit_and_nowhere_else()
    {
        string program = TwoForms().Replace(Program, "${wrong}");
        IEnumerable<string> seeded = program.Split('\n')
            .Select((line, index) => (Rule: Seed().Match(line), Line: index + 1))
            .Where(seed => seed.Rule.Success)
            .Select(seed => string.Create(CultureInfo.InvariantCulture, $"{seed.Line} {seed.Rule.Value}"));
        string output = new Consumer(packages, "Confused").With(program).FailsToBuild();
        IEnumerable<string> found = Error().Matches(output).Select(error => $"{error.Groups["line"]} {error.Groups["id"]}").Distinct();
        Assert.Equal(seeded.Order(StringComparer.Ordinal), found.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void It_is_silent_once_the_units_are_mended() =>
        new Consumer(packages, "Mended").With(TwoForms().Replace(Program, "${right}")).Builds();

    [Fact]
    public void Its_fixes_come_along_and_mend_the_code()
    {
        Consumer consumer = new Consumer(packages, "Fixed").With("""
            using UnitsNet;

            Angle tilt = Angle.FromDegrees(30);
            double radians = tilt.Degrees * Math.PI / 180;
            Console.WriteLine(radians);

            """);
        Assert.Contains("MOM010", consumer.FailsToBuild(), StringComparison.Ordinal);
        string mended = consumer.Applies("MOM010");
        Assert.Contains("double radians = tilt.Radians;", mended, StringComparison.Ordinal);
        Assert.Equal("0.5235987755982988\n", consumer.BuildsAndRuns());
    }

    [GeneratedRegex(@"«(?<right>[^|]*)\|(?<wrong>[^»]*)»")]
    private static partial Regex TwoForms();

    [GeneratedRegex("MOM[0-9]{3}$")]
    private static partial Regex Seed();

    [GeneratedRegex(@"Program\.cs\((?<line>[0-9]+),[0-9]+\): (error|warning) (?<id>[A-Z]+[0-9]+):")]
    private static partial Regex Error();
}
