using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Momentum.Tests.Inertia;

/// <summary>Facets for tests, nine coordinates each, and the two forms of file.</summary>
internal static class Stl
{
    internal static byte[] Binary(double[] facets)
    {
        byte[] file = new byte[84 + (50 * (facets.Length / 9))];
        BinaryPrimitives.WriteUInt32LittleEndian(file.AsSpan(80), (uint)(facets.Length / 9));
        for (int i = 0; i < facets.Length; i++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(file.AsSpan(84 + (50 * (i / 9)) + 12 + (4 * (i % 9))), (float)facets[i]);
        }

        return file;
    }

    internal static byte[] Text(double[] facets)
    {
        StringBuilder text = new("solid test piece\n");
        for (int i = 0; i < facets.Length; i += 9)
        {
            text.Append("  facet normal 0 0 0\n    outer loop\n");
            for (int v = i; v < i + 9; v += 3)
            {
                text.AppendLine(CultureInfo.InvariantCulture, $"      vertex {facets[v]:R} {facets[v + 1]:E8} {facets[v + 2]:R}");
            }

            text.Append("    endloop\n  endfacet\n");
        }

        return Encoding.ASCII.GetBytes(text.Append("endsolid test piece\n").ToString());
    }

    internal static double[] Box(double x0, double y0, double z0, double x1, double y1, double z1)
    {
        double[][] v =
        [
            [x0, y0, z0], [x1, y0, z0], [x1, y1, z0], [x0, y1, z0],
            [x0, y0, z1], [x1, y0, z1], [x1, y1, z1], [x0, y1, z1],
        ];
        int[] corners =
        [
            0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4,
            1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7,
        ];
        return [.. corners.SelectMany(c => v[c])];
    }

    internal static double[] CornerTetrahedron =>
    [
        0, 0, 0, 0, 1, 0, 1, 0, 0,
        0, 0, 0, 1, 0, 0, 0, 0, 1,
        0, 0, 0, 0, 0, 1, 0, 1, 0,
        1, 0, 0, 0, 1, 0, 0, 0, 1,
    ];

    /// <summary>A regular prism of n sides inscribed in a cylinder about z, its middle at the origin.</summary>
    internal static double[] Prism(int n, double radius, double height)
    {
        List<double> facets = [];
        double h = height / 2;
        for (int i = 0; i < n; i++)
        {
            (double s0, double c0) = Math.SinCos(Math.Tau * i / n);
            (double s1, double c1) = Math.SinCos(Math.Tau * ((i + 1) % n) / n);
            (double ax, double ay, double bx, double by) = (radius * c0, radius * s0, radius * c1, radius * s1);
            facets.AddRange([0, 0, h, ax, ay, h, bx, by, h]);
            facets.AddRange([0, 0, -h, bx, by, -h, ax, ay, -h]);
            facets.AddRange([ax, ay, -h, bx, by, -h, bx, by, h]);
            facets.AddRange([ax, ay, -h, bx, by, h, ax, ay, h]);
        }

        return [.. facets];
    }

    internal static double[] Reversed(double[] facets)
    {
        double[] turned = [.. facets];
        for (int i = 0; i < turned.Length; i += 9)
        {
            for (int k = 0; k < 3; k++)
            {
                (turned[i + 3 + k], turned[i + 6 + k]) = (turned[i + 6 + k], turned[i + 3 + k]);
            }
        }

        return turned;
    }
}
