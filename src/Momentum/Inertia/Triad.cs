namespace Momentum.Inertia;

/// <summary>How a third of right-handed axes, or two of them, follow from the rest.</summary>
internal static class Triad
{
    /// <summary>
    /// The direction, in the plane across a normal, of the projection of that frame axis which is farthest from the normal;
    /// of equally far ones the first. Across z it is x.
    /// </summary>
    internal static (double X, double Y, double Z) InPlaneOf((double X, double Y, double Z) normal)
    {
        (double X, double Y, double Z) axis =
            Math.Abs(normal.X) <= Math.Abs(normal.Y) && Math.Abs(normal.X) <= Math.Abs(normal.Z) ? (1, 0, 0) :
            Math.Abs(normal.Y) <= Math.Abs(normal.Z) ? (0, 1, 0) : (0, 0, 1);
        double along = (axis.X * normal.X) + (axis.Y * normal.Y) + (axis.Z * normal.Z);
        (double x, double y, double z) = (axis.X - (along * normal.X), axis.Y - (along * normal.Y), axis.Z - (along * normal.Z));
        double length = Math.Sqrt((x * x) + (y * y) + (z * z));
        return (x / length, y / length, z / length);
    }

    /// <summary>The vector product a × b.</summary>
    internal static (double X, double Y, double Z) Cross((double X, double Y, double Z) a, (double X, double Y, double Z) b) =>
        ((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));
}
