using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests.Rules;

public sealed class ObservationRulesTests
{
    [Theory]
    [InlineData("double x = {|MOM010:angle.Degrees * Math.PI / 180|};")]
    [InlineData("double x = {|MOM010:Math.PI / 180 * angle.Degrees|};")]
    [InlineData("double x = Math.Sin({|MOM010:angle.Degrees * 0.0174533|});")]
    [InlineData("double x = {|MOM010:angle.Radians * 57.3|};")]
    [InlineData("double x = {|MOM010:w.RevolutionsPerMinute * 0.10472|} + w.RadiansPerSecond;")]
    [InlineData("double x = {|MOM010:w.RevolutionsPerMinute * 2 * Math.PI / 60|};")]
    [InlineData("double x = {|MOM010:a.Inches * 25.4|};")]
    [InlineData("double x = {|MOM010:f.PoundsForce * 4.448|};")]
    [InlineData("var x = Force.FromKilogramsForce({|MOM010:f.Newtons / 9.80665|});")]
    [InlineData("var x = Length.FromMillimeters({|MOM010:a.Meters * 1000|});")]
    [InlineData("double x = {|MOM010:time.Minutes * 60|};")]
    public Task A_conversion_by_hand_of_a_quantity_is_reported(string body) => Check.Body(body);

    [Theory]
    [InlineData("double x = a.Meters * 1000; double y = a.Meters / 12; double z = 2 * Math.PI * a.Meters;")]
    [InlineData("double x = 1.05 * f.Newtons; var y = Mass.FromKilograms(f.Newtons / 9.80665);")]
    [InlineData("double deg = 30; double x = deg * Math.PI / 180;")]
    [InlineData("double x = m.Kilograms * 9.80665 * a.Meters;")]
    [InlineData("double d = angle.Degrees; double x = d * Math.PI / 180;")]
    public Task Other_products_are_not(string body) => Check.Body(body);

    [Theory]
    [InlineData("{|MOM014:a.ToUnit(LengthUnit.Meter)|};")]
    [InlineData("var q = Rotation<Body, Inertial>.Identity; {|MOM014:q.Inverse()|};")]
    public Task A_quantity_thrown_away_is_reported(string body) => Check.Body(body);

    [Theory]
    [InlineData("a = a.ToUnit(LengthUnit.Meter);")]
    [InlineData("_ = a.ToUnit(LengthUnit.Meter);")]
    [InlineData("try { a.ToUnit(LengthUnit.Meter); } catch (Exception) { }")]
    [InlineData("Action act = () => a.ToUnit(LengthUnit.Meter);")]
    [InlineData("a.ToString();")]
    public Task A_quantity_used_is_not(string body) => Check.Body(body);

    [Theory]
    [InlineData("bool x = {|MOM015:a.Meters == b.Meters|};")]
    [InlineData("bool x = {|MOM015:a.Meters * 2 != b.Meters|};")]
    [InlineData("bool x = {|MOM015:a == b|};")]
    [InlineData("bool x = {|MOM015:w != RotationalSpeed.FromRevolutionsPerMinute(3)|};")]
    public Task Equality_of_measured_values_is_reported(string body) => Check.Body(body);

    [Theory]
    [InlineData("bool x = a.Meters == 0;")]
    [InlineData("bool x = a == Length.Zero;")]
    [InlineData("bool x = a == default;")]
    [InlineData("const double Limit = 3; bool x = a.Meters != Limit;")]
    [InlineData("bool x = a.Meters <= b.Meters;")]
    [InlineData("bool x = (int)time.Seconds == 3; int n = 4; bool y = n == x.GetHashCode();")]
    public Task A_guard_is_not(string body) => Check.Body(body);

    [Fact]
    public Task Equality_may_be_defined() => Check.File(
        """
        using System;
        using UnitsNet;
        readonly struct Gauge : IEquatable<Gauge>
        {
            public Length Span { get; init; }
            public bool Equals(Gauge other) => Span.Meters == other.Span.Meters;
            public override bool Equals(object? obj) => obj is Gauge other && Equals(other);
            public override int GetHashCode() => 0;
            public static bool operator ==(Gauge left, Gauge right) => left.Span.Meters == right.Span.Meters;
            public static bool operator !=(Gauge left, Gauge right) => !(left == right);
        }
        """);

    [Fact]
    public Task A_unit_that_cannot_be_read_is_reported() => Check.Members(
        """
        [Unit("rad/s")] double _a;
        [Unit({|MOM016:"radians/second"|})] double _b;
        [Unit({|MOM016:"N*"|})] double _c;
        [Unit("kg*m^2/s")] double _d;
        """);

    [Theory]
    [InlineData("void Run(Temperature t) => _ = Temperature.FromKelvins({|MOM017:t.DegreesCelsius|});")]
    [InlineData("bool Run(Temperature t, Temperature u) => t.DegreesCelsius > {|MOM017:u.DegreesFahrenheit|};")]
    [InlineData("void Run(Temperature t) => _ = TemperatureDelta.FromKelvins({|MOM017:t.DegreesCelsius|});")]
    [InlineData("void Run(Temperature t, TemperatureDelta d) => _ = Temperature.FromDegreesCelsius(t.DegreesCelsius + d.Kelvins);")]
    [InlineData("void Run(Temperature t, Temperature u) => _ = TemperatureDelta.FromKelvins(t.DegreesCelsius - u.DegreesCelsius);")]
    [InlineData("double Run(Temperature t) => t.DegreesCelsius * 1.8 + 32;")]
    public Task Temperatures_and_differences_are_kept_apart(string members) => Check.Members(members);
}
