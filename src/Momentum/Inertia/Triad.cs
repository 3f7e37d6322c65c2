namespace Momentum.Inertia;

/// <summary>How the other two of three right-handed axes are chosen where one is given.</summary>
internal static class Triad
{
    /// <summary>
    /// The direction, in the plane across a normal, of the projection of that frame axis which is farthest from the normal;
    /// of equally far ones the first. Across z it is x.
    /// </summary>
    internal static Vec InPlaneOf(Vec normal)
    {
        Vec axis =
            Math.Abs(normal.X) <= Math.Abs(normal.Y) && Math.Abs(normal.X) <= Math.Abs(normal.Z) ? new(1, 0, 0) :
            Math.Abs(normal.Y) <= Math.Abs(normal.Z) ? new(0, 1, 0) : new(0, 0, 1);
        Vec projection = axis - (axis.Dot(normal) * normal);
        return projection / projection.Length;
    }
}
