using System.Globalization;
using System.Runtime.InteropServices;
using Momentum.Numerics;

namespace Momentum.Inertia;

/// <summary>Triangles with their vertices welded, checked to be the boundary of a solid.</summary>
internal sealed class ClosedSurface
{
    // Below this part of the tetrahedra's summed size, a volume is their rounding: the shell is flat.
    private const double Flat = 1e-12;

    private ClosedSurface(double[] coordinates, int[] corners)
    {
        Coordinates = coordinates;
        Corners = corners;
    }

    /// <summary>Three coordinates a vertex.</summary>
    internal double[] Coordinates { get; }

    /// <summary>Three vertex indices a triangle.</summary>
    internal int[] Corners { get; }

    /// <summary>A facet of each separate shell.</summary>
    internal int[] ShellFacets { get; private set; } = [];

    /// <summary>From nine coordinates a triangle, anticlockwise as seen from outside.</summary>
    /// <exception cref="InvalidDataException">It is not the boundary of a solid.</exception>
    internal static ClosedSurface Of(ReadOnlySpan<double> triangles)
    {
        if (triangles.Length == 0)
        {
            throw new InvalidDataException("The mesh has no facet.");
        }

        ClosedSurface surface = Weld(triangles);
        surface.RefuseDegenerate();
        surface.RefuseRepeated();
        int[] shell = surface.RefuseOpen();
        surface.RefuseInward(shell);
        surface.ShellFacets = [.. shell.Distinct()];
        return surface;
    }

    private static ClosedSurface Weld(ReadOnlySpan<double> triangles)
    {
        Dictionary<Vec, int> vertices = [];
        List<double> coordinates = [];
        int[] corners = new int[triangles.Length / 3];
        for (int i = 0; i < corners.Length; i++)
        {
            Vec vertex = Vec.Read(triangles[(3 * i)..]);
            if (!double.IsFinite(vertex.X) || !double.IsFinite(vertex.Y) || !double.IsFinite(vertex.Z))
            {
                throw new InvalidDataException($"Facet {(i / 3) + 1} has the vertex {Text(vertex)}, which is not finite.");
            }

            if (!vertices.TryGetValue(vertex, out corners[i]))
            {
                corners[i] = vertices.Count;
                vertices.Add(vertex, corners[i]);
                coordinates.AddRange([vertex.X, vertex.Y, vertex.Z]);
            }
        }

        return new([.. coordinates], corners);
    }

    private void RefuseDegenerate()
    {
        for (int i = 0; i < Corners.Length; i += 3)
        {
            Vec a = Vertex(Corners[i]);
            Vec b = Vertex(Corners[i + 1]);
            Vec c = Vertex(Corners[i + 2]);
            Vec u = b - a;
            Vec v = c - a;

            // Scaled, so that tiny and huge meshes neither vanish nor overflow.
            double scale = Math.Max(u.LargestMagnitude, v.LargestMagnitude);
            if (!((u / scale).Cross(v / scale).LargestMagnitude > 0))
            {
                throw new InvalidDataException($"Facet {(i / 3) + 1} is degenerate: its vertices {Text(a)}, {Text(b)} and {Text(c)} enclose no area. Remove it, and mend the edge it stood on.");
            }
        }
    }

    private void RefuseRepeated()
    {
        Dictionary<(int, int, int), int> seen = [];
        for (int i = 0; i < Corners.Length; i += 3)
        {
            (int a, int b, int c) = (Corners[i], Corners[i + 1], Corners[i + 2]);
            (int, int, int) key = a < b && a < c ? (a, b, c) : b < c ? (b, c, a) : (c, a, b);
            if (!seen.TryAdd(key, (i / 3) + 1))
            {
                throw new InvalidDataException($"Facets {seen[key]} and {(i / 3) + 1} are the same triangle; each must be given once.");
            }
        }
    }

    /// <summary>Refuses an edge that is not passed as often each way; returns each facet's shell.</summary>
    private int[] RefuseOpen()
    {
        Dictionary<(int Low, int High), Edge> edges = [];
        int[] shell = new int[Corners.Length / 3];
        for (int facet = 0; facet < shell.Length; facet++)
        {
            shell[facet] = facet;
            for (int side = 0; side < 3; side++)
            {
                int from = Corners[(3 * facet) + side];
                int to = Corners[(3 * facet) + ((side + 1) % 3)];
                ref Edge edge = ref CollectionsMarshal.GetValueRefOrAddDefault(edges, (Math.Min(from, to), Math.Max(from, to)), out bool known);
                if (known)
                {
                    shell[Root(shell, facet)] = Root(shell, edge.Facet);
                }

                edge = new(facet, edge.Up + (from < to ? 1 : 0), edge.Down + (from < to ? 0 : 1));
            }
        }

        int open = edges.Values.Count(edge => (edge.Up + edge.Down) % 2 != 0);
        int crossed = edges.Values.Count(edge => edge.Up != edge.Down && (edge.Up + edge.Down) % 2 == 0);
        foreach (((int low, int high), Edge edge) in edges)
        {
            if (open > 0 && (edge.Up + edge.Down) % 2 != 0)
            {
                throw new InvalidDataException(
                    $"The mesh is open: the edge from {Text(Vertex(low))} to {Text(Vertex(high))} of facet {edge.Facet + 1} belongs to {edge.Up + edge.Down} facet(s), not to two, " +
                    $"and {open - 1} more edge(s) likewise. Close the surface; vertices meet only where all coordinates are exactly equal.");
            }

            if (open == 0 && edge.Up != edge.Down)
            {
                throw new InvalidDataException(
                    $"The mesh is inconsistently wound: the facets at the edge from {Text(Vertex(low))} to {Text(Vertex(high))}, of which one is facet {edge.Facet + 1}, " +
                    $"pass it in the same direction, and {crossed - 1} more edge(s) likewise. Turn the facets that face the other way than their neighbours.");
            }
        }

        for (int facet = 0; facet < shell.Length; facet++)
        {
            shell[facet] = Root(shell, facet);
        }

        return shell;
    }

    private static int Root(int[] parent, int i)
    {
        while (parent[i] != i)
        {
            parent[i] = parent[parent[i]];
            i = parent[i];
        }

        return i;
    }

    private void RefuseInward(int[] shell)
    {
        Dictionary<int, Shell> shells = [];
        for (int facet = 0; facet < shell.Length; facet++)
        {
            if (!shells.TryGetValue(shell[facet], out Shell? one))
            {
                shells.Add(shell[facet], one = new(facet));
            }

            for (int i = 3 * facet; i < 3 * (facet + 1); i++)
            {
                one.Bounds.Include(Vertex(Corners[i]));
            }
        }

        for (int facet = 0; facet < shell.Length; facet++)
        {
            shells[shell[facet]].Add(Vertex(Corners[3 * facet]), Vertex(Corners[(3 * facet) + 1]), Vertex(Corners[(3 * facet) + 2]));
        }

        List<Shell> outward = [.. shells.Values.Where(one => one.Volume.Value > 0)];
        foreach (Shell one in shells.Values)
        {
            if (!(Math.Abs(one.Volume.Value) > Flat * one.Size))
            {
                throw new InvalidDataException($"The shell that facet {one.Facet + 1} belongs to encloses no volume: it is flat, or folded onto itself.");
            }

            if (one.Volume.Value < 0 && !outward.Exists(other => other.Bounds.Holds(one.Bounds)))
            {
                throw new InvalidDataException(
                    $"The shell that facet {one.Facet + 1} belongs to faces inward: its facets are wound clockwise as seen from outside, so its volume comes out negative, " +
                    "and it lies within no other shell as the wall of a cavity would. Reverse its facets.");
            }
        }
    }

    private Vec Vertex(int index) => Vec.Read(Coordinates.AsSpan(3 * index));

    private static string Text(Vec vertex) =>
        string.Create(CultureInfo.InvariantCulture, $"({vertex.X}, {vertex.Y}, {vertex.Z})");

    private readonly record struct Edge(int Facet, int Up, int Down);

    private sealed class Shell(int facet)
    {
        internal Bounds Bounds = Bounds.Empty;
        internal CompensatedSum Volume;

        internal int Facet { get; } = facet;

        internal double Size { get; private set; }

        internal void Add(Vec a, Vec b, Vec c)
        {
            Vec centre = Bounds.Centre;
            Vec from = a - centre;
            Vec area = (b - centre).Cross(c - centre);
            Volume.Add(from.Dot(area));
            Size += Math.Abs(from.X * area.X) + Math.Abs(from.Y * area.Y) + Math.Abs(from.Z * area.Z);
        }
    }
}
