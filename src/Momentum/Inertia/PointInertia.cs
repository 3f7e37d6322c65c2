using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>Inertia about a stated point, which is not taken to be the centre of mass, along the axes of one frame.</summary>
/// <typeparam name="TFrame">The frame along whose axes the elements are taken, and from whose origin the point is measured.</typeparam>
/// <remarks>
/// <para>The point and six SI numbers (kg·m²), 72 bytes; the off-diagonal elements are the tensor's own, −∫ x y dm. It
/// does not multiply an angular velocity and does not add to an <see cref="InertiaTensor{TFrame}"/>: that does not
/// compile. To use it in an equation of motion, state mass and centre of mass:
/// <see cref="MassProperties{TFrame}.Of(Mass, Position{TFrame}, PointInertia{TFrame})"/> moves it there.</para>
/// <para>Range: physical inertia, as for <see cref="InertiaTensor{TFrame}"/>. Equality is exact, of the point and the SI
/// numbers; compare computed ones with <see cref="EqualsWithin"/>. <c>default</c> is no inertia about the frame's origin.
/// Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct PointInertia<TFrame> :
    IEquatable<PointInertia<TFrame>>,
    IFormattable,
    IAdditionOperators<PointInertia<TFrame>, PointInertia<TFrame>, PointInertia<TFrame>>,
    IEqualityOperators<PointInertia<TFrame>, PointInertia<TFrame>, bool>
    where TFrame : struct, IFrame
{
    internal readonly Tensor Si;

    internal PointInertia(Position<TFrame> about, Tensor si)
    {
        About = about;
        Si = si;
    }

    /// <summary>The point that the inertia is about.</summary>
    public Position<TFrame> About { get; }

    /// <summary>Moment of inertia about the first axis through the point.</summary>
    public MassMomentOfInertia Xx => MassMomentOfInertia.FromKilogramSquareMeters(Si.Xx);

    /// <summary>Moment of inertia about the second axis through the point.</summary>
    public MassMomentOfInertia Yy => MassMomentOfInertia.FromKilogramSquareMeters(Si.Yy);

    /// <summary>Moment of inertia about the third axis through the point.</summary>
    public MassMomentOfInertia Zz => MassMomentOfInertia.FromKilogramSquareMeters(Si.Zz);

    /// <summary>Tensor element −∫ x y dm, with x and y from the point.</summary>
    public MassMomentOfInertia Xy => MassMomentOfInertia.FromKilogramSquareMeters(Si.Xy);

    /// <summary>Tensor element −∫ x z dm, with x and z from the point.</summary>
    public MassMomentOfInertia Xz => MassMomentOfInertia.FromKilogramSquareMeters(Si.Xz);

    /// <summary>Tensor element −∫ y z dm, with y and z from the point.</summary>
    public MassMomentOfInertia Yz => MassMomentOfInertia.FromKilogramSquareMeters(Si.Yz);

    /// <summary>From moments and products about a point.</summary>
    /// <param name="about">The point.</param>
    /// <param name="xx">Moment of inertia about the first axis through the point.</param>
    /// <param name="yy">Moment of inertia about the second axis through the point.</param>
    /// <param name="zz">Moment of inertia about the third axis through the point.</param>
    /// <param name="xy">Product of inertia of the first and second axes.</param>
    /// <param name="xz">Product of inertia of the first and third axes.</param>
    /// <param name="yz">Product of inertia of the second and third axes.</param>
    /// <param name="products">Which sign the three products have.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is NaN or infinite, or the convention is not one of the two.</exception>
    /// <exception cref="ArgumentException">No mass distribution has this inertia; the message names what breaks it and by how much.</exception>
    public static PointInertia<TFrame> Of(
        Position<TFrame> about,
        MassMomentOfInertia xx,
        MassMomentOfInertia yy,
        MassMomentOfInertia zz,
        MassMomentOfInertia xy,
        MassMomentOfInertia xz,
        MassMomentOfInertia yz,
        ProductSign products)
    {
        Tensor si = Checks.Elements(xx, yy, zz, xy, xz, yz, products);
        return PhysicalInertia.Refusal(si) is { } reason
            ? throw new ArgumentException($"The inertia about the point {about} is not physical: {reason}.")
            : new(about, si);
    }

    /// <summary>
    /// The inertia of a body nearest to elements about a point that were drawn within their tolerances and may be none, as
    /// <see cref="InertiaTensor{TFrame}.Nearest"/>.
    /// </summary>
    /// <param name="about">The point.</param>
    /// <param name="xx">Moment of inertia about the first axis through the point.</param>
    /// <param name="yy">Moment of inertia about the second axis through the point.</param>
    /// <param name="zz">Moment of inertia about the third axis through the point.</param>
    /// <param name="xy">Product of inertia of the first and second axes.</param>
    /// <param name="xz">Product of inertia of the first and third axes.</param>
    /// <param name="yz">Product of inertia of the second and third axes.</param>
    /// <param name="products">Which sign the three products have.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is NaN or infinite, or the convention is not one of the two.</exception>
    public static PointInertia<TFrame> Nearest(
        Position<TFrame> about,
        MassMomentOfInertia xx,
        MassMomentOfInertia yy,
        MassMomentOfInertia zz,
        MassMomentOfInertia xy,
        MassMomentOfInertia xz,
        MassMomentOfInertia yz,
        ProductSign products) =>
        new(about, PhysicalInertia.Nearest(Checks.Elements(xx, yy, zz, xy, xz, yz, products)));

    /// <summary>Moment of inertia about an axis through the point.</summary>
    /// <param name="axis">The direction of the axis.</param>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public MassMomentOfInertia AboutAxis(Direction<TFrame> axis) =>
        MassMomentOfInertia.FromKilogramSquareMeters(Checks.AboutAxis(Si, axis));

    /// <summary>The sum, of two bodies about the same point.</summary>
    /// <exception cref="ArgumentException">The two are about different points: move one first.</exception>
    public static PointInertia<TFrame> operator +(PointInertia<TFrame> left, PointInertia<TFrame> right) => left.About == right.About
        ? new(left.About, left.Si + right.Si)
        : throw new ArgumentException(
            $"The left inertia is about {left.About}, the right one about {right.About}; only inertias about the same point add. " +
            "Move one with MassProperties<TFrame>.InertiaAbout.",
            nameof(right));

    /// <summary>Whether the point and all six SI numbers are the same.</summary>
    public static bool operator ==(PointInertia<TFrame> left, PointInertia<TFrame> right) =>
        left.About == right.About && left.Si.Same(right.Si);

    /// <summary>Whether the point or any of the six SI numbers differs.</summary>
    public static bool operator !=(PointInertia<TFrame> left, PointInertia<TFrame> right) => !(left == right);

    /// <summary>Whether both are about exactly the same point and no element differs by more than <paramref name="tolerance"/>.</summary>
    /// <param name="other">The inertia to compare with.</param>
    /// <param name="tolerance">Largest difference of an element, zero or positive.</param>
    public bool EqualsWithin(PointInertia<TFrame> other, MassMomentOfInertia tolerance) =>
        About == other.About && (Si - other.Si).LargestElement <= tolerance.ToSi();

    /// <inheritdoc/>
    public bool Equals(PointInertia<TFrame> other) => About.Equals(other.About) && Si.EqualTo(other.Si);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is PointInertia<TFrame> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(About, Si.Hash());

    /// <summary>The elements in kg·m², the point and the frame, in the invariant culture.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The elements in a numeric format, unit, point and frame; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider)
    {
        formatProvider ??= CultureInfo.InvariantCulture;
        return $"({Si.Text(format, formatProvider)}) kg·m² about {About.ToString(format, formatProvider)}";
    }
}
