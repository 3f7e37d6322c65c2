using Momentum.Analyzers.Tests.Verification;

namespace Momentum.Analyzers.Tests.Inference;

/// <summary>Frame, point and sign convention of the numbers that leave this library's two inertia types.</summary>
public sealed class TensorTests
{
    [Theory]
    [InlineData("_ = InertiaTensor<Body>.Diagonal({|MOM012:props.InertiaAbout(deck).Xx|}, t.Yy, t.Zz);")]
    [InlineData("PointInertia<Body> p = props.InertiaAbout(deck); Euler({|MOM012:p.Xx.KilogramSquareMeters|});")]
    [InlineData("_ = InertiaTensor<Body>.Of(t.Xx, t.Yy, t.Zz, {|MOM013:t.Xy|}, default, default, ProductSign.PositiveIntegral);")]
    [InlineData("Sheet({|MOM013:t.Xy.KilogramSquareMeters|});")]
    [InlineData("Span<double> m = stackalloc double[9]; t.CopySiTo(m); Sheet({|MOM013:m[1]|}); _ = MassMomentOfInertia.FromPoundSquareInches({|MOM004:m[0]|});")]
    [InlineData("_ = InertiaTensor<Inertial>.Diagonal({|MOM011:t.Xx|}, {|MOM011:t.Yy|}, {|MOM011:t.Zz|});")]
    [InlineData("_ = Position<Body>.Of({|MOM004:l.Feet|}, 0, l.Meters, LengthUnit.Meter);")]
    [InlineData("_ = Position<Body>.Of({|MOM011:fixedPoint.X.Meters|}, 0, 0, LengthUnit.Meter);")]
    public Task What_leaves_a_tensor_keeps_its_meaning(string body) => Run(body);

    [Theory]
    [InlineData("_ = InertiaTensor<Body>.Of(t.Xx, t.Yy, t.Zz, t.Xy, t.Xz, t.Yz, ProductSign.TensorElement);")]
    [InlineData("_ = InertiaTensor<Body>.Of(t.Xx, t.Yy, t.Zz, -t.Xy, -t.Xz, -t.Yz, ProductSign.PositiveIntegral);")]
    [InlineData("Sheet(-t.Xy.KilogramSquareMeters); Euler(t.Xx.KilogramSquareMeters);")]
    [InlineData("_ = InertiaTensor<Body>.Diagonal(props.InertiaAbout(props.CentreOfMass).Xx, t.Yy, t.Zz);")]
    [InlineData("var p = props.InertiaAbout(deck); _ = InertiaTensor<Body>.Diagonal(p.Xx - MassMomentOfInertia.FromKilogramSquareMeters(props.Mass.Kilograms * l.Meters * l.Meters), t.Yy, t.Zz);")]
    [InlineData("var p = props.InertiaAbout(deck); var q = props.InertiaAbout(hub); double sum = p.Xx.KilogramSquareMeters + q.Xx.KilogramSquareMeters;")]
    [InlineData("Span<double> m = stackalloc double[9]; t.CopySiTo(m); _ = MassMomentOfInertia.FromKilogramSquareMeters(m[4]);")]
    [InlineData("_ = Position<Body>.Of(l.Feet, 0, 3, LengthUnit.Foot);")]
    public Task Right_handling_is_silent(string body) => Run(body);

    [Fact]
    public Task A_moment_of_inertia_may_be_moved_to_another_point() => Check.Members(
        """
        [return: About("deck origin")] double ToDeck([About("centre of mass")] double central, Mass m, Length d) => central + m.Kilograms * d.Meters * d.Meters;
        [return: About("deck origin")] double NotMoved([About("centre of mass")] double central) => {|MOM012:central|};
        [return: About("centre of mass")] double Sum([About("centre of mass")] double a, [About("centre of mass")] double b) { double sum = 0; sum += a; sum += b; return sum; }
        """);

    private static Task Run(string body) => Check.Members(
        $$"""
        static void Euler([About("center of mass")] double moment) { }
        static void Sheet([ProductSign("positive integral")] double xy) { }
        void Run(Momentum.Inertia.MassProperties<Body> props, Position<Body> deck, Position<Body> hub, Position<Inertial> fixedPoint, Length l)
        {
            var t = props.Inertia;
            {{body}}
        }
        """.Replace("InertiaTensor<", "Momentum.Inertia.InertiaTensor<", StringComparison.Ordinal)
            .Replace("PointInertia<", "Momentum.Inertia.PointInertia<", StringComparison.Ordinal)
            .Replace("ProductSign.", "Momentum.Inertia.ProductSign.", StringComparison.Ordinal));
}
