using Momentum.Frames;
using Momentum.Inertia;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

public sealed class SolidTests
{
    private static readonly Mass _mass = Mass.FromKilograms(100);

    private static Length M(double metres) => Length.FromMeters(metres);

    private static Density Density(double value) => UnitsNet.Density.FromKilogramsPerCubicMeter(value);

    // Moments of bodies of 100 kg about their centre of mass, across and about the axis. Formulas as on the inside cover of
    // F. P. Beer and E. R. Johnston, Vector Mechanics for Engineers (from memory, not read), evaluated by hand; each is also
    // our own integration.
    public static TheoryData<string, Solid, double, double, double> Handbook => new()
    {
        { "cylinder", Solid.Cylinder(_mass, M(0.5), M(1.2)), 18.25, 18.25, 12.5 },
        { "tube", Solid.Tube(_mass, M(0.5), M(0.4), M(1.2)), 22.25, 22.25, 20.5 },
        { "cone", Solid.Cone(_mass, M(0.5), M(1.2)), 9.15, 9.15, 7.5 },
        { "sphere", Solid.Sphere(_mass, M(0.5)), 10, 10, 10 },
        { "spherical shell", Solid.SphericalShell(_mass, M(0.5)), 50 / 3.0, 50 / 3.0, 50 / 3.0 },
        { "box", Solid.Box(_mass, M(0.5), M(0.4), M(0.3)), 25 / 12.0, 34 / 12.0, 41 / 12.0 },
        { "rod", Solid.Rod(_mass, M(1.2)), 12, 12, 0 },
        { "disc", Solid.Disc(_mass, M(0.5)), 6.25, 6.25, 12.5 },
        { "point", Solid.Point(_mass), 0, 0, 0 },
    };

    [Theory]
    [MemberData(nameof(Handbook))]
    public void Moments_about_the_centre_of_mass_are_the_handbook_ones(string shape, Solid solid, double xx, double yy, double zz)
    {
        PointInertia<Part> inertia = solid.InertiaAbout(solid.CentreOfMass);
        Assert.Equal(shape, solid.Shape);
        Assert.Equal(100, solid.Mass.Kilograms);

        // Half a dozen roundings of numbers near 20.
        Assert.Equal(xx, inertia.Xx.KilogramSquareMeters, 2e-14);
        Assert.Equal(yy, inertia.Yy.KilogramSquareMeters, 2e-14);
        Assert.Equal(zz, inertia.Zz.KilogramSquareMeters, 2e-14);
        Assert.Equal(0, inertia.Xy.KilogramSquareMeters);
        Assert.Equal(0, inertia.Xz.KilogramSquareMeters);
        Assert.Equal(0, inertia.Yz.KilogramSquareMeters);
    }

    [Fact]
    public void A_cone_has_ninety_and_some_about_its_apex()
    {
        // 9.15 + 100 (0.9)² = 90.15, the handbook's 3/5 m (r²/4 + h²) about the apex.
        Solid cone = Solid.Cone(_mass, M(0.5), M(1.2));
        Assert.Equal(0.3, cone.CentreOfMass.Z.Meters);
        Assert.Equal(90.15, cone.InertiaAbout(Position<Part>.Of(0, 0, 1.2, LengthUnit.Meter)).Xx.KilogramSquareMeters, 1e-13);
    }

    // Own arithmetic: volume, area or length times 1000, 10 or 2.
    public static TheoryData<Solid, double> ByDensity => new()
    {
        { Solid.Cylinder(Density(1000), M(0.5), M(1.2)), 300 * Math.PI },
        { Solid.Tube(Density(1000), M(0.5), M(0.4), M(1.2)), 108 * Math.PI },
        { Solid.Cone(Density(1000), M(0.5), M(1.2)), 100 * Math.PI },
        { Solid.Sphere(Density(1000), M(0.5)), 500 * Math.PI / 3 },
        { Solid.SphericalShell(AreaDensity.FromKilogramsPerSquareMeter(10), M(0.5)), 10 * Math.PI },
        { Solid.Disc(AreaDensity.FromKilogramsPerSquareMeter(10), M(0.5)), 2.5 * Math.PI },
        { Solid.Box(Density(1000), M(0.5), M(0.4), M(0.3)), 60 },
        { Solid.Rod(LinearDensity.FromKilogramsPerMeter(2), M(1.2)), 2.4 },
    };

    [Theory]
    [MemberData(nameof(ByDensity))]
    public void Mass_from_density_is_density_times_extent(Solid solid, double kilograms) =>
        Assert.Equal(kilograms, solid.Mass.Kilograms, 1e-15 * 4 * kilograms);

    [Fact]
    public void A_tube_is_a_cylinder_less_a_cylinder()
    {
        MassProperties<Body> bored = new Assembly<Body>()
            .Add("billet", Solid.Cylinder(Density(2700), M(0.5), M(1.2)))
            .Subtract("bore", Solid.Cylinder(Density(2700), M(0.4), M(1.2)))
            .Build();
        MassProperties<Body> tube = new Assembly<Body>().Add("tube", Solid.Tube(Density(2700), M(0.5), M(0.4), M(1.2))).Build();
        Assert.Equal(tube.Mass.Kilograms, bored.Mass.Kilograms, 1e-12);
        Assert.True(bored.Inertia.EqualsWithin(tube.Inertia, MassMomentOfInertia.FromKilogramSquareMeters(1e-12)));
    }

    [Fact]
    public void A_thin_wall_is_the_limit_of_a_tube()
    {
        // m r² about the axis of a hoop.
        Assert.Equal(25, Solid.Tube(_mass, M(0.5), M(0.5), M(1)).InertiaAbout(default).Zz.KilogramSquareMeters);
        Assert.Equal("innerRadius", Assert.Throws<ArgumentOutOfRangeException>(() => Solid.Tube(Density(1), M(0.5), M(0.5), M(1))).ParamName);
    }

    public static TheoryData<string, Action> Refused => new()
    {
        { "mass", () => Solid.Point(Mass.Zero) },
        { "mass", () => Solid.Sphere(Mass.FromKilograms(-1), M(1)) },
        { "radius", () => Solid.Sphere(_mass, Length.Zero) },
        { "radius", () => Solid.Cylinder(_mass, M(-0.1), M(1)) },
        { "height", () => Solid.Cylinder(Density(1), M(0.1), M(-1)) },
        { "density", () => Solid.Cone(Density(0), M(0.1), M(1)) },
        { "density", () => Solid.Rod(LinearDensity.FromKilogramsPerMeter(-1), M(1)) },
        { "innerRadius", () => Solid.Tube(_mass, M(0.4), M(0.5), M(1)) },
        { "z", () => Solid.Box(_mass, M(1), M(1), M(0)) },
        { "length", () => Solid.Rod(_mass, M(0)) },
        { "mass", () => Solid.Disc(_mass, M(1e200)) },
        { "mass", () => Solid.Box(Density(1), M(1e-150), M(1e-150), M(1e-150)) },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_no_solid_can_have_is_refused_by_name(string parameter, Action make) =>
        Assert.Equal(parameter, Assert.Throws<ArgumentOutOfRangeException>(make).ParamName);
}
