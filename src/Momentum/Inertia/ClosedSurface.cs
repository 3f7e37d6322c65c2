using System.Globalization;
using System.Runtime.InteropServices;

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
        surface.RefuseInward(surface.RefuseOpen());
        return surface;
    }

    private static ClosedSurface Weld(ReadOnlySpan<double> triangles)
    {
        Dictionary<(double, double, double), int> vertices = [];
        List<double> coordinates = [];
        int[] corners = new int[triangles.Length / 3];
        for (int i = 0; i < corners.Length; i++)
        {
            (double x, double y, double z) vertex = (triangles[3 * i], triangles[(3 * i) + 1], triangles[(3 * i) + 2]);
            if (!double.IsFinite(vertex.x) || !double.IsFinite(vertex.y) || !double.IsFinite(vertex.z))
            {
                throw new InvalidDataException($"Facet {(i / 3) + 1} has the vertex {Text(vertex)}, which is not finite.");
            }

            if (!vertices.TryGetValue(vertex, out corners[i]))
            {
                corners[i] = vertices.Count;
                vertices.Add(vertex, corners[i]);
                coordinates.AddRange([vertex.x, vertex.y, vertex.z]);
            }
        }

        return new([.. coordinates], corners);
    }

    private void RefuseDegenerate()
    {
        for (int i = 0; i < Corners.Length; i += 3)
        {
            (double ax, double ay, double az) = Vertex(Corners[i]);
            (double bx, double by, double bz) = Vertex(Corners[i + 1]);
            (double cx, double cy, double cz) = Vertex(Corners[i + 2]);
            (double ux, double uy, double uz) = (bx - ax, by - ay, bz - az);
            (double vx, double vy, double vz) = (cx - ax, cy - ay, cz - az);

            // Scaled, so that tiny and huge meshes neither vanish nor overflow.
            double scale = Math.Max(Math.Max(Math.Max(Math.Abs(ux), Math.Abs(uy)), Math.Abs(uz)), Math.Max(Math.Max(Math.Abs(vx), Math.Abs(vy)), Math.Abs(vz)));
            double nx = (uy / scale * (vz / scale)) - (uz / scale * (vy / scale));
            double ny = (uz / scale * (vx / scale)) - (ux / scale * (vz / scale));
            double nz = (ux / scale * (vy / scale)) - (uy / scale * (vx / scale));
            if (!(Math.Abs(nx) + Math.Abs(ny) + Math.Abs(nz) > 0))
            {
                throw new InvalidDataException($"Facet {(i / 3) + 1} is degenerate: its vertices {Text((ax, ay, az))}, {Text((bx, by, bz))} and {Text((cx, cy, cz))} enclose no area. Remove it, and mend the edge it stood on.");
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
                (double x, double y, double z) = Vertex(Corners[i]);
                one.Bounds.Include(x, y, z);
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

    private (double X, double Y, double Z) Vertex(int index) =>
        (Coordinates[3 * index], Coordinates[(3 * index) + 1], Coordinates[(3 * index) + 2]);

    private static string Text((double X, double Y, double Z) vertex) =>
        string.Create(CultureInfo.InvariantCulture, $"({vertex.X}, {vertex.Y}, {vertex.Z})");

    private readonly record struct Edge(int Facet, int Up, int Down);

    private sealed class Shell(int facet)
    {
        internal Bounds Bounds = Bounds.Empty;
        internal CompensatedSum Volume;

        internal int Facet { get; } = facet;

        internal double Size { get; private set; }

        internal void Add((double X, double Y, double Z) a, (double X, double Y, double Z) b, (double X, double Y, double Z) c)
        {
            (double ax, double ay, double az) = (a.X - Bounds.CentreX, a.Y - Bounds.CentreY, a.Z - Bounds.CentreZ);
            (double bx, double by, double bz) = (b.X - Bounds.CentreX, b.Y - Bounds.CentreY, b.Z - Bounds.CentreZ);
            (double cx, double cy, double cz) = (c.X - Bounds.CentreX, c.Y - Bounds.CentreY, c.Z - Bounds.CentreZ);
            double p = ax * ((by * cz) - (bz * cy));
            double q = ay * ((bz * cx) - (bx * cz));
            double r = az * ((bx * cy) - (by * cx));
            Volume.Add(p + q + r);
            Size += Math.Abs(p) + Math.Abs(q) + Math.Abs(r);
        }
    }
}
