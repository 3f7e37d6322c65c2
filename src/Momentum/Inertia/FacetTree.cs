namespace Momentum.Inertia;

/// <summary>A tree of boxes over the facets of a mesh: which facets may meet, and how often a ray passes the surface.</summary>
/// <remarks>
/// Built by halving at the middle facet along the longest side, so that its depth is the logarithm of the number of facets. Not
/// changed after it is made: safe to share between threads.
/// </remarks>
internal sealed class FacetTree
{
    private const int LargestLeaf = 4;

    // Directions tried for a ray, each used if the ray passes well clear of every edge.
    private const int Rays = 6;

    // Nearer to an edge or to the plane than this share of the facet, a ray does not tell which facet it passes.
    private const double Clear = 1e-9;

    private static readonly Vec[] _directions =
    [
        .. Enumerable.Range(1, Rays).Select(i => new Vec(Math.Cos(2.3 * i), Math.Sin(2.3 * i) * Math.Cos(1.7 * i), Math.Sin(2.3 * i) * Math.Sin(1.7 * i))),
    ];

    private readonly double[] _coordinates;
    private readonly int[] _corners;
    private readonly int[] _order;
    private readonly List<Node> _nodes = [];

    /// <summary>Builds the tree.</summary>
    /// <param name="coordinates">Three coordinates a vertex; kept.</param>
    /// <param name="corners">Three vertex indices a facet; kept.</param>
    /// <param name="cancellation">Ends the building early.</param>
    internal FacetTree(double[] coordinates, int[] corners, CancellationToken cancellation)
    {
        _coordinates = coordinates;
        _corners = corners;
        _order = [.. Enumerable.Range(0, corners.Length / 3)];
        double[] keys = new double[_order.Length];
        Build(0, _order.Length, keys, cancellation);
    }

    /// <summary>The box around everything.</summary>
    internal Bounds Bounds => _nodes[0].Bounds;

    internal Facet this[int facet] => new(Vertex(_corners[3 * facet]), Vertex(_corners[(3 * facet) + 1]), Vertex(_corners[(3 * facet) + 2]));

    internal ReadOnlySpan<int> CornersOf(int facet) => _corners.AsSpan(3 * facet, 3);

    /// <summary>
    /// How many times the surface is wound around a point: 1 inside a solid, 0 outside; null if the point is too near to the surface
    /// to tell.
    /// </summary>
    internal int? Winding(Vec point)
    {
        foreach (Vec direction in _directions)
        {
            int winding = 0;
            if (Passes(point, direction, ref winding))
            {
                return winding;
            }
        }

        return null;
    }

    /// <summary>Calls for every pair of facets whose boxes meet, each pair once, until told to stop or the budget is spent.</summary>
    /// <param name="most">How many pairs at most.</param>
    /// <param name="visit">Returns whether to go on.</param>
    /// <param name="cancellation">Ends the search early.</param>
    /// <returns>Whether all pairs were visited, or it was told to stop.</returns>
    internal bool VisitPairs(long most, Func<int, int, bool> visit, CancellationToken cancellation)
    {
        long left = most;
        Stack<(int A, int B)> open = new([(0, 0)]);
        while (open.TryPop(out (int A, int B) pair))
        {
            cancellation.ThrowIfCancellationRequested();
            Node a = _nodes[pair.A];
            Node b = _nodes[pair.B];
            if (!a.Bounds.Meets(b.Bounds))
            {
                continue;
            }

            if (a.IsLeaf && b.IsLeaf)
            {
                for (int i = a.From; i < a.To; i++)
                {
                    for (int j = pair.A == pair.B ? i + 1 : b.From; j < b.To; j++)
                    {
                        if (--left < 0)
                        {
                            return false;
                        }

                        if (!visit(_order[i], _order[j]))
                        {
                            return true;
                        }
                    }
                }
            }
            else if (pair.A == pair.B)
            {
                open.Push((a.Left, a.Left));
                open.Push((a.Right, a.Right));
                open.Push((a.Left, a.Right));
            }
            else if (b.IsLeaf || (!a.IsLeaf && a.To - a.From >= b.To - b.From))
            {
                open.Push((a.Left, pair.B));
                open.Push((a.Right, pair.B));
            }
            else
            {
                open.Push((pair.A, b.Left));
                open.Push((pair.A, b.Right));
            }
        }

        return true;
    }

    private bool Passes(Vec point, Vec direction, ref int winding)
    {
        Stack<int> open = new([0]);
        while (open.TryPop(out int index))
        {
            Node node = _nodes[index];
            if (!node.Bounds.MeetsRay(point, direction))
            {
                continue;
            }

            if (!node.IsLeaf)
            {
                open.Push(node.Left);
                open.Push(node.Right);
                continue;
            }

            for (int i = node.From; i < node.To; i++)
            {
                if (!Passes(this[_order[i]], point, direction, ref winding))
                {
                    return false;
                }
            }
        }

        return true;
    }

    // T. Möller, B. Trumbore, J. Graphics Tools 2(1) (1997) (from memory, not read). False if the ray tells nothing.
    private static bool Passes(in Facet facet, Vec point, Vec direction, ref int winding)
    {
        Vec u = facet.B - facet.A;
        Vec v = facet.C - facet.A;
        Vec normal = u.Cross(v);
        double slope = normal.Dot(direction);
        Vec from = point - facet.A;
        double height = from.Dot(normal);
        double area = normal.Length;
        double reach = Math.Sqrt(Math.Max(from.Square, Math.Max(u.Square, v.Square)));
        if (Math.Abs(slope) <= Clear * area)
        {
            // Along the plane: clear of the facet only if well off the plane.
            return Math.Abs(height) > Clear * area * reach;
        }

        // Where the line meets the plane, in shares of the two sides.
        double along = -height / slope;
        Vec across = from.Cross(direction);
        double first = -v.Dot(across) / slope;
        double second = u.Dot(across) / slope;
        double third = 1 - first - second;
        double least = Math.Min(first, Math.Min(second, third));
        if (least < -Clear)
        {
            return true;
        }

        if (Math.Abs(along) <= Clear * reach)
        {
            return false;
        }

        if (along < 0)
        {
            return true;
        }

        winding += slope > 0 ? 1 : -1;
        return least > Clear;
    }

    private int Build(int from, int to, double[] keys, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        Bounds bounds = Bounds.Empty;
        for (int i = from; i < to; i++)
        {
            Facet facet = this[_order[i]];
            bounds.Include(facet.A);
            bounds.Include(facet.B);
            bounds.Include(facet.C);
        }

        int index = _nodes.Count;
        _nodes.Add(new Node(bounds, from, to, -1, -1));
        if (to - from <= LargestLeaf)
        {
            return index;
        }

        int axis = bounds.LongestAxis;
        for (int i = from; i < to; i++)
        {
            Facet facet = this[_order[i]];
            Vec middle = (facet.A / 3) + (facet.B / 3) + (facet.C / 3);
            keys[i] = axis == 0 ? middle.X : axis == 1 ? middle.Y : middle.Z;
        }

        Array.Sort(keys, _order, from, to - from);
        int half = from + ((to - from) / 2);
        int left = Build(from, half, keys, cancellation);
        int right = Build(half, to, keys, cancellation);
        _nodes[index] = new Node(bounds, from, to, left, right);
        return index;
    }

    private Vec Vertex(int index) => Vec.Read(_coordinates.AsSpan(3 * index));

    internal readonly record struct Facet(Vec A, Vec B, Vec C);

    private readonly record struct Node(Bounds Bounds, int From, int To, int Left, int Right)
    {
        internal bool IsLeaf => Left < 0;
    }
}
