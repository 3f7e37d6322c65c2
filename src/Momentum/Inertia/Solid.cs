using System.Globalization;
using System.Runtime.CompilerServices;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Inertia;

/// <summary>A homogeneous solid (or a point, line or surface of mass) in its own axes: a part for an <see cref="Assembly{TFrame}"/>.</summary>
/// <remarks>
/// <para>Solids of revolution have their axis along z. The origin is the centre of mass, except where a factory says
/// otherwise (cone, mesh, stated figures). Each comes from its mass, or from its density by volume, area or length as it
/// has volume, area or only length.</para>
/// <para>All factories throw <see cref="ArgumentOutOfRangeException"/>, naming the parameter, for a mass, density or
/// dimension that is not a finite number above zero. Formulas: own integration of ∫(r² 1 − r rᵀ) dm.</para>
/// <para>Immutable, so safe to share between threads. Compared by reference.</para>
/// </remarks>
public sealed class Solid
{
    internal readonly double SiMass;
    internal readonly Tensor SiInertia;

    // Null for what has no volume, or none that is known.
    internal readonly SolidRegion? Region;

    private Solid(string shape, double mass, Position<Part> centreOfMass, Tensor inertia, SolidRegion? region = null)
    {
        Region = region;
        Shape = shape;
        SiMass = mass;
        CentreOfMass = centreOfMass;
        SiInertia = inertia;
    }

    /// <summary>The shape's name in lower case, such as <c>cylinder</c>.</summary>
    public string Shape { get; }

    /// <summary>The mass.</summary>
    public Mass Mass => Mass.FromKilograms(SiMass);

    /// <summary>The centre of mass in the solid's own axes.</summary>
    public Position<Part> CentreOfMass { get; }

    /// <summary>A mass at one point, the origin. It has no inertia about itself.</summary>
    /// <param name="mass">The mass.</param>
    public static Solid Point(Mass mass) => new("point", Kilograms(mass), default, default);

    /// <summary>A thin straight rod along z: m l²/12 across, nothing about itself.</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="length">The length.</param>
    public static Solid Rod(Mass mass, Length length)
    {
        double m = Kilograms(mass);
        double l = Metres(length);
        return Centred("rod", m, m * l * l / 12, m * l * l / 12, 0);
    }

    /// <summary>A thin straight rod along z.</summary>
    /// <param name="density">Mass by length.</param>
    /// <param name="length">The length.</param>
    public static Solid Rod(LinearDensity density, Length length) =>
        Rod(Of(density.ToSi(), Metres(length), nameof(density), "kilograms a metre"), length);

    /// <summary>A thin disc in the plane of x and y: m r²/2 about z, half of it across.</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="radius">The radius.</param>
    public static Solid Disc(Mass mass, Length radius)
    {
        double m = Kilograms(mass);
        double r = Metres(radius);
        return Centred("disc", m, m * r * r / 4, m * r * r / 4, m * r * r / 2);
    }

    /// <summary>A thin disc in the plane of x and y.</summary>
    /// <param name="density">Mass by area.</param>
    /// <param name="radius">The radius.</param>
    public static Solid Disc(AreaDensity density, Length radius) =>
        Disc(Of(density.KilogramsPerSquareMeter, Math.PI * Square(Metres(radius)), nameof(density), "kilograms a square metre"), radius);

    /// <summary>A cylinder about z: m r²/2 about the axis, m (3 r² + h²)/12 across.</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="radius">The radius.</param>
    /// <param name="height">The length along the axis.</param>
    public static Solid Cylinder(Mass mass, Length radius, Length height) =>
        Hollow("cylinder", Kilograms(mass), Metres(radius), 0, Metres(height));

    /// <summary>A cylinder about z.</summary>
    /// <param name="density">Mass by volume.</param>
    /// <param name="radius">The radius.</param>
    /// <param name="height">The length along the axis.</param>
    public static Solid Cylinder(Density density, Length radius, Length height) =>
        Cylinder(Of(density, Math.PI * Square(Metres(radius)) * Metres(height)), radius, height);

    /// <summary>A tube about z: m (R² + r²)/2 about the axis, m (3 (R² + r²) + h²)/12 across.</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="outerRadius">The outer radius R.</param>
    /// <param name="innerRadius">The inner radius r, at most the outer one; equal to it, the wall is thin.</param>
    /// <param name="height">The length along the axis.</param>
    /// <exception cref="ArgumentOutOfRangeException">The inner radius exceeds the outer one; or as in the type's remarks.</exception>
    public static Solid Tube(Mass mass, Length outerRadius, Length innerRadius, Length height) =>
        Hollow("tube", Kilograms(mass), Metres(outerRadius), Inner(innerRadius, outerRadius), Metres(height));

    /// <summary>A tube about z.</summary>
    /// <param name="density">Mass by volume.</param>
    /// <param name="outerRadius">The outer radius.</param>
    /// <param name="innerRadius">The inner radius, below the outer one.</param>
    /// <param name="height">The length along the axis.</param>
    /// <exception cref="ArgumentOutOfRangeException">The inner radius is not below the outer one; or as in the type's remarks.</exception>
    public static Solid Tube(Density density, Length outerRadius, Length innerRadius, Length height)
    {
        double outer = Metres(outerRadius);
        double inner = Inner(innerRadius, outerRadius);
        if (inner >= outer)
        {
            throw new ArgumentOutOfRangeException(nameof(innerRadius), inner, "innerRadius equals outerRadius: a wall without thickness has no volume for the density to fill. Give the mass instead.");
        }

        return Tube(Of(density, Math.PI * (outer - inner) * (outer + inner) * Metres(height)), outerRadius, innerRadius, height);
    }

    /// <summary>
    /// A cone about z, its origin the centre of its base and its apex at z = h; the centre of mass is at h/4. About it
    /// 3 m r²/10 about the axis, 3 m (4 r² + h²)/80 across.
    /// </summary>
    /// <param name="mass">The mass.</param>
    /// <param name="radius">The radius of the base.</param>
    /// <param name="height">The distance h of the apex from the base.</param>
    public static Solid Cone(Mass mass, Length radius, Length height)
    {
        double m = Kilograms(mass);
        double r = Metres(radius);
        double h = Metres(height);
        double across = 3 * m * ((4 * r * r) + (h * h)) / 80;
        return new("cone", Representable(m, across), Position<Part>.Of(0, 0, h / 4, LengthUnit.Meter), new(across, across, 0.3 * m * r * r, 0, 0, 0), SolidRegion.Cone(r, h));
    }

    /// <summary>A cone about z, its origin the centre of its base and its apex at z = height.</summary>
    /// <param name="density">Mass by volume.</param>
    /// <param name="radius">The radius of the base.</param>
    /// <param name="height">The distance of the apex from the base.</param>
    public static Solid Cone(Density density, Length radius, Length height) =>
        Cone(Of(density, Math.PI * Square(Metres(radius)) * Metres(height) / 3), radius, height);

    /// <summary>A sphere: 2 m r²/5 about every diameter.</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="radius">The radius.</param>
    public static Solid Sphere(Mass mass, Length radius)
    {
        double m = Kilograms(mass);
        double i = 0.4 * m * Square(Metres(radius));
        return Centred("sphere", m, i, i, i, SolidRegion.Sphere(radius.Meters));
    }

    /// <summary>A sphere.</summary>
    /// <param name="density">Mass by volume.</param>
    /// <param name="radius">The radius.</param>
    public static Solid Sphere(Density density, Length radius) =>
        Sphere(Of(density, 4 * Math.PI * Square(Metres(radius)) * Metres(radius) / 3), radius);

    /// <summary>A thin spherical shell: 2 m r²/3 about every diameter. (A thick one is a sphere with a sphere subtracted.)</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="radius">The radius.</param>
    public static Solid SphericalShell(Mass mass, Length radius)
    {
        double m = Kilograms(mass);
        double i = 2 * m * Square(Metres(radius)) / 3;
        return Centred("spherical shell", m, i, i, i);
    }

    /// <summary>A thin spherical shell.</summary>
    /// <param name="density">Mass by area.</param>
    /// <param name="radius">The radius.</param>
    public static Solid SphericalShell(AreaDensity density, Length radius) =>
        SphericalShell(Of(density.KilogramsPerSquareMeter, 4 * Math.PI * Square(Metres(radius)), nameof(density), "kilograms a square metre"), radius);

    /// <summary>A box with its edges along the axes: m (b² + c²)/12 about each, b and c being the edges across.</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="x">The edge along x.</param>
    /// <param name="y">The edge along y.</param>
    /// <param name="z">The edge along z.</param>
    public static Solid Box(Mass mass, Length x, Length y, Length z)
    {
        double m = Kilograms(mass);
        double xx = Square(Metres(x));
        double yy = Square(Metres(y));
        double zz = Square(Metres(z));
        return Centred("box", m, m * (yy + zz) / 12, m * (xx + zz) / 12, m * (xx + yy) / 12, SolidRegion.Box(x.Meters, y.Meters, z.Meters));
    }

    /// <summary>A box with its edges along the axes.</summary>
    /// <param name="density">Mass by volume.</param>
    /// <param name="x">The edge along x.</param>
    /// <param name="y">The edge along y.</param>
    /// <param name="z">The edge along z.</param>
    public static Solid Box(Density density, Length x, Length y, Length z) =>
        Box(Of(density, Metres(x) * Metres(y) * Metres(z)), x, y, z);

    /// <summary>The solid that a closed mesh encloses, in the mesh's own axes and from its own origin.</summary>
    /// <param name="mass">The mass.</param>
    /// <param name="mesh">The mesh.</param>
    public static Solid Mesh(Mass mass, TriangleMesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        double m = Kilograms(mass);
        double density = m / mesh.SiVolume;
        return new("mesh", Representable(m, density * mesh.SiInertia.LargestElement), mesh.Centroid, mesh.SiInertia * density, SolidRegion.Mesh(mesh));
    }

    /// <summary>The solid that a closed mesh encloses, in the mesh's own axes and from its own origin.</summary>
    /// <param name="density">Mass by volume.</param>
    /// <param name="mesh">The mesh.</param>
    public static Solid Mesh(Density density, TriangleMesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        return Mesh(Of(density, mesh.SiVolume), mesh);
    }

    /// <summary>A part whose mass properties are known: weighed and measured, or a supplier's figures.</summary>
    /// <param name="properties">Mass, centre of mass and inertia in the part's own axes.</param>
    /// <exception cref="ArgumentException">The properties are <c>default</c>: no body.</exception>
    public static Solid Stated(MassProperties<Part> properties) => properties.SiMass > 0
        ? new("stated", properties.SiMass, properties.CentreOfMass, properties.Inertia.Si)
        : throw new ArgumentException("properties is default, which is no body; make it with MassProperties<Part>.Of.", nameof(properties));

    /// <summary>The inertia about a point (parallel axes).</summary>
    /// <param name="point">The point, in the solid's own axes.</param>
    public PointInertia<Part> InertiaAbout(Position<Part> point)
    {
        Vector<Length, Part> arm = CentreOfMass - Checks.Finite(point);
        return new(point, SiInertia + Tensor.OfPoint(SiMass, arm.Si));
    }

    /// <summary>Shape and mass, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Shape}, {SiMass} kg");

    private static Solid Centred(string shape, double mass, double xx, double yy, double zz, SolidRegion? region = null) =>
        new(shape, Representable(mass, xx + yy + zz), default, new(xx, yy, zz, 0, 0, 0), region);

    private static Solid Hollow(string shape, double m, double outer, double inner, double height)
    {
        double squares = (outer * outer) + (inner * inner);
        double across = m * ((3 * squares) + (height * height)) / 12;
        return Centred(shape, m, across, across, m * squares / 2, SolidRegion.Tube(outer, inner, height));
    }

    private static double Representable(double mass, double inertia) => inertia > 0 && double.IsFinite(inertia)
        ? mass
        : throw new ArgumentOutOfRangeException(
            nameof(mass), mass, "The inertia of this mass and these dimensions overflows or vanishes in double precision; check their units.");

    private static double Square(double value) => value * value;

    private static double Kilograms(Mass mass) => Checks.Positive(mass.ToSi(), nameof(mass), "kilograms");

    private static double Metres(Length length, [CallerArgumentExpression(nameof(length))] string name = "") =>
        Checks.Positive(length.Meters, name, "metres");

    private static double Inner(Length innerRadius, Length outerRadius)
    {
        double inner = Metres(innerRadius);
        double outer = Metres(outerRadius);
        return inner <= outer
            ? inner
            : throw new ArgumentOutOfRangeException(
                nameof(innerRadius), inner, string.Create(CultureInfo.InvariantCulture, $"innerRadius {inner} m exceeds outerRadius {outer} m; the order is outer, inner."));
    }

    private static Mass Of(Density density, double volume) =>
        Of(density.KilogramsPerCubicMeter, volume, nameof(density), "kilograms a cubic metre");

    private static Mass Of(double density, double extent, string name, string unit) =>
        Mass.FromKilograms(Checks.Positive(density, name, unit) * extent);
}
