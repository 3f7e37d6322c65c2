using Momentum.Numerics;

namespace Momentum.Inertia;

/// <summary>Volume, centroid and inertia at unit density about the centroid, of the solid within a closed surface of triangles.</summary>
/// <remarks>
/// Each triangle (a, b, c) and a local origin make a tetrahedron of signed volume d/6, d = a·(b × c). Over it, by own
/// integration (barycentric monomials): ∫ r dV = d/24 s and ∫ r rᵀ dV = d/120 (a aᵀ + b bᵀ + c cᵀ + s sᵀ), s = a + b + c.
/// </remarks>
internal readonly struct PolyhedronIntegrals
{
    internal readonly double Volume;
    internal readonly Vec Centroid;
    internal readonly Tensor Inertia;

    private PolyhedronIntegrals(double volume, Vec centroid, Tensor inertia)
    {
        Volume = volume;
        Centroid = centroid;
        Inertia = inertia;
    }

    /// <summary>Of a surface, given by coordinates, three a vertex, and vertex indices, three a triangle.</summary>
    internal static PolyhedronIntegrals Of(ReadOnlySpan<double> coordinates, ReadOnlySpan<int> corners)
    {
        Vec origin = Bounds.Of(coordinates).Centre;
        CompensatedSum volume = default;
        CompensatedSum x = default;
        CompensatedSum y = default;
        CompensatedSum z = default;
        CompensatedSum xx = default;
        CompensatedSum yy = default;
        CompensatedSum zz = default;
        CompensatedSum xy = default;
        CompensatedSum xz = default;
        CompensatedSum yz = default;
        for (int i = 0; i < corners.Length; i += 3)
        {
            Vec a = Vec.Read(coordinates[(3 * corners[i])..]) - origin;
            Vec b = Vec.Read(coordinates[(3 * corners[i + 1])..]) - origin;
            Vec c = Vec.Read(coordinates[(3 * corners[i + 2])..]) - origin;
            Vec s = a + b + c;
            double d = a.Dot(b.Cross(c));
            volume.Add(d);
            x.Add(d * s.X);
            y.Add(d * s.Y);
            z.Add(d * s.Z);
            xx.Add(d * ((a.X * a.X) + (b.X * b.X) + (c.X * c.X) + (s.X * s.X)));
            yy.Add(d * ((a.Y * a.Y) + (b.Y * b.Y) + (c.Y * c.Y) + (s.Y * s.Y)));
            zz.Add(d * ((a.Z * a.Z) + (b.Z * b.Z) + (c.Z * c.Z) + (s.Z * s.Z)));
            xy.Add(d * ((a.X * a.Y) + (b.X * b.Y) + (c.X * c.Y) + (s.X * s.Y)));
            xz.Add(d * ((a.X * a.Z) + (b.X * b.Z) + (c.X * c.Z) + (s.X * s.Z)));
            yz.Add(d * ((a.Y * a.Z) + (b.Y * b.Z) + (c.Y * c.Z) + (s.Y * s.Z)));
        }

        double v = volume.Value / 6;
        Vec centroid = new(x.Value / 24 / v, y.Value / 24 / v, z.Value / 24 / v);
        double ixx = xx.Value / 120;
        double iyy = yy.Value / 120;
        double izz = zz.Value / 120;
        Tensor local = new(iyy + izz, ixx + izz, ixx + iyy, -xy.Value / 120, -xz.Value / 120, -yz.Value / 120);
        return new(v, origin + centroid, local - Tensor.OfPoint(v, centroid));
    }
}
