using System.Buffers.Binary;
using System.Text;
using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tests.Frames;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

[Properties(Arbitrary = [typeof(AnyTurn)])]
public sealed class TriangleMeshTests
{
    private static readonly Density _unitDensity = Density.FromKilogramsPerCubicMeter(1);

    private static MassMomentOfInertia Si(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);

    private static Length M(double metres) => Length.FromMeters(metres);

    private static TriangleMesh Read(double[] facets) => TriangleMesh.ReadStl(Stl.Text(facets), LengthUnit.Meter);

    private static string Refusal(byte[] file) => Assert.Throws<InvalidDataException>(() => TriangleMesh.ReadStl(file, LengthUnit.Meter)).Message;

    private static string Refusal(double[] facets) => Refusal(Stl.Text(facets));

    // Own integration over the corner tetrahedron (0, e1, e2, e3).
    [Fact]
    public void The_corner_tetrahedron_has_its_known_integrals()
    {
        TriangleMesh mesh = TriangleMesh.ReadStl(Stl.Binary(Stl.CornerTetrahedron), LengthUnit.Meter);
        Solid solid = Solid.Mesh(_unitDensity, mesh);
        Assert.Equal(4, mesh.TriangleCount);
        Assert.Equal(4, mesh.VertexCount);

        // A few roundings.
        Assert.Equal(1 / 6.0, mesh.Volume.CubicMeters, 1e-16);
        Assert.True(mesh.Centroid.EqualsWithin(Position<Part>.Of(0.25, 0.25, 0.25, LengthUnit.Meter), M(1e-16)));
        PointInertia<Part> centre = solid.InertiaAbout(mesh.Centroid);
        Assert.Equal(1 / 80.0, centre.Xx.KilogramSquareMeters, 1e-17);
        Assert.Equal(1 / 480.0, centre.Xy.KilogramSquareMeters, 1e-17);
        PointInertia<Part> corner = solid.InertiaAbout(Position<Part>.Origin);
        Assert.Equal(1 / 30.0, corner.Xx.KilogramSquareMeters, 2e-17);
        Assert.Equal(-1 / 120.0, corner.Xy.KilogramSquareMeters, 1e-17);
    }

    [Fact]
    public void The_unit_cube_has_its_known_integrals()
    {
        Solid cube = Solid.Mesh(_unitDensity, Read(Stl.Box(0, 0, 0, 1, 1, 1)));
        PointInertia<Part> corner = cube.InertiaAbout(Position<Part>.Origin);
        Assert.Equal(2 / 3.0, corner.Xx.KilogramSquareMeters, 2e-16);
        Assert.Equal(-0.25, corner.Xy.KilogramSquareMeters, 1e-16);
        Assert.Equal(1 / 6.0, cube.InertiaAbout(cube.CentreOfMass).Zz.KilogramSquareMeters, 1e-16);
    }

    [Fact]
    public void A_tessellated_box_is_the_box()
    {
        Solid meshed = Solid.Mesh(Mass.FromKilograms(100), Read(Stl.Box(10, -0.2, 3, 10.5, 0.2, 3.3)));
        PointInertia<Part> inertia = meshed.InertiaAbout(meshed.CentreOfMass);
        PointInertia<Part> box = Solid.Box(Mass.FromKilograms(100), M(0.5), M(0.4), M(0.3)).InertiaAbout(default);
        Assert.True(meshed.CentreOfMass.EqualsWithin(Position<Part>.Of(10.25, 0, 3.15, LengthUnit.Meter), M(1e-15)));

        // The edge 0.5 as 10.5 - 10, and 0.3 as 3.3 - 3, is good to 2e-16 of 0.3, eightfold in the squares of 3 kg·m².
        Assert.Equal(box.Xx.KilogramSquareMeters, inertia.Xx.KilogramSquareMeters, 1e-14);
        Assert.Equal(box.Yy.KilogramSquareMeters, inertia.Yy.KilogramSquareMeters, 1e-14);
        Assert.Equal(box.Zz.KilogramSquareMeters, inertia.Zz.KilogramSquareMeters, 1e-14);
        Assert.Equal(0, inertia.Xy.KilogramSquareMeters, 1e-14);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(64)]
    [InlineData(1024)]
    public void A_regular_prism_has_its_closed_form_and_tends_to_the_cylinder_as_the_square_of_its_sides(int n)
    {
        TriangleMesh mesh = Read(Stl.Prism(n, 0.5, 1.2));
        double angle = Math.Tau / n;
        double area = 0.5 * n * 0.25 * Math.Sin(angle);
        double volume = area * 1.2;

        // Regular polygon of circumradius r, own integration: polar m r² (2 + cos 2π/n)/6. The text rounds y to nine digits.
        double axial = volume * 0.25 * (2 + Math.Cos(angle)) / 6;
        PointInertia<Part> inertia = Solid.Mesh(_unitDensity, mesh).InertiaAbout(mesh.Centroid);
        Assert.Equal(volume, mesh.Volume.CubicMeters, 1e-8);
        Assert.Equal(axial, inertia.Zz.KilogramSquareMeters, 1e-9);
        Assert.Equal((axial / 2) + (volume * 1.44 / 12), inertia.Xx.KilogramSquareMeters, 1e-9);

        // The prism's share of the cylinder is sin x / x = 1 - x²/6 + x⁴/120 - ..., x = 2π/n: second order in 1/n.
        double missing = 1 - (mesh.Volume.CubicMeters / (Math.PI * 0.25 * 1.2));
        Assert.Equal(angle * angle / 6, missing, (Math.Pow(angle, 4) / 120) + 1e-8);
    }

    [Property]
    public bool A_turned_mesh_is_the_turned_solid(AnyTurn turn)
    {
        double[] facets = Stl.Box(-0.3, -0.2, -0.1, 0.5, 0.4, 0.3);
        double[] rows = new double[9];
        Rotation<Part, Body> rotation = turn.To<Part, Body>();
        rotation.CopyMatrixTo(rows);
        Position<Part>[] vertices = [.. Enumerable.Range(0, facets.Length / 3).Select(i => Position<Part>.Of(
            Row(0, i), Row(1, i), Row(2, i), LengthUnit.Meter))];
        Solid turned = Solid.Mesh(_unitDensity, TriangleMesh.Of(vertices, [.. Enumerable.Range(0, vertices.Length)]));
        MassProperties<Body> expected = new Assembly<Body>().Add("box", Solid.Mesh(_unitDensity, Read(facets)), turned: rotation).Build();
        MassProperties<Body> found = new Assembly<Body>().Add("box", turned).Build();
        return found.Inertia.EqualsWithin(expected.Inertia, Si(1e-16)) && found.CentreOfMass.EqualsWithin(expected.CentreOfMass, M(1e-15));

        double Row(int k, int i) => (rows[3 * k] * facets[3 * i]) + (rows[(3 * k) + 1] * facets[(3 * i) + 1]) + (rows[(3 * k) + 2] * facets[(3 * i) + 2]);
    }

    [Fact]
    public void A_mesh_far_from_its_origin_keeps_its_digits()
    {
        // Coordinates near 1e6 that are exact in binary: nothing is lost about the mesh's own middle.
        Solid near = Solid.Mesh(_unitDensity, Read(Stl.Box(0, 0, 0, 1, 2, 4)));
        Solid far = Solid.Mesh(_unitDensity, TriangleMesh.ReadStl(Stl.Binary(Stl.Box(1 << 20, 1 << 20, 0, (1 << 20) + 1, (1 << 20) + 2, 4)), LengthUnit.Meter));
        Assert.Equal(near.SiInertia.Xx, far.SiInertia.Xx, 1e-13);
        Assert.Equal(near.SiInertia.Zz, far.SiInertia.Zz, 1e-13);
    }

    [Fact]
    public void Binary_and_text_files_give_the_same_body()
    {
        // Every coordinate is a multiple of 1/8, exact in both.
        double[] facets = Stl.Box(-0.125, 0.25, 1, 3, 2.5, 4.375);
        TriangleMesh binary = TriangleMesh.ReadStl(Stl.Binary(facets), LengthUnit.Inch);
        TriangleMesh text = TriangleMesh.ReadStl(new MemoryStream(Stl.Text(facets)), LengthUnit.Inch);
        Assert.Equal(binary.Volume, text.Volume);
        Assert.Equal(binary.Centroid, text.Centroid);
        Assert.True(binary.SiInertia.Same(text.SiInertia));
    }

    [Fact]
    public void The_unit_is_the_callers_to_state()
    {
        double[] facets = Stl.Box(0, 0, 0, 1, 1, 1);
        Assert.Equal(1e-9, TriangleMesh.ReadStl(Stl.Text(facets), LengthUnit.Millimeter).Volume.CubicMeters, 1e-24);
        Assert.Equal(0.0254 * 0.0254 * 0.0254, TriangleMesh.ReadStl(Stl.Text(facets), LengthUnit.Inch).Volume.CubicMeters, 1e-20);
        Assert.Equal("unit", Assert.Throws<ArgumentOutOfRangeException>(() => TriangleMesh.ReadStl(Stl.Text(facets), default)).ParamName);
    }

    [Fact]
    public void A_cavity_is_left_out()
    {
        double[] hollow = [.. Stl.Box(-2, -2, -2, 2, 2, 2), .. Stl.Reversed(Stl.Box(-1, -1, -1, 1, 1, 1))];
        TriangleMesh mesh = Read(hollow);
        Assert.Equal(56, mesh.Volume.CubicMeters, 1e-13);

        // m a²/6 of each cube: 64·16/6 - 8·4/6.
        Assert.Equal(992 / 6.0, mesh.SiInertia.Xx, 1e-12);
    }

    [Fact]
    public void Several_solids_in_one_text_file_are_one_body()
    {
        byte[] file = [.. Stl.Text(Stl.Box(0, 0, 0, 1, 1, 1)), .. Stl.Text(Stl.Box(3, 0, 0, 4, 1, 1))];
        TriangleMesh mesh = TriangleMesh.ReadStl(file, LengthUnit.Meter);
        Assert.Equal(2, mesh.Volume.CubicMeters, 1e-15);
        Assert.True(mesh.Centroid.EqualsWithin(Position<Part>.Of(2, 0.5, 0.5, LengthUnit.Meter), M(1e-15)));
    }

    [Fact]
    public void Two_cubes_that_share_only_an_edge_are_closed()
    {
        // The edge belongs to four facets, passed twice each way: a boundary all the same.
        TriangleMesh mesh = Read([.. Stl.Box(0, 0, 0, 1, 1, 1), .. Stl.Box(1, 1, 0, 2, 2, 1)]);
        Assert.Equal(2, mesh.Volume.CubicMeters, 1e-15);
        Assert.Equal(14, mesh.VertexCount);
    }

    [Fact]
    public void Negative_zero_is_zero_where_vertices_meet()
    {
        double[] facets = Stl.Box(0, 0, 0, 1, 1, 1);
        facets[Array.IndexOf(facets, 0.0)] = -0.0;
        Assert.Equal(8, Read(facets).VertexCount);
    }

    [Fact]
    public void A_mesh_that_bounds_no_solid_is_refused_with_the_reason()
    {
        double[] box = Stl.Box(0, 0, 0, 1, 1, 1);
        Assert.Contains("no facet", Refusal(Array.Empty<double>()), StringComparison.Ordinal);
        Assert.Contains("is open: the edge from", Refusal(box[9..]), StringComparison.Ordinal);
        Assert.Contains("inconsistently wound", Refusal([.. Stl.Reversed(box[..9]), .. box[9..]]), StringComparison.Ordinal);
        Assert.Contains("faces inward", Refusal(Stl.Reversed(box)), StringComparison.Ordinal);
        Assert.Contains("faces inward", Refusal([.. box, .. Stl.Reversed(Stl.Box(5, 5, 5, 5.5, 5.5, 5.5))]), StringComparison.Ordinal);
        Assert.Contains("are the same triangle", Refusal([.. box, .. box]), StringComparison.Ordinal);
        Assert.Contains("encloses no volume", Refusal([.. box[..9], .. Stl.Reversed(box[..9])]), StringComparison.Ordinal);
        Assert.Contains("Facet 13 is degenerate", Refusal([.. box, 0, 0, 0, 1, 1, 1, 0, 0, 0]), StringComparison.Ordinal);
        Assert.Contains("Facet 13 is degenerate", Refusal([.. box, 0, 0, 0, 1, 1, 1, 2, 2, 2]), StringComparison.Ordinal);

        // One corner of one facet a hair off: not welded, so open.
        double[] hair = [.. box];
        hair[0] += 1e-12;
        Assert.Contains("exactly equal", Refusal(Stl.Binary([.. hair.Select(v => v == 1e-12 ? 1e-6 : v)])), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    public void A_coordinate_that_is_not_finite_is_refused_by_facet_or_line(float value)
    {
        double[] facets = Stl.Box(0, 0, 0, 1, 1, 1);
        facets[30] = value;
        Assert.Contains("Facet 4 has the vertex", Refusal(Stl.Binary(facets)), StringComparison.Ordinal);
        Assert.Contains("Line 26 of the text STL has", Refusal(facets), StringComparison.Ordinal);
    }

    [Fact]
    public void A_binary_file_that_is_not_whole_is_refused()
    {
        byte[] file = Stl.Binary(Stl.Box(0, 0, 0, 1, 1, 1));
        Assert.Contains("announces 12 facets, which take 684 bytes, and it has 683", Refusal(file[..^1]), StringComparison.Ordinal);
        Assert.Contains("and it has 685", Refusal([.. file, 0]), StringComparison.Ordinal);
        Assert.Contains("file is empty", Refusal(Array.Empty<byte>()), StringComparison.Ordinal);
        Assert.Contains("83 bytes: too few", Refusal(file[..83]), StringComparison.Ordinal);

        // Begins with the word solid, as some binary exporters write, and is cut short.
        "solid"u8.CopyTo(file);
        Assert.Equal(1, TriangleMesh.ReadStl(file, LengthUnit.Meter).Volume.CubicMeters, 1e-15);
        Assert.Contains("announces 12 facets", Refusal(file[..^1]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(uint.MaxValue)]
    [InlineData(0x7fffffffu)]
    [InlineData(85899345u)]
    public void A_count_of_billions_of_facets_sets_nothing_aside(uint count)
    {
        byte[] file = Stl.Binary(Stl.Box(0, 0, 0, 1, 1, 1));
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(80), count);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Contains("announces", Refusal(file), StringComparison.Ordinal);

        // The exception and its text take some kilobytes; the facets announced would take gigabytes.
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 1_000_000);
    }

    [Theory]
    [InlineData("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0\n", "Line 5 of the text STL has the end of the file where a vertex coordinate is due")]
    [InlineData("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 zero\n", "Line 4 of the text STL has 'zero' where a vertex coordinate is due")]
    [InlineData("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 1,5\n", "Line 4 of the text STL has '1,5'")]
    [InlineData("solid x\nfacet normal 0 0 1\nouter lopp\n", "Line 3 of the text STL has 'lopp' where 'loop' is due")]
    [InlineData("solid x\nfacte normal 0 0 1\n", "Line 2 of the text STL has 'facte' where 'facet' or 'endsolid' is due")]
    [InlineData("solid x\n", "the end of the file where 'facet' or 'endsolid' is due")]
    [InlineData("solid x\nendsolid x\ntrailing rubbish", "Line 3 of the text STL has 'trailing' where 'solid' is due")]
    [InlineData("solid x\nendsolid x\n", "no facet")]
    [InlineData("hello there", "too few for binary STL")]
    [InlineData("solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 1 1 0\nvertex 0 1 0\n", "'vertex' where 'endloop' is due")]
    public void A_text_file_that_is_not_STL_is_refused_by_line(string text, string reason) =>
        Assert.Contains(reason, Refusal(Encoding.ASCII.GetBytes(text)), StringComparison.Ordinal);

    [Property(MaxTest = 300)]
    public bool Rubbish_is_refused_and_nothing_else_happens(byte[] rubbish, bool text)
    {
        byte[] file = text ? [.. "solid \nfacet normal 0 0 0 outer loop vertex "u8, .. rubbish] : rubbish;
        try
        {
            TriangleMesh.ReadStl(file, LengthUnit.Meter);
            return false;
        }
        catch (InvalidDataException)
        {
            return true;
        }
    }

    [Property(MaxTest = 200)]
    public bool A_file_with_a_byte_changed_is_read_or_refused(int at, byte value, bool text)
    {
        double[] facets = Stl.Box(0, 0, 0, 1, 1, 1);
        byte[] file = text ? Stl.Text(facets) : Stl.Binary(facets);
        file[(int)((uint)at % (uint)file.Length)] = value;
        try
        {
            return double.IsFinite(TriangleMesh.ReadStl(file, LengthUnit.Meter).Volume.CubicMeters);
        }
        catch (InvalidDataException)
        {
            return true;
        }
    }

    [Fact]
    public void Corners_that_name_no_vertex_are_refused()
    {
        Position<Part>[] vertices = new Position<Part>[3];
        Assert.Throws<ArgumentException>(() => TriangleMesh.Of(vertices, [0, 1]));
        Assert.Throws<ArgumentException>(() => TriangleMesh.Of(vertices, [0, 1, 3]));
        Assert.Throws<ArgumentException>(() => TriangleMesh.Of(vertices, [0, -1, 2]));
    }

    [Fact]
    public void Sizes_that_double_precision_cannot_hold_are_refused()
    {
        Assert.Throws<InvalidDataException>(() => Read(Stl.Box(0, 0, 0, 1e100, 1e100, 1e100)));
        Assert.Throws<InvalidDataException>(() => Read(Stl.Box(0, 0, 0, 1e-120, 1e-120, 1e-120)));
    }
}
