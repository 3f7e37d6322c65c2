using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tests.Frames;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

[Properties(Arbitrary = [typeof(AnyBody), typeof(AnyTurn)])]
public sealed class MassPropertiesTests
{
    private static readonly Position<Body> _elsewhere = Position<Body>.Of(0.4, -2, 1.1, LengthUnit.Meter);

    private static MassMomentOfInertia Si(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);

    private static Position<Body> At(double x, double y, double z) => Position<Body>.Of(x, y, z, LengthUnit.Meter);

    private static double Spread(AnyBody body, Position<Body> point) =>
        body.Largest + (body.Mass * Math.Pow((body.Centre - point).Magnitude.Meters, 2));

    // The corner tetrahedron (0, e1, e2, e3) of density 1; own integration, and the transfer whose sign published code once
    // had wrong (B. Mirtich, Fast and Accurate Computation of Polyhedral Mass Properties, J. Graphics Tools 1(2), 1996;
    // corrected 1997).
    [Fact]
    public void Moving_the_corner_tetrahedron_from_its_corner_to_its_centre_turns_the_sign_of_its_products()
    {
        var corner = PointInertia<Body>.Of(
            Position<Body>.Origin, Si(1 / 30.0), Si(1 / 30.0), Si(1 / 30.0), Si(1 / 120.0), Si(1 / 120.0), Si(1 / 120.0), ProductSign.PositiveIntegral);
        var body = MassProperties<Body>.Of(Mass.FromKilograms(1 / 6.0), At(0.25, 0.25, 0.25), corner);

        // Rounding of 1/30.
        Assert.Equal(1 / 80.0, body.Inertia.Xx.KilogramSquareMeters, 1e-17);
        Assert.Equal(1 / 480.0, body.Inertia.Xy.KilogramSquareMeters, 1e-17);
        Assert.Equal(1 / 480.0, body.Inertia.Xz.KilogramSquareMeters, 1e-17);
        Assert.Equal(1 / 480.0, body.Inertia.Yz.KilogramSquareMeters, 1e-17);
        Assert.Equal(-1 / 120.0, body.InertiaAbout(Position<Body>.Origin).Xy.KilogramSquareMeters, 1e-17);
        Assert.Equal(1 / 30.0, body.InertiaAbout(Position<Body>.Origin).Zz.KilogramSquareMeters, 1e-17);
    }

    [Fact]
    public void The_unit_cube_about_its_corner_has_two_thirds_and_a_product_of_a_quarter()
    {
        // Own integration: ∫(y² + z²) = 2/3, ∫xy = 1/4 over the unit cube; 1/6 about its centre.
        var cube = MassProperties<Body>.Of(Mass.FromKilograms(1), At(0.5, 0.5, 0.5), InertiaTensor<Body>.Diagonal(Si(1 / 6.0), Si(1 / 6.0), Si(1 / 6.0)));
        PointInertia<Body> corner = cube.InertiaAbout(Position<Body>.Origin);
        Assert.Equal(2 / 3.0, corner.Xx.KilogramSquareMeters, 1e-15);
        Assert.Equal(-0.25, corner.Xy.KilogramSquareMeters);
    }

    [Property]
    public bool Parallel_axes_there_and_back_give_the_inertia_again(AnyBody body)
    {
        PointInertia<Body> moved = body.Properties.InertiaAbout(_elsewhere);

        // The transfer adds and takes away m d²: what is left is good to its rounding. A body so small beside it that no
        // digits would be left is refused, which is right.
        double spread = Spread(body, _elsewhere);
        if (body.Largest < 1e-12 * spread)
        {
            return true;
        }

        MassProperties<Body> back = MassProperties<Body>.Of(body.Properties.Mass, body.Centre, moved);
        return back.Inertia.EqualsWithin(body.Inertia, Si(1e-15 * spread));
    }

    [Property]
    public bool Inertia_about_the_centre_of_mass_is_the_least_along_every_axis(AnyBody body)
    {
        PointInertia<Body> about = body.Properties.InertiaAbout(_elsewhere);
        double rounding = 1e-14 * Spread(body, _elsewhere);
        Direction<Body> axis = Direction<Body>.Of(1, 2, -3);
        return about.AboutAxis(axis).KilogramSquareMeters >= body.Inertia.AboutAxis(axis).KilogramSquareMeters - rounding;
    }

    [Fact]
    public void Inertia_about_the_centre_taken_for_inertia_about_the_origin_is_refused_with_that_cause()
    {
        PointInertia<Body> stated = PointInertia<Body>.Of(Position<Body>.Origin, Si(31.5), Si(32.1), Si(18.4), Si(0), Si(0), Si(0), ProductSign.TensorElement);
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => MassProperties<Body>.Of(Mass.FromKilograms(182), At(0, 0, 0.612), stated));
        Assert.Equal("inertia", refusal.ParamName);
        Assert.Contains("may be about the centre of mass already", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Inertias_about_different_points_do_not_add()
    {
        PointInertia<Body> here = PointInertia<Body>.Of(Position<Body>.Origin, Si(1), Si(1), Si(1), Si(0), Si(0), Si(0), ProductSign.TensorElement);
        PointInertia<Body> there = PointInertia<Body>.Of(_elsewhere, Si(1), Si(1), Si(1), Si(0), Si(0), Si(0), ProductSign.TensorElement);
        Assert.Equal(Si(2), (here + here).Xx);
        Assert.Throws<ArgumentException>(() => here + there);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_mass_that_is_not_above_zero_is_refused(double kilograms)
    {
        InertiaTensor<Body> inertia = InertiaTensor<Body>.Diagonal(Si(1), Si(1), Si(1));
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(
            () => MassProperties<Body>.Of(Mass.FromKilograms(kilograms), Position<Body>.Origin, inertia));
        Assert.Equal("mass", refusal.ParamName);
    }

    [Fact]
    public void A_body_without_inertia_is_refused() =>
        Assert.Throws<ArgumentException>(() => MassProperties<Body>.Of(Mass.FromKilograms(1), Position<Body>.Origin, default(InertiaTensor<Body>)));

    [Property]
    public bool Joining_two_bodies_adds_their_inertia_about_any_point(AnyBody a, AnyBody b)
    {
        MassProperties<Body> both = a.Properties + b.Properties;
        PointInertia<Body> apart = a.Properties.InertiaAbout(_elsewhere) + b.Properties.InertiaAbout(_elsewhere);
        return both.InertiaAbout(_elsewhere).EqualsWithin(apart, Si(1e-14 * (Spread(a, _elsewhere) + Spread(b, _elsewhere))));
    }

    [Property]
    public bool Another_frame_sees_the_same_body(AnyBody body, AnyTurn turn)
    {
        Rotation<Body, Inertial> rotation = turn.To<Body, Inertial>();
        Position<Inertial> origin = Position<Inertial>.Of(3, 1, -2, LengthUnit.Meter);
        MassProperties<Inertial> seen = body.Properties.ExpressedIn(rotation, origin);

        // The same point in both frames has the same inertia, turned.
        Position<Inertial> point = origin + rotation.Apply(_elsewhere.FromOrigin);
        PointInertia<Body> about = body.Properties.InertiaAbout(_elsewhere);
        Direction<Body> axis = Direction<Body>.Of(1, 2, -3);
        return seen.SiMass == body.Mass &&
            Math.Abs((seen.InertiaAbout(point).AboutAxis(rotation.Apply(axis)) - about.AboutAxis(axis)).KilogramSquareMeters) <= 2e-14 * Spread(body, _elsewhere);
    }

    [Fact]
    public void Default_is_no_body_and_adds_nothing()
    {
        var body = MassProperties<Body>.Of(Mass.FromKilograms(1), Position<Body>.Origin, InertiaTensor<Body>.Diagonal(Si(1), Si(1), Si(1)));
        Assert.Equal(body, body + default(MassProperties<Body>));
        Assert.Equal(body, default(MassProperties<Body>) + body);
        Assert.Throws<ArgumentException>(() => default(MassProperties<Body>) + default(MassProperties<Body>));
    }
}
