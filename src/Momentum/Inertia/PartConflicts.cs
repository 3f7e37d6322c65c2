namespace Momentum.Inertia;

/// <summary>A region placed and turned in an assembly's frame.</summary>
/// <param name="Name">Its part.</param>
/// <param name="Region">The region.</param>
/// <param name="IsHole">Whether its part is taken away.</param>
/// <param name="At">Where its origin is, m.</param>
/// <param name="Cosines">The rotation's matrix, row by row, from its own axes to the frame's.</param>
internal sealed record PlacedRegion(string Name, SolidRegion Region, bool IsHole, Vec At, double[] Cosines)
{
    private Bounds? _extent;

    /// <summary>The box, along the frame's axes, around its own box.</summary>
    internal Bounds Extent => _extent ??= Around();

    internal bool Holds(Vec point)
    {
        Vec from = point - At;
        return Region.Holds(new Vec(
            (Cosines[0] * from.X) + (Cosines[3] * from.Y) + (Cosines[6] * from.Z),
            (Cosines[1] * from.X) + (Cosines[4] * from.Y) + (Cosines[7] * from.Z),
            (Cosines[2] * from.X) + (Cosines[5] * from.Y) + (Cosines[8] * from.Z)));
    }

    private Bounds Around()
    {
        Bounds own = Region.Extent;
        Bounds extent = Bounds.Empty;
        for (int corner = 0; corner < 8; corner++)
        {
            Vec p = new(
                (corner & 1) == 0 ? own.Low.X : own.High.X, (corner & 2) == 0 ? own.Low.Y : own.High.Y, (corner & 4) == 0 ? own.Low.Z : own.High.Z);
            extent.Include(At + new Vec(
                (Cosines[0] * p.X) + (Cosines[1] * p.Y) + (Cosines[2] * p.Z),
                (Cosines[3] * p.X) + (Cosines[4] * p.Y) + (Cosines[5] * p.Z),
                (Cosines[6] * p.X) + (Cosines[7] * p.Y) + (Cosines[8] * p.Z)));
        }

        return extent;
    }
}

/// <summary>Looks for space that the parts of an assembly count wrong, by points spread through the boxes of parts.</summary>
internal static class PartConflicts
{
    private const int Points = 4096;

    // Fractions of the additive recurrence in three dimensions: powers of the inverse of the real root of x⁴ = x + 1
    // (M. Roberts, 2018; from memory, not read).
    private const double Root = 1.2207440846057596;

    /// <summary>What is found: of each two parts, and of each hole, one conflict at most.</summary>
    internal static IEnumerable<(PartConflictKind Kind, string Part, string? Other, Vec Place, double Volume)> Find(
        List<PlacedRegion> placed, bool allKnown, CancellationToken cancellation)
    {
        for (int i = 0; i < placed.Count; i++)
        {
            PlacedRegion one = placed[i];
            if (one.IsHole)
            {
                if (allKnown && Sample(one.Extent, p => one.Holds(p) && Count(placed, p) < 0, cancellation) is { } outside)
                {
                    yield return (PartConflictKind.HoleOutsideMaterial, one.Name, null, outside.Place, outside.Volume);
                }

                continue;
            }

            for (int j = i + 1; j < placed.Count; j++)
            {
                PlacedRegion other = placed[j];
                if (!other.IsHole && one.Extent.Meets(other.Extent) &&
                    Sample(one.Extent.Common(other.Extent), p => one.Holds(p) && other.Holds(p) && Count(placed, p) > 1, cancellation) is { } overlap)
                {
                    yield return (PartConflictKind.Overlap, one.Name, other.Name, overlap.Place, overlap.Volume);
                }
            }
        }
    }

    /// <summary>Parts that hold a point less holes that do.</summary>
    private static int Count(List<PlacedRegion> placed, Vec point) =>
        placed.Sum(region => region.Holds(point) ? region.IsHole ? -1 : 1 : 0);

    /// <summary>The first of the points for which something holds, and the share of the box's volume that they stand for.</summary>
    private static (Vec Place, double Volume)? Sample(in Bounds box, Func<Vec, bool> holds, CancellationToken cancellation)
    {
        Vec low = box.Low;
        Vec size = box.High - low;
        int found = 0;
        Vec first = default;
        for (int i = 1; i <= Points; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            Vec point = low + new Vec(
                Fraction(i / Root) * size.X, Fraction(i / (Root * Root)) * size.Y, Fraction(i / (Root * Root * Root)) * size.Z);
            if (holds(point))
            {
                first = found++ == 0 ? point : first;
            }
        }

        return found > 0 ? (first, size.X * size.Y * size.Z * found / Points) : null;
    }

    private static double Fraction(double value) => value - Math.Floor(value);
}
