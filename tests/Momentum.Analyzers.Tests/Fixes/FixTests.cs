using Microsoft.CodeAnalysis.CodeFixes;
using Momentum.Analyzers.Tests.Verification;
using Momentum.CodeFixes;

namespace Momentum.Analyzers.Tests.Fixes;

public sealed class FixTests
{
    [Theory]
    [InlineData("double x = a.Meters + {|MOM001:b.Feet|}; double y = a.Feet - {|MOM001:b.Inches|};", "double x = a.Meters + b.Meters; double y = a.Feet - b.Feet;")]
    [InlineData("bool x = a.Meters < {|MOM002:b.Feet|};", "bool x = a.Meters < b.Meters;")]
    [InlineData("var x = Length.FromMeters({|MOM004:a.Feet|});", "var x = Length.FromMeters(a.Meters);")]
    [InlineData("double x = Math.Sin({|MOM006:angle.Degrees|}) + Math.Cos({|MOM006:angle.Degrees|});", "double x = Math.Sin(angle.Radians) + Math.Cos(angle.Radians);")]
    [InlineData("var x = RotationalSpeed.FromRadiansPerSecond({|MOM008:w.RevolutionsPerMinute|});", "var x = RotationalSpeed.FromRadiansPerSecond(w.RadiansPerSecond);")]
    [InlineData("var x = Mass.FromSlugs({|MOM009:m.Pounds|});", "var x = Mass.FromSlugs(m.Slugs);")]
    public Task A_quantity_is_read_in_the_expected_unit(string marked, string mended) => Fix.Body<ReadInUnitFix>(marked, mended);

    [Fact]
    public Task A_stored_number_is_read_in_the_stated_unit() => Fix.Members<ReadInUnitFix>(
        """[Unit("rpm")] double _rate; [Unit("mm")] double _length; void Run(RotationalSpeed w, Length l) { _rate = {|MOM008:w.RadiansPerSecond|}; _length = {|MOM003:l.Meters|}; }""",
        """[Unit("rpm")] double _rate; [Unit("mm")] double _length; void Run(RotationalSpeed w, Length l) { _rate = w.RevolutionsPerMinute; _length = l.Millimeters; }""");

    [Fact]
    public Task A_temperature_is_read_on_the_expected_scale() => Fix.Members<ReadInUnitFix>(
        "void Run(Temperature t) => _ = Temperature.FromKelvins({|MOM017:t.DegreesCelsius|});",
        "void Run(Temperature t) => _ = Temperature.FromKelvins(t.Kelvins);");

    [Theory]
    [InlineData("double x = b.Feet; double y = a.Meters + {|MOM001:x|};", "double x = b.Feet; double y = a.Meters + Length.FromFeet(x).Meters;")]
    [InlineData("double x = angle.Degrees; double y = Math.Sin({|MOM006:x / 2|});", "double x = angle.Degrees; double y = Math.Sin(Angle.FromDegrees(x / 2).Radians);")]
    [InlineData("double x = hz.Hertz; var y = RotationalSpeed.FromRadiansPerSecond({|MOM008:x|});", "double x = hz.Hertz; var y = RotationalSpeed.FromRadiansPerSecond(Frequency.FromHertz(x).RadiansPerSecond);")]
    [InlineData("var y = Area.FromSquareMeters({|MOM005:a.Feet * b.Feet|});", "var y = Area.FromSquareMeters(Area.FromSquareFeet(a.Feet * b.Feet).SquareMeters);")]
    public Task A_bare_number_is_converted_at_the_boundary(string marked, string mended) => Fix.Body<ConvertFix>(marked, mended);

    [Fact]
    public Task A_number_with_a_named_unit_is_converted() => Fix.Members<ConvertNamedFix>(
        "double Run(double lengthMm, double lengthFt) => lengthMm + {|MOM101:lengthFt|};",
        "double Run(double lengthMm, double lengthFt) => lengthMm + Length.FromFeet(lengthFt).Millimeters;");

    [Theory]
    [InlineData("Nm", "N*m")]
    [InlineData("kgm2", "kg*m^2")]
    [InlineData("RPM", "rpm")]
    [InlineData("Nms", "N*m*s")]
    [InlineData("lbfin", "lbf*in")]
    public Task The_text_of_a_unit_is_written_so_that_it_can_be_read(string text, string mended) => Fix.Members<UnitTextFix>(
        $$"""[Unit({|MOM016:"{{text}}"|})] double _value;""",
        $$"""[Unit("{{mended}}")] double _value;""");

    [Fact]
    public void A_fix_that_rests_on_a_name_is_never_applied_in_bulk()
    {
        Assert.Null(new ConvertNamedFix().GetFixAllProvider());
        Assert.Null(new RenameFix().GetFixAllProvider());
        Assert.Null(new StateUnitFix().GetFixAllProvider());
        CodeFixProvider[] inBulk = [new ConvertFix(), new ReadInUnitFix(), new ReadFactorsFix(), new BuildFromUnitFix(), new TypedConversionFix(), new NegateFix(), new UseResultFix()];
        Assert.DoesNotContain(inBulk.SelectMany(fix => fix.FixableDiagnosticIds), id => id.StartsWith("MOM1", StringComparison.Ordinal) || id.StartsWith("MOM2", StringComparison.Ordinal));
    }

    [Fact]
    public Task A_single_name_is_never_mended() => Fix.Members<ConvertFix>(
        "double Run(double angleDeg) => Math.Sin({|MOM201:angleDeg|});",
        "double Run(double angleDeg) => Math.Sin({|MOM201:angleDeg|});");

    [Theory]
    [InlineData("double x = a.Feet; var y = Length.FromMeters({|MOM004:x|});", "double x = a.Feet; var y = Length.FromFeet(x);")]
    [InlineData("var y = Area.FromSquareMeters({|MOM005:a.Feet * b.Feet|});", "var y = Area.FromSquareFeet(a.Feet * b.Feet);")]
    [InlineData("double x = w.RevolutionsPerMinute; var y = RotationalSpeed.FromRadiansPerSecond({|MOM008:x|});", "double x = w.RevolutionsPerMinute; var y = RotationalSpeed.FromRevolutionsPerMinute(x);")]
    public Task A_quantity_is_built_from_the_unit_of_its_number(string marked, string mended) => Fix.Body<BuildFromUnitFix>(marked, mended);

    [Theory]
    [InlineData(
        "double x = {|MOM010:angle.Degrees * Math.PI / 180|} + 2 * ({|MOM010:Math.PI / 180 * angle.Degrees|});",
        "double x = angle.Radians + 2 * (angle.Radians);")]
    [InlineData("double x = {|MOM010:a.Inches * 25.4|};", "double x = a.Millimeters;")]
    [InlineData("var x = Length.FromMillimeters({|MOM010:a.Meters * 1000|});", "var x = Length.FromMillimeters(a.Millimeters);")]
    public Task A_factor_becomes_a_typed_conversion(string marked, string mended) => Fix.Body<TypedConversionFix>(marked, mended);

    [Theory]
    [InlineData("{|MOM014:a.ToUnit(LengthUnit.Meter)|}; {|MOM014:b.ToUnit(LengthUnit.Foot)|};", "a = a.ToUnit(LengthUnit.Meter); b = b.ToUnit(LengthUnit.Foot);")]
    [InlineData(
        "var q = Rotation<Body, Inertial>.Identity; {|MOM014:q.Inverse()|};",
        "var q = Rotation<Body, Inertial>.Identity; {|MOM014:q.Inverse()|};")]
    public Task A_result_is_kept_where_it_fits(string marked, string mended) => Fix.Body<UseResultFix>(marked, mended);

    [Fact]
    public Task A_product_of_inertia_changes_sign_with_the_convention() => Fix.Members<NegateFix>(
        """
        [ProductSign("tensor element")] double _xy; [ProductSign("positive integral")] double _pxy;
        void Take([ProductSign("tensor element")] double xy) { }
        void Run() { Take({|MOM013:_pxy|}); double s = _xy + {|MOM013:_pxy|}; }
        """,
        """
        [ProductSign("tensor element")] double _xy; [ProductSign("positive integral")] double _pxy;
        void Take([ProductSign("tensor element")] double xy) { }
        void Run() { Take(-_pxy); double s = _xy + (-_pxy); }
        """);

    [Fact]
    public Task A_local_is_renamed_after_what_it_holds() => Fix.Members<RenameFix>(
        "double Run(double lengthMm) { double depthM = {|MOM101:lengthMm|}; return depthM * 2; }",
        "double Run(double lengthMm) { double depthMm = lengthMm; return depthMm * 2; }");

    [Fact]
    public Task A_unit_in_a_name_is_stated_by_attribute() => Fix.Members<StateUnitFix>(
        "double Run(double lengthMm, double lengthFt) => lengthMm + {|MOM101:lengthFt|};",
        "double Run(double lengthMm, [Unit(\"ft\")] double lengthFt) => lengthMm + {|MOM201:lengthFt|};");

    [Theory]
    [InlineData(
        "var x = AngularMomentum.FromKilogramSquareMetersPerSecond({|MOM005:inertia.KilogramSquareMeters * w.RevolutionsPerMinute|});",
        "var x = AngularMomentum.FromKilogramSquareMetersPerSecond(inertia.KilogramSquareMeters * w.RadiansPerSecond);")]
    [InlineData(
        "var x = Energy.FromJoules({|MOM005:0.5 * inertia.KilogramSquareMeters * Math.Pow(w.RevolutionsPerMinute, 2)|});",
        "var x = Energy.FromJoules(0.5 * inertia.KilogramSquareMeters * Math.Pow(w.RadiansPerSecond, 2));")]
    [InlineData(
        "var x = Energy.FromJoules({|MOM005:inertia.KilogramSquareMeters * w.DegreesPerSecond * w.DegreesPerSecond / 2|});",
        "var x = Energy.FromJoules(inertia.KilogramSquareMeters * w.RadiansPerSecond * w.RadiansPerSecond / 2);")]
    [InlineData(
        "var x = AngularMomentum.FromKilogramSquareMetersPerSecond({|MOM005:inertia.PoundSquareInches * w.RevolutionsPerMinute|});",
        "var x = AngularMomentum.FromKilogramSquareMetersPerSecond(inertia.KilogramSquareMeters * w.RadiansPerSecond);")]
    [InlineData("double x = a.Meters + {|MOM001:w.DegreesPerSecond * time.Seconds * b.Meters|};", "double x = a.Meters + w.RadiansPerSecond * time.Seconds * b.Meters;")]
    [InlineData("double s = Math.Sin({|MOM006:w.RevolutionsPerMinute * time.Minutes|});", "double s = Math.Sin(w.RadiansPerSecond * time.Seconds);")]
    [InlineData("var x = Speed.FromMetersPerSecond({|MOM005:a.Feet / time.Seconds|});", "var x = Speed.FromMetersPerSecond(a.Meters / time.Seconds);")]
    [InlineData(
        "var x = AngularMomentum.FromKilogramSquareMetersPerSecond(\n    {|MOM005:inertia.KilogramSquareMeters // of the hub\n    * w.RevolutionsPerMinute|} /* of the deck */);",
        "var x = AngularMomentum.FromKilogramSquareMetersPerSecond(\n    inertia.KilogramSquareMeters // of the hub\n    * w.RadiansPerSecond /* of the deck */);")]
    public Task Factors_are_read_in_units_that_give_the_expected_one(string marked, string mended) => Fix.Body<ReadFactorsFix>(marked, mended);

    // Parentheses, signs, casts, As, conditional arms, interpolated strings, several lines, comments.
    [Theory]
    [InlineData("var x = Length.FromMeters(({|MOM004:a.Feet|}));", "var x = Length.FromMeters((a.Meters));")]
    [InlineData("var x = Length.FromMeters({|MOM004:-a.Feet|});", "var x = Length.FromMeters(-a.Meters);")]
    [InlineData("System.Threading.Thread.Sleep({|MOM004:(int)time.Seconds|});", "System.Threading.Thread.Sleep((int)time.Milliseconds);")]
    [InlineData("var x = Length.FromMeters({|MOM004:a.As(LengthUnit.Foot)|});", "var x = Length.FromMeters(a.Meters);")]
    [InlineData("var x = Length.FromMeters(b.Meters > 2 ? a.Meters : {|MOM004:a.Feet|});", "var x = Length.FromMeters(b.Meters > 2 ? a.Meters : a.Meters);")]
    [InlineData("string x = $\"{Math.Sin({|MOM006:angle.Degrees|}):F3} {a.Meters + {|MOM001:b.Feet|}:F1}\";", "string x = $\"{Math.Sin(angle.Radians):F3} {a.Meters + b.Meters:F1}\";")]
    [InlineData("double x = a.Meters // near\n    + /* far */ {|MOM001:b\n        .Feet|} /* end */;", "double x = a.Meters // near\n    + /* far */ b\n        .Meters /* end */;")]
    [InlineData("double Sine(Angle t) => Math.Sin({|MOM006:t.Degrees|}); double y = Sine(angle);", "double Sine(Angle t) => Math.Sin(t.Radians); double y = Sine(angle);")]
    public Task A_reading_is_mended_wherever_it_stands(string marked, string mended) => Fix.Body<ReadInUnitFix>(marked, mended);

    [Theory]
    [InlineData("double x = b.Feet; string y = $\"{a.Meters + {|MOM001:x|}:F1}\";", "double x = b.Feet; string y = $\"{a.Meters + Length.FromFeet(x).Meters:F1}\";")]
    [InlineData("double x = b.Feet; double y = a.Meters + /* far */ ({|MOM001:x|}); // end", "double x = b.Feet; double y = a.Meters + /* far */ (Length.FromFeet(x).Meters); // end")]
    [InlineData("double x = time.Seconds; System.Threading.Thread.Sleep({|MOM004:(int)x|});", "double x = time.Seconds; System.Threading.Thread.Sleep((int)Duration.FromSeconds((int)x).Milliseconds);")]
    [InlineData("double x = b.Feet; double y = 2 * (a.Meters - {|MOM001:2 * x|});", "double x = b.Feet; double y = 2 * (a.Meters - Length.FromFeet(2 * x).Meters);")]
    [InlineData("double Height(double x) => a.Meters + x; double h = Height({|MOM004:b.Feet * 2|});", "double Height(double x) => a.Meters + x; double h = Height(Length.FromFeet(b.Feet * 2).Meters);")]
    public Task A_number_is_converted_wherever_it_stands(string marked, string mended) => Fix.Body<ConvertFix>(marked, mended);

    // There is no quantity for a whole array.
    [Fact]
    public Task An_array_is_not_converted() => Fix.Members<ConvertFix>(
        """[Unit("ft")] double[] _span = new double[2]; void Take([Unit("m")] double[] span) { } void Run() => Take({|MOM004:_span|});""",
        """[Unit("ft")] double[] _span = new double[2]; void Take([Unit("m")] double[] span) { } void Run() => Take({|MOM004:_span|});""");

    [Theory]
    [InlineData("double x = {|MOM010:angle.Degrees // tilt\n    * Math.PI / 180|};", "double x = // tilt\nangle.Radians;")]
    [InlineData("double x = {|MOM010:angle.Degrees /* tilt */ * Math.PI / 180|} /* end */;", "double x = /* tilt */ angle.Radians /* end */;")]
    [InlineData("string x = $\"{{|MOM010:angle.Degrees * Math.PI / 180|}:F3}\";", "string x = $\"{angle.Radians:F3}\";")]
    [InlineData("double x = Math.Sin((({|MOM010:angle.Degrees * (Math.PI / 180)|})));", "double x = Math.Sin(((angle.Radians)));")]
    public Task A_factor_goes_and_its_comment_stays(string marked, string mended) => Fix.Body<TypedConversionFix>(marked, mended);

    [Theory]
    [InlineData("Func<double, Length> g = v => Length.FromMeters({|MOM004:(v, a.Feet).Item2|});", "Func<double, Length> g = v => Length.FromFeet((v, a.Feet).Item2);")]
    [InlineData("double x = a.Feet; var y = Length.FromMeters(({|MOM004:x|}));", "double x = a.Feet; var y = Length.FromFeet((x));")]
    [InlineData("double x = a.Feet; var y = UnitsNet.Length.FromMeters( /* in */ {|MOM004:x|} );", "double x = a.Feet; var y = UnitsNet.Length.FromFeet( /* in */ x );")]
    public Task A_factory_is_exchanged_wherever_it_stands(string marked, string mended) => Fix.Body<BuildFromUnitFix>(marked, mended);
}
