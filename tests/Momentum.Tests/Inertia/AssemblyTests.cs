using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tests.Frames;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

[Properties(Arbitrary = [typeof(AnyBody), typeof(AnyTurn)])]
public sealed class AssemblyTests
{
    private static readonly string[] _orders = ["abc", "acb", "bac", "bca", "cab", "cba"];

    private static Length M(double metres) => Length.FromMeters(metres);

    private static Mass Kg(double kilograms) => Mass.FromKilograms(kilograms);

    private static Position<Body> At(double x, double y, double z) => Position<Body>.Of(x, y, z, LengthUnit.Meter);

    private static MassMomentOfInertia Si(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);

    // An invented instrument deck.
    private static Assembly<Body> Deck() => new Assembly<Body>()
        .Add("structure", Solid.Tube(Kg(60), M(0.5), M(0.45), M(1.1)), At(0, 0, 0.55))
        .Add("tank", Solid.Sphere(Kg(40), M(0.3)), At(0, 0, 0.4), growth: Ratio.FromPercent(10))
        .Add("box", Solid.Box(Kg(12), M(0.3), M(0.2), M(0.2)), At(0.3, 0.1, 0.9), new AnyTurn(1, 1, 0, 30).To<Part, Body>(), Ratio.FromPercent(20))
        .Add("boom", Solid.Rod(Kg(1.5), M(2)), At(0, 0.5, 1), new AnyTurn(1, 0, 0, 90).To<Part, Body>());

    [Fact]
    public void Two_points_on_a_bar_are_a_rod()
    {
        // Own arithmetic: masses 1 and 3 kg, 4 m apart; reduced mass 3/4 kg, so 12 kg·m² across, 0 along.
        MassProperties<Body> dumbbell = new Assembly<Body>()
            .Add("light", Solid.Point(Kg(1)), At(0, 0, 1))
            .Add("heavy", Solid.Point(Kg(3)), At(0, 0, 5))
            .Build();
        Assert.Equal(At(0, 0, 4), dumbbell.CentreOfMass);
        Assert.Equal(InertiaTensor<Body>.Diagonal(Si(12), Si(12), Si(0)), dumbbell.Inertia);
    }

    [Fact]
    public void Four_points_in_a_plane_are_a_lamina()
    {
        MassProperties<Body> cross = new Assembly<Body>()
            .Add("a", Solid.Point(Kg(1)), At(1, 0, 0)).Add("b", Solid.Point(Kg(1)), At(-1, 0, 0))
            .Add("c", Solid.Point(Kg(1)), At(0, 2, 0)).Add("d", Solid.Point(Kg(1)), At(0, -2, 0))
            .Build();
        Assert.Equal(InertiaTensor<Body>.Diagonal(Si(8), Si(2), Si(10)), cross.Inertia);
    }

    [Fact]
    public void A_turned_rod_lies_along_its_new_axis_and_its_product_has_the_tensors_sign()
    {
        // A rod from (-1, -1) to (1, 1): ∫ x y dm > 0, so the tensor's element is negative: -m l²/24.
        MassProperties<Body> rod = new Assembly<Body>()
            .Add("rod", Solid.Rod(Kg(3), M(2 * Math.Sqrt(2))), turned: Rotation<Part, Body>.About(Direction<Part>.Of(-1, 1, 0), Angle.FromDegrees(90)))
            .Build();
        Assert.Equal(-1, rod.Inertia.Xy.KilogramSquareMeters, 1e-14);
        Assert.Equal(1, rod.Inertia.Xx.KilogramSquareMeters, 1e-14);
        Assert.Equal(2, rod.Inertia.Zz.KilogramSquareMeters, 1e-14);
    }

    [Fact]
    public void The_parts_contributions_add_up_to_the_whole()
    {
        MassProperties<Body> whole = Deck().Build();
        IReadOnlyList<PartContribution<Body>> parts = Deck().Contributions();
        Assert.Equal(["structure", "tank", "box", "boom"], parts.Select(p => p.Name));
        Assert.Equal(whole.SiMass, parts.Sum(p => p.PredictedMass.Kilograms), 1e-13);
        PointInertia<Body> sum = parts.Select(p => p.Inertia).Aggregate((a, b) => a + b);
        Assert.Equal(whole.CentreOfMass, sum.About);
        Assert.True(sum.EqualsWithin(whole.InertiaAbout(whole.CentreOfMass), Si(1e-13)));
    }

    [Fact]
    public void Growth_adds_its_fraction_of_mass_and_inertia()
    {
        PartContribution<Body> tank = Deck().Contributions()[1];
        Assert.Equal(40, tank.BasicMass.Kilograms);
        Assert.Equal(44, tank.PredictedMass.Kilograms, 1e-14);

        // 60 + 40 × 1.1 + 12 × 1.2 + 1.5 kg; four roundings of numbers near 100.
        Assert.Equal(119.9, Deck().Build().SiMass, 6e-14);

        MassProperties<Body> sphere = new Assembly<Body>().Add("s", Solid.Sphere(Kg(100), M(0.5)), growth: Ratio.FromPercent(25)).Build();
        Assert.Equal(12.5, sphere.Inertia.Xx.KilogramSquareMeters, 1e-14);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(101)]
    public void Growth_outside_0_to_100_per_cent_is_refused(double percent) =>
        Assert.Equal("growth", Assert.Throws<ArgumentOutOfRangeException>(
            () => new Assembly<Body>().Add("s", Solid.Point(Kg(1)), growth: Ratio.FromPercent(percent))).ParamName);

    [Property(MaxTest = 40)]
    public bool The_order_of_the_parts_does_not_matter(AnyBody a, AnyBody b, AnyBody c, AnyTurn turn)
    {
        (string Name, Solid Solid, Position<Body> At)[] parts =
        [
            ("a", Solid.Box(Kg(a.Mass), M(1), M(0.1), M(0.5)), a.Centre),
            ("b", Solid.Cone(Kg(b.Mass), M(0.3), M(0.1)), b.Centre),
            ("c", Solid.Point(Kg(c.Mass)), c.Centre),
        ];
        MassProperties<Body>[] wholes = [.. _orders.Select(order =>
        {
            Assembly<Body> assembly = new();
            foreach (char name in order)
            {
                (string n, Solid solid, Position<Body> at) = parts[name - 'a'];
                assembly.Add(n, solid, at, turn.To<Part, Body>());
            }

            return assembly.Build();
        })];

        // Rounding of arms of metres and, times mass, of the inertias.
        double mass = a.Mass + b.Mass + c.Mass;
        return wholes.All(w =>
            Math.Abs(w.SiMass - wholes[0].SiMass) <= 4e-16 * mass &&
            w.CentreOfMass.EqualsWithin(wholes[0].CentreOfMass, M(1e-14)) &&
            w.Inertia.EqualsWithin(wholes[0].Inertia, Si(1e-13 * mass)));
    }

    [Property]
    public bool Adding_and_then_subtracting_a_part_leaves_the_rest(AnyBody a, AnyTurn turn)
    {
        Solid plug = Solid.Cylinder(Kg(a.Mass), M(0.2), M(0.7));
        MassProperties<Body> without = Deck().Build();
        MassProperties<Body> with = Deck()
            .Add("plug", plug, a.Centre, turn.To<Part, Body>())
            .Subtract("plug again", plug, a.Centre, turn.To<Part, Body>())
            .Build();
        double size = without.SiMass + a.Mass;
        return Math.Abs(with.SiMass - without.SiMass) <= 1e-15 * size &&
            with.CentreOfMass.EqualsWithin(without.CentreOfMass, M(1e-14 * size / without.SiMass)) &&
            with.Inertia.EqualsWithin(without.Inertia, Si(1e-13 * size));
    }

    [Property]
    public bool A_distant_origin_costs_no_more_digits_than_its_coordinates_have(AnyTurn turn)
    {
        // A kilometre off: coordinates are good to 1e-13 m, and so arms of a metre to 1e-13.
        Assembly<Body> near = new Assembly<Body>().Add("a", Solid.Sphere(Kg(5), M(0.5)), At(0, 0, 0)).Add("b", Solid.Rod(Kg(3), M(1)), At(1, 0.5, 0.25), turn.To<Part, Body>());
        Assembly<Body> far = new Assembly<Body>().Add("a", Solid.Sphere(Kg(5), M(0.5)), At(1024, 2048, 0)).Add("b", Solid.Rod(Kg(3), M(1)), At(1025, 2048.5, 0.25), turn.To<Part, Body>());
        return far.Build().Inertia.EqualsWithin(near.Build().Inertia, Si(1e-11));
    }

    [Fact]
    public void An_assembly_that_is_no_body_is_refused_with_the_reason()
    {
        Assert.Contains("no part", Refusal(new Assembly<Body>()), StringComparison.Ordinal);
        Assert.Contains("only a point mass", Refusal(new Assembly<Body>().Add("p", Solid.Point(Kg(1)), At(1, 2, 3))), StringComparison.Ordinal);
        Assert.Contains("only a point mass", Refusal(new Assembly<Body>().Add("p", Solid.Point(Kg(1)), At(1, 2, 3)).Add("q", Solid.Point(Kg(2)), At(1, 2, 3))), StringComparison.Ordinal);

        string more = Refusal(new Assembly<Body>().Add("plate", Solid.Disc(Kg(1), M(1))).Subtract("hole A", Solid.Disc(Kg(2), M(0.5))).Subtract("hole B", Solid.Point(Kg(1))));
        Assert.Contains("More is subtracted than there is: parts add 1 kg, holes (hole A, hole B) subtract 3 kg", more, StringComparison.Ordinal);
        Assert.Contains("More is subtracted", Refusal(new Assembly<Body>().Add("plate", Solid.Disc(Kg(1), M(1))).Subtract("all", Solid.Disc(Kg(1), M(1)))), StringComparison.Ordinal);

        // A hole of less mass, but out where there is no material.
        string outside = Refusal(new Assembly<Body>().Add("ball", Solid.Sphere(Kg(10), M(0.1))).Subtract("stray hole", Solid.Sphere(Kg(1), M(0.05)), At(3, 0, 0)));
        Assert.Contains("stray hole", outside, StringComparison.Ordinal);
        Assert.Contains("misplaced", outside, StringComparison.Ordinal);

        static string Refusal(Assembly<Body> assembly) => Assert.Throws<ComputationRefusedException>(() => assembly.Build()).Message;
    }

    [Fact]
    public void A_part_with_stated_figures_is_placed_like_any_other()
    {
        var motor = MassProperties<Part>.Of(Kg(20), Position<Part>.Of(0, 0, 0.1, LengthUnit.Meter), InertiaTensor<Part>.Diagonal(Si(1), Si(2), Si(2.5)));
        MassProperties<Body> placed = new Assembly<Body>()
            .Add("motor", Solid.Stated(motor), At(1, 0, 0), new AnyTurn(0, 1, 0, 90).To<Part, Body>())
            .Build();

        // A quarter turn about y takes part z to body x, and part x to body -z.
        Assert.True(placed.CentreOfMass.EqualsWithin(At(1.1, 0, 0), M(1e-15)));
        Assert.True(placed.Inertia.EqualsWithin(InertiaTensor<Body>.Diagonal(Si(2.5), Si(2), Si(1)), Si(1e-14)));
        Assert.Throws<ArgumentException>(() => Solid.Stated(default));
    }

    [Fact]
    public void A_part_without_a_name_is_refused() =>
        Assert.Throws<ArgumentException>(() => new Assembly<Body>().Add(" ", Solid.Point(Kg(1))));
}
