using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Inertia;

/// <summary>A closed surface of triangles, wound anticlockwise as seen from outside: the boundary of a solid.</summary>
/// <remarks>
/// <para>Checked when made: every coordinate finite; no triangle without area and none twice; every edge passed as often
/// one way as the other, so that the surface is closed and wound one way throughout; every separate shell encloses volume
/// and faces outward, or inward if it lies (by its bounding box) within an outward one, as the wall of a cavity does. Not
/// checked: whether the surface cuts through itself, and whether shells overlap.</para>
/// <para>Vertices are the same point only if their three coordinates are exactly equal; nothing near is welded.</para>
/// <para>Volume, centroid and inertia are the exact integrals over the polyhedron, by signed tetrahedra from a point amid
/// the mesh, in compensated sums (own derivation; the same quantities as B. Mirtich, J. Graphics Tools 1(2), 1996).</para>
/// <para>Immutable, so safe to share between threads. Compared by reference.</para>
/// </remarks>
public sealed class TriangleMesh
{
    internal readonly double SiVolume;

    // At unit density about the centroid, m⁵.
    internal readonly Tensor SiInertia;

    private TriangleMesh(int triangleCount, int vertexCount, PolyhedronIntegrals integrals, double unit)
    {
        TriangleCount = triangleCount;
        VertexCount = vertexCount;
        double volume = integrals.Volume * unit * unit * unit;
        Tensor inertia = integrals.Inertia * (unit * unit * unit * unit * unit);
        if (!(volume > 0) || !double.IsFinite(volume) || !(inertia.LargestElement > 0) || !double.IsFinite(inertia.LargestElement))
        {
            throw new InvalidDataException("The mesh is so large or so small that its volume or inertia overflows or vanishes in double precision; check the length unit.");
        }

        SiVolume = volume;
        SiInertia = inertia;
        Centroid = Position<Part>.Origin + Vector<Length, Part>.FromSi(unit * integrals.Centroid);
    }

    /// <summary>The number of triangles.</summary>
    public int TriangleCount { get; }

    /// <summary>The number of distinct vertices.</summary>
    public int VertexCount { get; }

    /// <summary>The volume enclosed, cavities left out.</summary>
    public Volume Volume => Volume.FromCubicMeters(SiVolume);

    /// <summary>The centre of the volume.</summary>
    public Position<Part> Centroid { get; }

    /// <summary>From vertices and, for each triangle, three indices of them, anticlockwise as seen from outside.</summary>
    /// <param name="vertices">The vertices; equal ones count as one.</param>
    /// <param name="corners">Indices of vertices, from 0, three a triangle.</param>
    /// <exception cref="ArgumentException">The corners are not whole triangles, or an index has no vertex.</exception>
    /// <exception cref="InvalidDataException">The surface is not the boundary of a solid, for the reason that the message gives.</exception>
    public static TriangleMesh Of(ReadOnlySpan<Position<Part>> vertices, ReadOnlySpan<int> corners)
    {
        if (corners.Length % 3 != 0)
        {
            throw new ArgumentException($"corners has {corners.Length} indices, which is not three a triangle.", nameof(corners));
        }

        double[] coordinates = new double[3 * corners.Length];
        for (int i = 0; i < corners.Length; i++)
        {
            if ((uint)corners[i] >= (uint)vertices.Length)
            {
                throw new ArgumentException($"corners[{i}] is {corners[i]}; there are {vertices.Length} vertices, numbered from 0.", nameof(corners));
            }

            vertices[corners[i]].FromOrigin.CopySiTo(coordinates.AsSpan(3 * i));
        }

        return Of(coordinates, 1);
    }

    /// <summary>From the contents of an STL file, binary or text.</summary>
    /// <param name="file">The whole file.</param>
    /// <param name="unit">The unit of its coordinates, which an STL file does not say.</param>
    /// <exception cref="ArgumentOutOfRangeException">The unit is not a unit of length.</exception>
    /// <exception cref="InvalidDataException">The file is not a whole STL file, or its surface is not the boundary of a solid, for the reason that the message gives.</exception>
    /// <remarks>
    /// A file of 84 + 50 n bytes, n being the number at byte 80, is binary; another that begins with <c>solid</c> and holds no zero byte is text;
    /// anything else is refused. Facet normals and attributes are not used: the winding decides.
    /// </remarks>
    public static TriangleMesh ReadStl(ReadOnlySpan<byte> file, LengthUnit unit) => Of(StlReader.Read(file), Metres(unit));

    /// <summary>From an STL file, binary or text, read to its end.</summary>
    /// <param name="file">The file; memory grows only with what really arrives.</param>
    /// <param name="unit">The unit of its coordinates, which an STL file does not say.</param>
    /// <exception cref="ArgumentOutOfRangeException">The unit is not a unit of length.</exception>
    /// <exception cref="InvalidDataException">The file exceeds 256 MiB, is not a whole STL file, or its surface is not the boundary of a solid, for the reason that the message gives.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static TriangleMesh ReadStl(Stream file, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(file);
        double metres = Metres(unit);
        return Of(StlReader.Read(file), metres);
    }

    private static double Metres(LengthUnit unit) => Enum.IsDefined(unit)
        ? Length.From(1, unit).Meters
        : throw new ArgumentOutOfRangeException(nameof(unit), unit, "unit must be a unit of length: an STL file does not say which its coordinates are in.");

    // Nine coordinates a triangle.
    private static TriangleMesh Of(ReadOnlySpan<double> coordinates, double unit)
    {
        ClosedSurface surface = ClosedSurface.Of(coordinates);
        return new(surface.Corners.Length / 3, surface.Coordinates.Length / 3, PolyhedronIntegrals.Of(surface.Coordinates, surface.Corners), unit);
    }
}
