using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tests.Frames;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

/// <summary>Whether a mesh counts some space twice is told, and of one that merely touches itself it is not.</summary>
[Properties(Arbitrary = [typeof(AnyTurn)], MaxTest = 15)]
public sealed class MeshCrossingTests
{
    private static TriangleMesh Read(params double[][] shells) =>
        TriangleMesh.ReadStl(Stl.Text([.. shells.SelectMany(shell => shell)]), LengthUnit.Meter);

    public static TheoryData<string, double[][]> Sound => new()
    {
        { "a box", [Stl.Box(0, 0, 0, 1, 2, 3)] },
        { "a tetrahedron", [Stl.CornerTetrahedron] },
        { "two boxes apart", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(1.5, 0, 0, 2, 1, 1)] },
        { "two boxes with a face in common", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(1, 0, 0, 2, 1, 1)] },
        { "two boxes with part of a face in common", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(1, 0.25, 0.5, 2, 0.75, 3)] },
        { "two boxes with an edge in common", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(1, 1, 0, 2, 2, 1)] },
        { "two boxes with a corner in common", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(1, 1, 1, 2, 2, 2)] },
        { "edges that cross and touch", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(0.5, 1, 1, 0.7, 2, 2)] },
        { "a cavity", [Stl.Box(0, 0, 0, 1, 1, 1), Inside(Stl.Box(0.25, 0.25, 0.25, 0.75, 0.75, 0.75))] },
        { "a cavity filled by a box", [Stl.Box(0, 0, 0, 1, 1, 1), Inside(Stl.Box(0.25, 0.25, 0.25, 0.75, 0.75, 0.75)), Stl.Box(0.3, 0.3, 0.3, 0.7, 0.7, 0.7)] },
    };

    public static TheoryData<string, double[][]> Wrong => new()
    {
        { "boxes askew", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(0.31, 0.22, 0.43, 1.5, 1.6, 1.7)] },
        { "a corner pushed through", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(0.5, 0.5, 0.5, 2, 2, 2)] },
        { "boxes with faces in one plane", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(0.5, 0, 0, 2, 1, 1)] },
        { "a bar through the diagonals", [Stl.Box(0, 0, 0, 2, 2, 2), Stl.Box(1, 0.5, 0.5, 3, 1.5, 1.5)] },
        { "one within the other", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(0.25, 0.25, 0.25, 0.75, 0.75, 0.75)] },
        { "a hair", [Stl.Box(0, 0, 0, 1, 1, 1), Stl.Box(0.999, 0.2, 0.2, 2, 0.7, 0.7)] },
    };

    [Theory]
    [MemberData(nameof(Sound))]
    public void A_sound_surface_has_no_crossing(string name, double[][] shells)
    {
        Assert.NotEmpty(name);
        Assert.Empty(Read(shells).Crossings());
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Space_that_is_enclosed_twice_is_told_with_the_place(string name, double[][] shells)
    {
        MeshCrossing crossing = Read(shells).Crossings(1).Single();
        Assert.NotEmpty(name);
        Assert.InRange(crossing.First, 1, crossing.Second);

        // In both shells, or on them.
        foreach (double[] shell in shells)
        {
            for (int axis = 0; axis < 3; axis++)
            {
                double[] along = [.. shell.Where((_, i) => i % 3 == axis)];
                double at = axis == 0 ? crossing.At.X.Meters : axis == 1 ? crossing.At.Y.Meters : crossing.At.Z.Meters;
                Assert.InRange(at, along.Min() - 0.01, along.Max() + 0.01);
            }
        }
    }

    [Fact]
    public void The_place_is_in_metres_whatever_the_unit_of_the_file()
    {
        byte[] file = Stl.Binary([.. Stl.Box(0, 0, 0, 100, 100, 100), .. Stl.Box(50, 25, 25, 200, 75, 75)]);
        MeshCrossing crossing = TriangleMesh.ReadStl(file, LengthUnit.Millimeter).Crossings(1).Single();
        Assert.InRange(crossing.At.X.Meters, 0.049, 0.101);
    }

    [Property]
    public void Turning_a_mesh_changes_nothing(AnyTurn turn)
    {
        Assert.All(Sound, row => Assert.Empty(Turned((double[][])row[1], turn).Crossings()));
        Assert.All(Wrong, row => Assert.Single(Turned((double[][])row[1], turn).Crossings(1)));
    }

    [Fact]
    public void A_fan_of_slender_facets_takes_a_bounded_search()
    {
        // A cone of 1000 sides: all facets meet at the tip, and their boxes all overlap.
        const int Sides = 1000;
        List<double> facets = [];
        for (int i = 0; i < Sides; i++)
        {
            (double s0, double c0) = Math.SinCos(2 * Math.PI * i / Sides);
            (double s1, double c1) = Math.SinCos(2 * Math.PI * ((i + 1) % Sides) / Sides);
            facets.AddRange([c0, s0, 0, c1, s1, 0, 0, 0, 1]);
            facets.AddRange([c1, s1, 0, c0, s0, 0, 0, 0, 0]);
        }

        Bounded.Run(() => Assert.Empty(Read([.. facets]).Crossings()));
    }

    [Fact]
    public void A_search_that_is_cancelled_ends() =>
        Assert.ThrowsAny<OperationCanceledException>(() => Read(Stl.Box(0, 0, 0, 1, 1, 1)).Crossings(cancellation: new CancellationToken(true)));

    private static TriangleMesh Turned(double[][] shells, AnyTurn turn)
    {
        Rotation<Body, Part> rotation = turn.To<Body, Part>();
        double[] all = [.. shells.SelectMany(shell => shell)];
        Position<Part>[] vertices = [.. all.Chunk(3).Select(v => Position<Part>.Origin + rotation.Apply(Position<Body>.Of(v[0], v[1], v[2], LengthUnit.Meter).FromOrigin))];
        return TriangleMesh.Of(vertices, [.. Enumerable.Range(0, vertices.Length)]);
    }

    private static double[] Inside(double[] shell)
    {
        double[] turned = [.. shell];
        for (int i = 0; i < shell.Length; i += 9)
        {
            shell.AsSpan(i + 3, 3).CopyTo(turned.AsSpan(i + 6));
            shell.AsSpan(i + 6, 3).CopyTo(turned.AsSpan(i + 3));
        }

        return turned;
    }
}
