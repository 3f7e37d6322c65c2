namespace Momentum.Inertia;

/// <summary>Volume, centroid and inertia at unit density about the centroid, of the solid within a closed surface of triangles.</summary>
/// <remarks>
/// Each triangle (a, b, c) and a local origin make a tetrahedron of signed volume d/6, d = a·(b × c). Over it, by own
/// integration (barycentric monomials): ∫ r dV = d/24 s and ∫ r rᵀ dV = d/120 (a aᵀ + b bᵀ + c cᵀ + s sᵀ), s = a + b + c.
/// </remarks>
internal readonly struct PolyhedronIntegrals
{
    internal readonly double Volume;
    internal readonly double X;
    internal readonly double Y;
    internal readonly double Z;
    internal readonly SymmetricMatrix Inertia;

    private PolyhedronIntegrals(double volume, double x, double y, double z, SymmetricMatrix inertia)
    {
        Volume = volume;
        X = x;
        Y = y;
        Z = z;
        Inertia = inertia;
    }

    /// <summary>Of a surface, given by coordinates, three a vertex, and vertex indices, three a triangle.</summary>
    internal static PolyhedronIntegrals Of(ReadOnlySpan<double> coordinates, ReadOnlySpan<int> corners)
    {
        Bounds bounds = Bounds.Of(coordinates);
        double ox = bounds.CentreX;
        double oy = bounds.CentreY;
        double oz = bounds.CentreZ;
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
            int a = 3 * corners[i];
            int b = 3 * corners[i + 1];
            int c = 3 * corners[i + 2];
            double ax = coordinates[a] - ox;
            double ay = coordinates[a + 1] - oy;
            double az = coordinates[a + 2] - oz;
            double bx = coordinates[b] - ox;
            double by = coordinates[b + 1] - oy;
            double bz = coordinates[b + 2] - oz;
            double cx = coordinates[c] - ox;
            double cy = coordinates[c + 1] - oy;
            double cz = coordinates[c + 2] - oz;
            double d = (ax * ((by * cz) - (bz * cy))) + (ay * ((bz * cx) - (bx * cz))) + (az * ((bx * cy) - (by * cx)));
            double sx = ax + bx + cx;
            double sy = ay + by + cy;
            double sz = az + bz + cz;
            volume.Add(d);
            x.Add(d * sx);
            y.Add(d * sy);
            z.Add(d * sz);
            xx.Add(d * ((ax * ax) + (bx * bx) + (cx * cx) + (sx * sx)));
            yy.Add(d * ((ay * ay) + (by * by) + (cy * cy) + (sy * sy)));
            zz.Add(d * ((az * az) + (bz * bz) + (cz * cz) + (sz * sz)));
            xy.Add(d * ((ax * ay) + (bx * by) + (cx * cy) + (sx * sy)));
            xz.Add(d * ((ax * az) + (bx * bz) + (cx * cz) + (sx * sz)));
            yz.Add(d * ((ay * az) + (by * bz) + (cy * cz) + (sy * sz)));
        }

        double v = volume.Value / 6;
        double mx = x.Value / 24 / v;
        double my = y.Value / 24 / v;
        double mz = z.Value / 24 / v;
        double ixx = xx.Value / 120;
        double iyy = yy.Value / 120;
        double izz = zz.Value / 120;
        SymmetricMatrix local = new(iyy + izz, ixx + izz, ixx + iyy, -xy.Value / 120, -xz.Value / 120, -yz.Value / 120);
        return new(v, ox + mx, oy + my, oz + mz, local - SymmetricMatrix.OfPointMass(v, mx, my, mz));
    }
}
