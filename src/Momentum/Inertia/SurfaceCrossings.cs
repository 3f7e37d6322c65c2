namespace Momentum.Inertia;

/// <summary>Where a closed surface cuts through itself, or encloses some space twice.</summary>
/// <remarks>
/// <para>Two facets cut each other where an edge of one passes through the other. Signs of volumes that stand clear of their
/// rounding prove that. Where an edge meets an edge, or facets lie in one plane, they prove nothing: there the winding number of
/// the surface is looked at a little way off in all directions, and only a place around which it is wound otherwise than once or
/// not at all is told. So bodies that merely touch are no finding, and none is told that is not there; one that meets the surface in
/// nothing but such places, and in a sliver thinner than the directions looked in, can be missed.</para>
/// <para>Solid angles and rays: see <see cref="FacetTree.Winding"/>.</para>
/// </remarks>
internal static class SurfaceCrossings
{
    // Pairs of facets looked at for each facet; a surface whose boxes meet more often is too entangled to be told about.
    private const long PairsEach = 500;
    private const long PairsAlways = 10_000_000;

    // Places that are looked at from all around.
    private const int MostContacts = 20_000;

    // Of the products that a volume is summed from, and of the places, which are rounded themselves: a volume below is nothing.
    private const double Rounding = 1e-13;
    private const double RoundingOfPlaces = 4e-15;

    // Of the smaller facet's size: how far off a doubtful place the winding is looked at.
    private const double Aside = 1e-3;

    /// <summary>The crossings, at most as many as asked for; null if the pairs to look at are too many.</summary>
    /// <param name="tree">The facets.</param>
    /// <param name="shellFacets">A facet of each separate shell.</param>
    /// <param name="facets">How many facets there are.</param>
    /// <param name="most">How many crossings at most.</param>
    /// <param name="cancellation">Ends the search early.</param>
    internal static List<(int First, int Second, Vec Place)>? Find(FacetTree tree, int[] shellFacets, int facets, int most, CancellationToken cancellation)
    {
        List<(int First, int Second, Vec Place)> found = [];
        int contacts = 0;
        bool all = tree.VisitPairs(
            (PairsEach * facets) + PairsAlways,
            (i, j) =>
            {
                Meeting meeting = Meet(tree, i, j, out Vec place);
                if (meeting == Meeting.Doubtful && contacts < MostContacts)
                {
                    contacts++;
                    meeting = IsWoundWrong(tree, i, j, ref place) ? Meeting.Crossing : Meeting.None;
                }

                if (meeting == Meeting.Crossing)
                {
                    found.Add((Math.Min(i, j), Math.Max(i, j), place));
                }

                return found.Count < most;
            },
            cancellation);

        // A shell within another that faces outward too meets it nowhere.
        foreach (int facet in found.Count == 0 ? shellFacets : [])
        {
            (Vec a, Vec b, Vec c) = tree[facet];
            Vec middle = (a / 3) + (b / 3) + (c / 3);
            Vec normal = (b - a).Cross(c - a);
            Vec step = normal * (Aside * Math.Sqrt(normal.Length) / normal.Length);
            if (tree.Winding(middle - step) is { } inside && tree.Winding(middle + step) is { } outside && (inside, outside) is not (1, 0))
            {
                found.Add((facet, facet, middle));
            }
        }

        return all || found.Count > 0 ? found : null;
    }

    private enum Meeting
    {
        None,
        Crossing,
        Doubtful,
    }

    private static Meeting Meet(FacetTree tree, int i, int j, out Vec place)
    {
        ReadOnlySpan<int> corners = tree.CornersOf(i);
        ReadOnlySpan<int> others = tree.CornersOf(j);
        int shared = 0;
        foreach (int corner in corners)
        {
            shared += others.Contains(corner) ? 1 : 0;
        }

        place = default;
        if (shared >= 2)
        {
            return Meeting.None;
        }

        FacetTree.Facet one = tree[i];
        FacetTree.Facet other = tree[j];
        Span<Vec> a = [one.A, one.B, one.C];
        Span<Vec> b = [other.A, other.B, other.C];
        Span<int> sidesOfA = stackalloc int[3];
        Span<int> sidesOfB = stackalloc int[3];
        if (!Sides(b, a, sidesOfA) || !Sides(a, b, sidesOfB))
        {
            return Meeting.None;
        }

        if (sidesOfA is [0, 0, 0] || sidesOfB is [0, 0, 0])
        {
            return Overlap(a, b, out place) ? Meeting.Doubtful : Meeting.None;
        }

        Meeting meeting = Meeting.None;
        for (int k = 0; k < 3 && meeting != Meeting.Crossing; k++)
        {
            int next = (k + 1) % 3;
            Worst(ref meeting, Pierce(a[k], a[next], sidesOfA[k], sidesOfA[next], corners[k], corners[next], b, others, out Vec here), here, ref place);
            Worst(ref meeting, Pierce(b[k], b[next], sidesOfB[k], sidesOfB[next], others[k], others[next], a, corners, out here), here, ref place);
        }

        return meeting;
    }

    private static void Worst(ref Meeting meeting, Meeting now, Vec here, ref Vec place)
    {
        if (now != Meeting.None && meeting != Meeting.Crossing)
        {
            (meeting, place) = (now, here);
        }
    }

    /// <summary>The side of a plane that each point is on; 0 if its distance is rounding. False if all are on one side.</summary>
    private static bool Sides(ReadOnlySpan<Vec> plane, ReadOnlySpan<Vec> points, Span<int> sides)
    {
        int sum = 0;
        for (int k = 0; k < 3; k++)
        {
            sides[k] = Side(plane[0], plane[1], plane[2], points[k]);
            sum += sides[k];
        }

        return Math.Abs(sum) < 3;
    }

    /// <summary>The sign of the volume of a tetrahedron; 0 if it is rounding.</summary>
    private static int Side(Vec a, Vec b, Vec c, Vec d)
    {
        Vec u = a - d;
        Vec v = b - d;
        Vec w = c - d;
        Vec area = u.Cross(v);
        double volume = area.Dot(w);

        double size = (Math.Abs(u.Y * v.Z) + Math.Abs(u.Z * v.Y)) * Math.Abs(w.X);
        size += (Math.Abs(u.Z * v.X) + Math.Abs(u.X * v.Z)) * Math.Abs(w.Y);
        size += (Math.Abs(u.X * v.Y) + Math.Abs(u.Y * v.X)) * Math.Abs(w.Z);
        double far = Math.Max(Math.Max(a.LargestMagnitude, b.LargestMagnitude), Math.Max(c.LargestMagnitude, d.LargestMagnitude));
        double near = Math.Max(u.LargestMagnitude, Math.Max(v.LargestMagnitude, w.LargestMagnitude));
        return Math.Abs(volume) <= (Rounding * size) + (RoundingOfPlaces * far * near * near) ? 0 : Math.Sign(volume);
    }

    private static Meeting Pierce(
        Vec p, Vec q, int sideOfP, int sideOfQ, int cornerP, int cornerQ, ReadOnlySpan<Vec> facet, ReadOnlySpan<int> corners, out Vec place)
    {
        place = default;
        if (corners.Contains(cornerP) || corners.Contains(cornerQ) || sideOfP * sideOfQ > 0 || (sideOfP == 0 && sideOfQ == 0))
        {
            return Meeting.None;
        }

        int first = Side(p, q, facet[0], facet[1]);
        int second = Side(p, q, facet[1], facet[2]);
        int third = Side(p, q, facet[2], facet[0]);
        int least = Math.Min(first, Math.Min(second, third));
        int most = Math.Max(first, Math.Max(second, third));
        if (least < 0 && most > 0)
        {
            return Meeting.None;
        }

        // Where along the edge, by its distances from the plane.
        Vec normal = (facet[1] - facet[0]).Cross(facet[2] - facet[0]);
        double hp = Math.Abs((p - facet[0]).Dot(normal));
        double hq = Math.Abs((q - facet[0]).Dot(normal));
        double share = hp + hq > 0 ? hp / (hp + hq) : 0.5;
        place = p + (share * (q - p));
        return sideOfP * sideOfQ < 0 && least * most > 0 ? Meeting.Crossing : Meeting.Doubtful;
    }

    /// <summary>Whether two facets of one plane have some area in common, and a place in it.</summary>
    private static bool Overlap(ReadOnlySpan<Vec> a, ReadOnlySpan<Vec> b, out Vec place)
    {
        Vec normal = (a[1] - a[0]).Cross(a[2] - a[0]);
        Span<Vec> polygon = stackalloc Vec[9];
        Span<Vec> cut = stackalloc Vec[9];
        a.CopyTo(polygon);
        int count = 3;
        Vec centre = (b[0] / 3) + (b[1] / 3) + (b[2] / 3);
        double size = Math.Max((b[1] - b[0]).LargestMagnitude, (b[2] - b[0]).LargestMagnitude);

        // Cut by each side of the other (I. E. Sutherland, G. W. Hodgman, Comm. ACM 17 (1974); from memory, not read).
        for (int k = 0; k < 3 && count > 0; k++)
        {
            Vec side = b[(k + 1) % 3] - b[k];
            Vec inward = normal.Cross(side);
            inward = inward.Dot(centre - b[k]) < 0 ? -inward : inward;
            inward /= inward.Length;
            int kept = 0;
            for (int m = 0; m < count; m++)
            {
                Vec from = polygon[m];
                Vec to = polygon[(m + 1) % count];
                double hereOf = (from - b[k]).Dot(inward) - (1e-9 * size);
                double thereOf = (to - b[k]).Dot(inward) - (1e-9 * size);
                if (hereOf > 0)
                {
                    cut[kept++] = from;
                }

                if (hereOf * thereOf < 0)
                {
                    cut[kept++] = from + (hereOf / (hereOf - thereOf) * (to - from));
                }
            }

            cut[..kept].CopyTo(polygon);
            count = kept;
        }

        place = default;
        for (int m = 0; m < count; m++)
        {
            place += polygon[m] / count;
        }

        return count >= 3;
    }

    private static bool IsWoundWrong(FacetTree tree, int i, int j, ref Vec place)
    {
        double step = Aside * Math.Sqrt(Math.Min(Size(tree[i]), Size(tree[j])));
        for (int x = -1; x <= 1; x++)
        {
            for (int y = -1; y <= 1; y++)
            {
                for (int z = -1; z <= 1; z++)
                {
                    // Not along the axes themselves, along which much that is drawn lies.
                    Vec aside = new(x + (0.13 * y) - 0.07, y + (0.17 * z) + 0.05, z + (0.11 * x) - 0.03);
                    Vec here = place + (step * aside);
                    if (tree.Winding(here) is not (null or 0 or 1))
                    {
                        place = here;
                        return true;
                    }
                }
            }
        }

        return false;
    }

    private static double Size(in FacetTree.Facet facet) => (facet.B - facet.A).Cross(facet.C - facet.A).Length;
}
