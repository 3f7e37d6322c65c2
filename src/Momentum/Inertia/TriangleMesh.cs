using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Inertia;

/// <summary>A closed surface of triangles, wound anticlockwise as seen from outside: the boundary of a solid.</summary>
/// <remarks>
/// <para>Checked when made: every coordinate finite; no triangle without area and none twice; every edge passed as often
/// one way as the other, so that the surface is closed and wound one way throughout; every separate shell encloses volume
/// and faces outward, or inward if it lies (by its bounding box) within an outward one, as the wall of a cavity does.
/// Whether the surface cuts through itself, or its shells overlap, so that some space would count twice, is told by
/// <see cref="Crossings"/>.</para>
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

    private readonly ClosedSurface _surface;
    private readonly double _unit;
    private FacetTree? _tree;

    private TriangleMesh(ClosedSurface surface, double unit)
    {
        _surface = surface;
        _unit = unit;
        TriangleCount = surface.Corners.Length / 3;
        VertexCount = surface.Coordinates.Length / 3;
        PolyhedronIntegrals integrals = PolyhedronIntegrals.Of(surface.Coordinates, surface.Corners);
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

    /// <summary>Where the surface cuts through itself or encloses some space twice: its volume and inertia then count that space twice.</summary>
    /// <remarks>
    /// <para>Pairs of facets whose boxes meet are found by a tree of boxes (time goes with n log n for n facets). What is told
    /// is so: facets are told that cut each other by more than rounding; where edges meet edges or facets lie in one plane,
    /// only if close by the surface winds round some space more than once. Bodies that touch are not told. A surface that meets
    /// itself in nothing but such places and encloses only slivers twice can be missed.</para>
    /// </remarks>
    /// <param name="most">How many to tell at most, 1 or more: the first ones found tell where to mend.</param>
    /// <param name="cancellation">Ends the search early.</param>
    /// <returns>None for a sound surface.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 is asked for.</exception>
    /// <exception cref="ComputationRefusedException">So many facets lie across each other that the search is given up.</exception>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public IReadOnlyList<MeshCrossing> Crossings(int most = 10, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        return SurfaceCrossings.Find(Tree(cancellation), _surface.ShellFacets, TriangleCount, most, cancellation) is { } found
            ? [.. found.Select(pair => new MeshCrossing(
                pair.First + 1, pair.Second + 1, Position<Part>.Origin + Vector<Length, Part>.FromSi(_unit * pair.Place)))]
            : throw new ComputationRefusedException($"The {TriangleCount} facets of the mesh lie across each other so often that whether they cut each other is not worked out. Export the mesh with facets that are less slender.");
    }

    /// <summary>How often the surface is wound round a point (m): 1 inside, 0 outside; null if it is too near to the surface to tell.</summary>
    internal int? Winding(Vec point) => Tree(default).Winding(point / _unit);

    /// <summary>The box around the mesh, m.</summary>
    internal Bounds Extent
    {
        get
        {
            Bounds extent = Bounds.Empty;
            Bounds own = Tree(default).Bounds;
            extent.Include(_unit * own.Low);
            extent.Include(_unit * own.High);
            return extent;
        }
    }

    // Made when first asked for; two threads that ask at once make the same.
    private FacetTree Tree(CancellationToken cancellation) => _tree ??= new FacetTree(_surface.Coordinates, _surface.Corners, cancellation);

    private static double Metres(LengthUnit unit) => Enum.IsDefined(unit)
        ? Length.From(1, unit).Meters
        : throw new ArgumentOutOfRangeException(nameof(unit), unit, "unit must be a unit of length: an STL file does not say which its coordinates are in.");

    // Nine coordinates a triangle.
    private static TriangleMesh Of(ReadOnlySpan<double> coordinates, double unit)
    {
        return new(ClosedSurface.Of(coordinates), unit);
    }
}
