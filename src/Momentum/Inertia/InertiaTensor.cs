using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>The inertia tensor of a rigid body about its centre of mass, along the axes of one frame.</summary>
/// <typeparam name="TFrame">The frame along whose axes the elements are taken.</typeparam>
/// <remarks>
/// <para>Six SI numbers (kg·m²), 48 bytes. The off-diagonal elements are the tensor's own: xy is −∫ x y dm; see
/// <see cref="ProductSign"/>. It multiplies angular velocity into angular momentum and angular acceleration into torque.
/// Inertia about any other point is a <see cref="PointInertia{TFrame}"/>, which does neither, and does not add to this:
/// Euler's equation with the wrong reference point does not compile. Two tensors do not add either, because each is
/// about the centre of mass of its own body; add <see cref="MassProperties{TFrame}"/>.</para>
/// <para>Range: physical tensors, that is, no principal moment negative and none larger than the sum of the other two,
/// both within 1e-9 of the largest. So a lamina (one moment equal to the sum of the others) and a thin rod (one moment
/// zero) are allowed.</para>
/// <para>Equality is exact, of the SI numbers; compare computed tensors with <see cref="EqualsWithin"/>. <c>default</c>
/// is the inertia of a point mass, zero: <see cref="IsDefault"/> tells. Immutable, so safe to share between threads.</para>
/// </remarks>
public readonly struct InertiaTensor<TFrame> :
    IEquatable<InertiaTensor<TFrame>>,
    IFormattable,
    IMultiplyOperators<InertiaTensor<TFrame>, Vector<RotationalSpeed, TFrame>, Vector<AngularMomentum, TFrame>>,
    IMultiplyOperators<InertiaTensor<TFrame>, Vector<RotationalAcceleration, TFrame>, Vector<Torque, TFrame>>,
    IEqualityOperators<InertiaTensor<TFrame>, InertiaTensor<TFrame>, bool>
    where TFrame : struct, IFrame
{
    // Readable by the floors above, which compute in SI numbers.
    internal readonly Tensor Si;

    internal InertiaTensor(Tensor si) => Si = si;

    /// <summary>Moment of inertia about the first axis, ∫(y² + z²) dm.</summary>
    public MassMomentOfInertia Xx => MassMomentOfInertia.FromKilogramSquareMeters(Si.Xx);

    /// <summary>Moment of inertia about the second axis, ∫(x² + z²) dm.</summary>
    public MassMomentOfInertia Yy => MassMomentOfInertia.FromKilogramSquareMeters(Si.Yy);

    /// <summary>Moment of inertia about the third axis, ∫(x² + y²) dm.</summary>
    public MassMomentOfInertia Zz => MassMomentOfInertia.FromKilogramSquareMeters(Si.Zz);

    /// <summary>Tensor element −∫ x y dm.</summary>
    public MassMomentOfInertia Xy => MassMomentOfInertia.FromKilogramSquareMeters(Si.Xy);

    /// <summary>Tensor element −∫ x z dm.</summary>
    public MassMomentOfInertia Xz => MassMomentOfInertia.FromKilogramSquareMeters(Si.Xz);

    /// <summary>Tensor element −∫ y z dm.</summary>
    public MassMomentOfInertia Yz => MassMomentOfInertia.FromKilogramSquareMeters(Si.Yz);

    /// <summary>Whether this is <c>default</c>: no inertia at all.</summary>
    public bool IsDefault => this == default;

    /// <summary>From moments and products about the centre of mass.</summary>
    /// <param name="xx">Moment of inertia about the first axis.</param>
    /// <param name="yy">Moment of inertia about the second axis.</param>
    /// <param name="zz">Moment of inertia about the third axis.</param>
    /// <param name="xy">Product of inertia of the first and second axes.</param>
    /// <param name="xz">Product of inertia of the first and third axes.</param>
    /// <param name="yz">Product of inertia of the second and third axes.</param>
    /// <param name="products">Which sign the three products have.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is NaN or infinite, or the convention is not one of the two.</exception>
    /// <exception cref="ArgumentException">No mass distribution has this inertia; the message names what breaks it and by how much.</exception>
    public static InertiaTensor<TFrame> Of(
        MassMomentOfInertia xx,
        MassMomentOfInertia yy,
        MassMomentOfInertia zz,
        MassMomentOfInertia xy,
        MassMomentOfInertia xz,
        MassMomentOfInertia yz,
        ProductSign products) =>
        Checked(Checks.Elements(xx, yy, zz, xy, xz, yz, products));

    /// <summary>From the moments about the frame's axes, which are principal axes: the products are zero.</summary>
    /// <param name="xx">Moment of inertia about the first axis.</param>
    /// <param name="yy">Moment of inertia about the second axis.</param>
    /// <param name="zz">Moment of inertia about the third axis.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is NaN or infinite.</exception>
    /// <exception cref="ArgumentException">No mass distribution has this inertia; the message names what breaks it and by how much.</exception>
    public static InertiaTensor<TFrame> Diagonal(MassMomentOfInertia xx, MassMomentOfInertia yy, MassMomentOfInertia zz) =>
        Of(xx, yy, zz, MassMomentOfInertia.Zero, MassMomentOfInertia.Zero, MassMomentOfInertia.Zero, ProductSign.TensorElement);

    /// <summary>
    /// The inertia of a body nearest to elements that were drawn within their tolerances and may be none: where a limit of
    /// physics is passed the moments move together, as little as the limit asks for.
    /// </summary>
    /// <param name="xx">Moment of inertia about the first axis.</param>
    /// <param name="yy">Moment of inertia about the second axis.</param>
    /// <param name="zz">Moment of inertia about the third axis.</param>
    /// <param name="xy">Product of inertia of the first and second axes.</param>
    /// <param name="xz">Product of inertia of the first and third axes.</param>
    /// <param name="yz">Product of inertia of the second and third axes.</param>
    /// <param name="products">Which sign the three products have.</param>
    /// <remarks>
    /// Nearest by the second moments, ∫ r rᵀ dm: negative principal ones become zero, which leaves a lamina or a rod.
    /// Elements that a body can have are returned as they are.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A number is NaN or infinite, or the convention is not one of the two.</exception>
    /// <exception cref="ArgumentException">Nothing is left: no principal second moment is positive.</exception>
    public static InertiaTensor<TFrame> Nearest(
        MassMomentOfInertia xx,
        MassMomentOfInertia yy,
        MassMomentOfInertia zz,
        MassMomentOfInertia xy,
        MassMomentOfInertia xz,
        MassMomentOfInertia yz,
        ProductSign products) =>
        Checked(PhysicalInertia.Nearest(Checks.Elements(xx, yy, zz, xy, xz, yz, products)));

    /// <summary>Writes the matrix, nine numbers in kg·m² row by row: the way out of the type system.</summary>
    /// <param name="destination">At least nine numbers long.</param>
    /// <exception cref="ArgumentException">The destination is shorter than nine.</exception>
    public void CopySiTo(Span<double> destination)
    {
        if (destination.Length < 9)
        {
            throw new ArgumentException($"destination holds {destination.Length} numbers; a tensor needs room for 9.", nameof(destination));
        }

        destination[0] = Si.Xx;
        destination[4] = Si.Yy;
        destination[8] = Si.Zz;
        destination[1] = destination[3] = Si.Xy;
        destination[2] = destination[6] = Si.Xz;
        destination[5] = destination[7] = Si.Yz;
    }

    /// <summary>Moment of inertia about an axis through the centre of mass.</summary>
    /// <param name="axis">The direction of the axis.</param>
    /// <exception cref="ArgumentException">The direction is <c>default</c>, which points nowhere.</exception>
    public MassMomentOfInertia AboutAxis(Direction<TFrame> axis) =>
        MassMomentOfInertia.FromKilogramSquareMeters(Checks.AboutAxis(Si, axis));

    /// <summary>The same tensor along the axes of another frame.</summary>
    /// <typeparam name="TTo">The other frame.</typeparam>
    /// <param name="rotation">The rotation from this frame to the other.</param>
    public InertiaTensor<TTo> ExpressedIn<TTo>(Rotation<TFrame, TTo> rotation)
        where TTo : struct, IFrame
    {
        Span<double> cosines = stackalloc double[9];
        rotation.CopyMatrixTo(cosines);
        return new(Si.Turned(cosines));
    }

    /// <summary>Principal moments, ascending, and principal axes.</summary>
    /// <exception cref="ComputationRefusedException">The tensor is <c>default</c>: it has no inertia and so no axes.</exception>
    public PrincipalAxes<TFrame> PrincipalAxes() => PrincipalAxes<TFrame>.Of(this);

    /// <summary>Kinetic energy of rotation about the centre of mass, ½ ω·(I ω).</summary>
    /// <param name="rate">Angular velocity.</param>
    public Energy KineticEnergy(Vector<RotationalSpeed, TFrame> rate) => Energy.FromJoules(0.5 * rate.Si.Dot(Si * rate.Si));

    /// <summary>The angular velocity that has this angular momentum about the centre of mass.</summary>
    /// <param name="momentum">Angular momentum about the centre of mass.</param>
    /// <exception cref="ComputationRefusedException">The tensor is singular: a rod's, a point's, or so near that fewer than three digits would be left.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector<RotationalSpeed, TFrame> Solve(Vector<AngularMomentum, TFrame> momentum) => new(SolveSi(momentum.Si));

    /// <summary>The angular acceleration that this torque alone gives a body that does not turn (without the gyroscopic term).</summary>
    /// <param name="torque">Torque about the centre of mass.</param>
    /// <exception cref="ComputationRefusedException">The tensor is singular: a rod's, a point's, or so near that fewer than three digits would be left.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector<RotationalAcceleration, TFrame> Solve(Vector<Torque, TFrame> torque) => new(SolveSi(torque.Si));

    /// <summary>Angular momentum about the centre of mass.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<AngularMomentum, TFrame> operator *(InertiaTensor<TFrame> left, Vector<RotationalSpeed, TFrame> right) => new(left.Si * right.Si);

    /// <summary>The torque about the centre of mass that gives this angular acceleration, without the gyroscopic term.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector<Torque, TFrame> operator *(InertiaTensor<TFrame> left, Vector<RotationalAcceleration, TFrame> right) => new(left.Si * right.Si);

    /// <summary>Whether all six SI numbers are the same.</summary>
    public static bool operator ==(InertiaTensor<TFrame> left, InertiaTensor<TFrame> right) => left.Si.Same(right.Si);

    /// <summary>Whether any of the six SI numbers differs.</summary>
    public static bool operator !=(InertiaTensor<TFrame> left, InertiaTensor<TFrame> right) => !(left == right);

    /// <summary>Whether no element differs by more than <paramref name="tolerance"/>.</summary>
    /// <param name="other">The tensor to compare with.</param>
    /// <param name="tolerance">Largest difference of an element, zero or positive.</param>
    public bool EqualsWithin(InertiaTensor<TFrame> other, MassMomentOfInertia tolerance) =>
        (Si - other.Si).LargestElement <= tolerance.ToSi();

    /// <inheritdoc/>
    public bool Equals(InertiaTensor<TFrame> other) => Si.EqualTo(other.Si);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is InertiaTensor<TFrame> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Si.Hash();

    /// <summary>The elements in kg·m² and the frame, in the invariant culture.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>The elements in a numeric format, unit and frame; without a provider, in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        $"({Si.Text(format, formatProvider ?? CultureInfo.InvariantCulture)}) kg·m² about the centre of mass [{typeof(TFrame).Name}]";

    private static InertiaTensor<TFrame> Checked(Tensor si) => PhysicalInertia.Refusal(si) is { } reason
        ? throw new ArgumentException($"The inertia about the centre of mass is not physical: {reason}.")
        : new(si);

    // L D Lᵀ without pivoting, which is stable for a positive definite matrix: the residual is of the order of rounding.
    private Vec SolveSi(Vec v)
    {
        TensorFactors factors = new(Si);

        // In a physical tensor the two larger moments are of one size, so the determinant measures the smallest moment against
        // them: det / trace³ is between 1/27 and 1/8 of smallest / largest.
        if (!(factors.DeterminantOver(Si.Xx + Si.Yy + Si.Zz) > 1e-14))
        {
            ThrowSingular();
        }

        return factors.Solve(v);
    }

    private void ThrowSingular() => throw new ComputationRefusedException(
        $"The inertia tensor {this} is singular or too near to it: its smallest principal moment is below about 1e-13 of the " +
        "largest, as a thin rod's or a point's, and the rate about that axis is undetermined. Give the body its thickness.");
}
