using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>Mass, centre of mass and inertia about it, of one rigid body, in one frame.</summary>
/// <typeparam name="TFrame">The frame from whose origin the centre is measured and along whose axes the inertia is taken.</typeparam>
/// <remarks>
/// <para>Range: mass above zero, and physical inertia as <see cref="InertiaTensor{TFrame}"/> requires (a rod or a lamina
/// is allowed, a point is not).</para>
/// <para>Equality is exact, of the SI numbers; compare computed ones part by part with each part's <c>EqualsWithin</c>.
/// <c>default</c> is no body at all: mass zero. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct MassProperties<TFrame> :
    IEquatable<MassProperties<TFrame>>,
    IFormattable,
    IAdditionOperators<MassProperties<TFrame>, MassProperties<TFrame>, MassProperties<TFrame>>,
    IEqualityOperators<MassProperties<TFrame>, MassProperties<TFrame>, bool>
    where TFrame : struct, IFrame
{
    internal readonly double SiMass;

    internal MassProperties(double mass, Position<TFrame> centreOfMass, Tensor inertia)
    {
        SiMass = mass;
        CentreOfMass = centreOfMass;
        Inertia = new(inertia);
    }

    /// <summary>The mass.</summary>
    public Mass Mass => Mass.FromKilograms(SiMass);

    /// <summary>The centre of mass.</summary>
    public Position<TFrame> CentreOfMass { get; }

    /// <summary>The inertia about the centre of mass.</summary>
    public InertiaTensor<TFrame> Inertia { get; }

    /// <summary>From inertia about the centre of mass.</summary>
    /// <param name="mass">The mass, above zero.</param>
    /// <param name="centreOfMass">The centre of mass.</param>
    /// <param name="inertia">The inertia about the centre of mass.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not a finite number above zero, or the centre of mass is not finite.</exception>
    /// <exception cref="ArgumentException">The inertia is <c>default</c>: a body has inertia, and a bare point mass is not a body.</exception>
    public static MassProperties<TFrame> Of(Mass mass, Position<TFrame> centreOfMass, InertiaTensor<TFrame> inertia)
    {
        double kilograms = Checks.Positive(mass.ToSi(), nameof(mass), "kilograms");
        return inertia.IsDefault
            ? throw new ArgumentException("inertia is default, which is zero: a body has inertia about its centre of mass. State it, or give a point mass as a part of an assembly.", nameof(inertia))
            : new(kilograms, Checks.Finite(centreOfMass), inertia.Si);
    }

    /// <summary>From inertia about a point: less the inertia that the mass at its centre has about that point (parallel axes).</summary>
    /// <param name="mass">The mass, above zero.</param>
    /// <param name="centreOfMass">The centre of mass.</param>
    /// <param name="inertia">The inertia about a point.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not a finite number above zero, or the centre of mass is not finite.</exception>
    /// <exception cref="ArgumentException">What remains about the centre of mass is not physical: the inertia may be about another point than stated.</exception>
    public static MassProperties<TFrame> Of(Mass mass, Position<TFrame> centreOfMass, PointInertia<TFrame> inertia)
    {
        double kilograms = Checks.Positive(mass.ToSi(), nameof(mass), "kilograms");
        Tensor transfer = Tensor.OfPoint(kilograms, (Checks.Finite(centreOfMass) - inertia.About).Si);
        Tensor about = inertia.Si - transfer;

        // The difference of two large numbers carries their rounding: a few units in the last place of the larger.
        double noise = 4 * Math.ScaleB(1, -52) * Math.Max(inertia.Si.LargestElement, transfer.LargestElement);
        return PhysicalInertia.Refusal(about, noise) is { } reason
            ? throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Moving the inertia from {inertia.About} to the centre of mass {centreOfMass} with {kilograms:G9} kg leaves something not physical: {reason}. Or the inertia is not about the stated point: it may be about the centre of mass already"),
                nameof(inertia))
            : new(kilograms, centreOfMass, about);
    }

    /// <summary>
    /// The body nearest to a mass, a centre and an inertia about a point that were each drawn within their tolerances and may
    /// belong to none together, as <see cref="InertiaTensor{TFrame}.Nearest"/>.
    /// </summary>
    /// <param name="mass">The mass, above zero.</param>
    /// <param name="centreOfMass">The centre of mass.</param>
    /// <param name="inertia">The inertia about a point.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not a finite number above zero.</exception>
    /// <exception cref="ArgumentException">Nothing is left about the centre of mass: the mass at its place has all of the inertia.</exception>
    public static MassProperties<TFrame> Nearest(Mass mass, Position<TFrame> centreOfMass, PointInertia<TFrame> inertia)
    {
        double kilograms = Checks.Positive(mass.ToSi(), nameof(mass), "kilograms");
        Tensor about = PhysicalInertia.Nearest(inertia.Si - Tensor.OfPoint(kilograms, (Checks.Finite(centreOfMass) - inertia.About).Si));
        return PhysicalInertia.Refusal(about) is { } reason
            ? throw new ArgumentException($"No body with its centre of mass at {centreOfMass} is near to this inertia: {reason}.", nameof(inertia))
            : new(kilograms, centreOfMass, about);
    }

    /// <summary>The inertia about a point: plus the inertia that the mass at its centre has about that point (parallel axes).</summary>
    /// <param name="point">The point.</param>
    public PointInertia<TFrame> InertiaAbout(Position<TFrame> point) =>
        new(Checks.Finite(point), Inertia.Si + Tensor.OfPoint(SiMass, (CentreOfMass - point).Si));

    /// <summary>The same body in a frame with other axes and the same origin.</summary>
    /// <typeparam name="TTo">The other frame.</typeparam>
    /// <param name="rotation">The rotation from this frame to the other.</param>
    public MassProperties<TTo> ExpressedIn<TTo>(Rotation<TFrame, TTo> rotation)
        where TTo : struct, IFrame =>
        ExpressedIn(rotation, Position<TTo>.Origin);

    /// <summary>The same body in a frame with other axes and another origin.</summary>
    /// <typeparam name="TTo">The other frame.</typeparam>
    /// <param name="rotation">The rotation from this frame to the other.</param>
    /// <param name="origin">Where this frame's origin is in the other.</param>
    public MassProperties<TTo> ExpressedIn<TTo>(Rotation<TFrame, TTo> rotation, Position<TTo> origin)
        where TTo : struct, IFrame =>
        new(SiMass, origin + rotation.Apply(CentreOfMass.FromOrigin), Inertia.ExpressedIn(rotation).Si);

    /// <summary>The two bodies rigidly joined. One may be <c>default</c>, no body, so that a sum can begin with it.</summary>
    /// <exception cref="ArgumentException">Both are <c>default</c>: their sum is no body either.</exception>
    /// <exception cref="ComputationRefusedException">The sum is more than a number holds.</exception>
    public static MassProperties<TFrame> operator +(MassProperties<TFrame> left, MassProperties<TFrame> right)
    {
        double mass = left.SiMass + right.SiMass;
        if (mass == 0)
        {
            throw new ArgumentException("Both sides of the sum are default, no body; make a body with MassProperties<TFrame>.Of, or by an assembly.");
        }

        // About the common centre directly, through the reduced mass: nothing large is added and taken away again,
        // however far from the origin the two are.
        double share = right.SiMass / mass;
        Vector<Length, TFrame> between = right.CentreOfMass - left.CentreOfMass;
        Position<TFrame> centre = left.CentreOfMass + (between * share);
        Tensor inertia = left.Inertia.Si + right.Inertia.Si + Tensor.OfPoint(left.SiMass * share, between.Si);
        return double.IsFinite(mass) && double.IsFinite(centre.FromOrigin.SiMagnitude) && double.IsFinite(inertia.LargestElement)
            ? new(mass, centre, inertia)
            : throw new ComputationRefusedException("The mass, centre of mass or inertia of the two bodies together is more than a double precision number holds; check their units.");
    }

    /// <summary>Whether mass, centre of mass and inertia are the same SI numbers.</summary>
    public static bool operator ==(MassProperties<TFrame> left, MassProperties<TFrame> right) =>
        left.SiMass == right.SiMass && left.CentreOfMass == right.CentreOfMass && left.Inertia == right.Inertia;

    /// <summary>Whether mass, centre of mass or inertia differs.</summary>
    public static bool operator !=(MassProperties<TFrame> left, MassProperties<TFrame> right) => !(left == right);

    /// <inheritdoc/>
    public bool Equals(MassProperties<TFrame> other) =>
        SiMass.Equals(other.SiMass) && CentreOfMass.Equals(other.CentreOfMass) && Inertia.Equals(other.Inertia);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is MassProperties<TFrame> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(SiMass, CentreOfMass, Inertia);

    /// <summary>Mass, centre and inertia in SI units, in the invariant culture.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>Mass, centre and inertia in a numeric format; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider)
    {
        formatProvider ??= CultureInfo.InvariantCulture;
        return $"{SiMass.ToString(format, formatProvider)} kg at {CentreOfMass.ToString(format, formatProvider)}, " +
            $"inertia {Inertia.ToString(format, formatProvider)}";
    }
}
