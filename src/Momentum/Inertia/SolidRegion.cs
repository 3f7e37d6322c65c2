namespace Momentum.Inertia;

/// <summary>The space that a solid takes up, in its own axes (m): its box, and which points it holds.</summary>
/// <remarks>Each is a millionth smaller than the solid, so that parts that fit each other are not said to overlap.</remarks>
internal sealed class SolidRegion
{
    private const double Smaller = 1 - 1e-6;
    private const double Larger = 1 + 1e-6;

    private readonly Func<Bounds> _extent;
    private readonly Func<Vec, bool> _holds;

    private SolidRegion(Func<Bounds> extent, Func<Vec, bool> holds)
    {
        _extent = extent;
        _holds = holds;
    }

    internal Bounds Extent => _extent();

    internal static SolidRegion Tube(double outer, double inner, double height) => new(
        () => Around(new Vec(outer, outer, height / 2)),
        p => double.Hypot(p.X, p.Y) < outer * Smaller && Math.Abs(p.Z) < height / 2 * Smaller && (inner == 0 || double.Hypot(p.X, p.Y) > inner * Larger));

    internal static SolidRegion Cone(double radius, double height) => new(
        () => Box(new Vec(-radius, -radius, 0), new Vec(radius, radius, height)),
        p => p.Z > height * (1 - Smaller) && double.Hypot(p.X, p.Y) < radius * (Smaller - (p.Z / height)));

    internal static SolidRegion Sphere(double radius) => new(
        () => Around(new Vec(radius, radius, radius)),
        p => p.Length < radius * Smaller);

    internal static SolidRegion Box(double x, double y, double z) => new(
        () => Around(new Vec(x / 2, y / 2, z / 2)),
        p => Math.Abs(p.X) < x / 2 * Smaller && Math.Abs(p.Y) < y / 2 * Smaller && Math.Abs(p.Z) < z / 2 * Smaller);

    internal static SolidRegion Mesh(TriangleMesh mesh) => new(() => mesh.Extent, p => mesh.Winding(p) is > 0);

    internal bool Holds(Vec point) => _holds(point);

    private static Bounds Around(Vec half) => Box(-half, half);

    private static Bounds Box(Vec low, Vec high)
    {
        Bounds bounds = Bounds.Empty;
        bounds.Include(low);
        bounds.Include(high);
        return bounds;
    }
}
