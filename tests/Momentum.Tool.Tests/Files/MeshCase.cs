using System.Globalization;

namespace Momentum.Tool.Tests.Files;

/// <summary>A case whose body is a mesh: a cube. Its vehicle is invented.</summary>
internal static class MeshCase
{
    /// <summary>The case.</summary>
    /// <param name="mesh">The mesh file as the case names it.</param>
    /// <param name="name">The part's name.</param>
    public static string Naming(string mesh, string name = "drum") => $"""
        format = 1
        title  = "Invented: Sandpiper test article as a mesh"

        [vehicle]
        spin_axis = "z"

        [[part]]
        name      = "{name}"
        shape     = "mesh"
        file      = "{mesh}"
        file_unit = "mm"
        mass      = "120 kg"

        [spin]
        rate = "50 rpm"

        [despin]
        hub_radius  = "420 mm"
        weights     = 2
        weight_mass = "0.7 kg"
        final_rate  = "0 rpm"
        let_go      = "radial"

        """;

    /// <summary>A cube of 700 mm about the origin, as text STL.</summary>
    public static string Cube { get; } = Solid(350);

    private static string Solid(int half)
    {
        (int X, int Y, int Z)[] corners = [.. Enumerable.Range(0, 8).Select(i => ((i & 1) == 0 ? -half : half, (i & 2) == 0 ? -half : half, (i & 4) == 0 ? -half : half))];
        int[] triangles = [0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6, 0, 1, 4, 1, 5, 4, 2, 6, 3, 3, 6, 7, 0, 4, 2, 2, 4, 6, 1, 3, 5, 3, 7, 5];
        IEnumerable<string> facets = triangles.Chunk(3).Select(t => "facet normal 0 0 0\nouter loop\n"
            + string.Concat(t.Select(c => string.Create(CultureInfo.InvariantCulture, $"vertex {corners[c].X} {corners[c].Y} {corners[c].Z}\n"))) + "endloop\nendfacet\n");
        return "solid cube\n" + string.Concat(facets) + "endsolid cube\n";
    }
}
