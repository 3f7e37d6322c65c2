using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

/// <summary>Parts in the same space, and holes where nothing is, are told; parts that fit are not.</summary>
public sealed class PartConflictTests
{
    private static readonly Density _density = Density.FromKilogramsPerCubicMeter(2700);

    private static Position<Body> At(double x, double y, double z) => Position<Body>.Of(x, y, z, LengthUnit.Meter);

    private static Length M(double metres) => Length.FromMeters(metres);

    [Fact]
    public void Two_boxes_that_overlap_are_told_with_about_the_volume_they_share()
    {
        PartConflict<Body> conflict = new Assembly<Body>()
            .Add("left", Solid.Box(_density, M(1), M(1), M(1)))
            .Add("right", Solid.Box(_density, M(1), M(1), M(1)), At(0.75, 0.5, 0))
            .Add("far", Solid.Box(_density, M(1), M(1), M(1)), At(5, 0, 0))
            .Conflicts().Single();
        Assert.Equal((PartConflictKind.Overlap, "left", "right"), (conflict.Kind, conflict.Part, conflict.Other));

        // 0.25 by 0.5 by 1 m.
        Assert.Equal(0.125, conflict.Volume.CubicMeters, 0.002);
        Assert.InRange(conflict.At.X.Meters, 0.25, 0.5);
        Assert.InRange(conflict.At.Y.Meters, 0, 0.5);
    }

    [Fact]
    public void Two_spheres_share_two_caps()
    {
        // Each cap of height h = 1 - 0.6: pi h² (3 - h)/3 (own integration).
        PartConflict<Body> conflict = new Assembly<Body>()
            .Add("one", Solid.Sphere(_density, M(1)))
            .Add("other", Solid.Sphere(_density, M(1)), At(0, 1.2, 0))
            .Conflicts().Single();
        Assert.Equal(2 * Math.PI * 0.16 * 2.6 / 3, conflict.Volume.CubicMeters, 0.05);
    }

    [Fact]
    public void Parts_that_fit_each_other_exactly_are_no_conflict()
    {
        Assert.Empty(new Assembly<Body>()
            .Add("case", Solid.Tube(_density, M(0.5), M(0.4), M(2)))
            .Add("charge", Solid.Cylinder(_density, M(0.4), M(2)))
            .Add("nose", Solid.Cone(_density, M(0.5), M(0.6)), At(0, 0, 1))
            .Add("deck", Solid.Box(_density, M(1), M(1), M(0.1)), At(0, 0, -1.05))
            .Add("beacon", Solid.Point(Mass.FromKilograms(1)))
            .Conflicts());
    }

    [Fact]
    public void A_part_in_a_hole_is_no_conflict_and_a_part_larger_than_its_hole_is()
    {
        Assembly<Body> Block(double part) => new Assembly<Body>()
            .Add("block", Solid.Box(_density, M(1), M(1), M(1)))
            .Subtract("bore", Solid.Cylinder(_density, M(0.3), M(1)))
            .Add("insert", Solid.Cylinder(_density, M(part), M(0.8)));
        Assert.Empty(Block(0.3).Conflicts());
        PartConflict<Body> conflict = Block(0.35).Conflicts().Single();
        Assert.Equal((PartConflictKind.Overlap, "block", "insert"), (conflict.Kind, conflict.Part, conflict.Other));
        Assert.Equal(Math.PI * ((0.35 * 0.35) - (0.3 * 0.3)) * 0.8, conflict.Volume.CubicMeters, 0.02);
    }

    [Fact]
    public void A_hole_outside_material_is_told_but_not_beside_a_part_whose_space_is_not_known()
    {
        Assembly<Body> assembly = new Assembly<Body>()
            .Add("block", Solid.Box(_density, M(1), M(1), M(1)))
            .Subtract("bore", Solid.Cylinder(_density, M(0.1), M(1)), At(0.45, 0, 0));
        PartConflict<Body> conflict = assembly.Conflicts().Single();
        Assert.Equal((PartConflictKind.HoleOutsideMaterial, "bore", null), (conflict.Kind, conflict.Part, conflict.Other));
        Assert.True(conflict.At.X.Meters > 0.5);
        Assert.Empty(assembly.Add("shell", Solid.SphericalShell(Mass.FromKilograms(1), M(3))).Conflicts());
    }

    [Fact]
    public void Two_holes_in_one_place_take_away_twice()
    {
        PartConflict<Body>[] conflicts = [.. new Assembly<Body>()
            .Add("block", Solid.Box(_density, M(1), M(1), M(1)))
            .Subtract("bore", Solid.Cylinder(_density, M(0.1), M(1)))
            .Subtract("slot", Solid.Box(_density, M(0.1), M(0.5), M(1)))
            .Conflicts()];
        Assert.Equal(["bore", "slot"], conflicts.Select(conflict => conflict.Part));
    }

    [Fact]
    public void A_mesh_turned_and_placed_overlaps_like_the_solid_it_is()
    {
        TriangleMesh mesh = TriangleMesh.ReadStl(Stl.Binary(Stl.Box(0, 0, 0, 1000, 1000, 1000)), LengthUnit.Millimeter);
        Rotation<Part, Body> turned = Rotation<Part, Body>.About(Direction<Part>.ZAxis, Angle.FromDegrees(90));
        PartConflict<Body> conflict = new Assembly<Body>()
            .Add("mesh", Solid.Mesh(_density, mesh), At(0, 0, 0), turned)
            .Add("box", Solid.Box(_density, M(1), M(1), M(1)), At(-1.25, 0.5, 0.5))
            .Conflicts().Single();
        Assert.Equal(0.25, conflict.Volume.CubicMeters, 0.005);
        Assert.InRange(conflict.At.X.Meters, -1, -0.75);
    }
}
