using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>
/// The rotation of a rigid body on which no torque acts, in closed form: the state at any time costs the same, be it after
/// a second or after a million turns.
/// </summary>
/// <typeparam name="TBody">The body's frame.</typeparam>
/// <remarks>
/// <para>Any inertia with positive moments: asymmetric, symmetric, spherical; any initial state: on and near the separatrix
/// too. Rates by Jacobi's elliptic functions (L. D. Landau, E. M. Lifshitz, Mechanics, section 37; from memory, not read),
/// precession by elliptic integrals of the third kind. Angular momentum and energy are constants, not results.</para>
/// <para>Accuracy: the inertia and the initial state are taken as exact, and what the time multiplies is computed with 32
/// digits, so the error does not grow with time: for bodies whose moments are not extreme, rates are true to 1e-14 of the
/// largest rate and attitudes to about 2e-14 rad after any number of turns that is allowed (1e15 rad). What the input
/// leaves open does grow: a relative change e of a rate or a moment moves the phase by about 2π e a turn, so that an input
/// rounded to a double, e = 1.1e-16, is itself worth 7e-10 rad after a million turns; near the separatrix it is worth
/// more, by a factor exp(growth rate · time) at each passage of the intermediate axis.</para>
/// <para>Immutable, so safe to share between threads; <see cref="At"/> allocates nothing.</para>
/// </remarks>
public sealed class TorqueFreeMotion<TBody>
    where TBody : struct, IFrame
{
    private readonly FreeRotation _rotation;

    private TorqueFreeMotion(FreeRotation rotation, Vector<AngularMomentum, Inertial> angularMomentum)
    {
        _rotation = rotation;
        AngularMomentum = angularMomentum;
    }

    /// <summary>The angular momentum about the centre of mass along inertial axes: constant.</summary>
    public Vector<AngularMomentum, Inertial> AngularMomentum { get; }

    /// <summary>The kinetic energy of the rotation: constant.</summary>
    public Energy KineticEnergy => Energy.FromJoules(_rotation.Energy);

    /// <summary>
    /// The time after which the rates in the body repeat, in seconds; <see langword="null"/> if they never change, if the body
    /// is exactly on the separatrix and never returns, or if that takes longer than a number can hold.
    /// </summary>
    public Duration? RatePeriod => double.IsFinite(_rotation.RatePeriod) ? Duration.FromSeconds(_rotation.RatePeriod) : null;

    /// <summary>
    /// The mean rate at which the body's axis goes round the angular momentum; for a symmetric body the rate of precession
    /// h/A with A its transverse moment. For a pure spin about the axis of the greatest or the least moment it is the limit for
    /// a small nutation; for a steady rotation about another axis its speed.
    /// </summary>
    public RotationalSpeed MeanPrecessionRate => RotationalSpeed.FromRadiansPerSecond(_rotation.MeanPrecession);

    /// <summary>The motion that starts with a rate and an attitude at time zero.</summary>
    /// <param name="inertia">Inertia about the centre of mass, along the body's axes; every principal moment above zero.</param>
    /// <param name="rate">Angular velocity at time zero, along the body's axes; may be zero.</param>
    /// <param name="attitude">Rotation from the body's axes to inertial axes at time zero.</param>
    /// <exception cref="ArgumentException">A rate is not finite; or a principal moment is zero: how a thin rod turns about its own axis cannot be told.</exception>
    /// <exception cref="ComputationRefusedException">
    /// Moments or rates are so large, or so far apart, that the motion cannot be told from them.
    /// </exception>
    public static TorqueFreeMotion<TBody> From(
        InertiaTensor<TBody> inertia, Vector<RotationalSpeed, TBody> rate, Rotation<TBody, Inertial> attitude)
    {
        FreeRotation rotation = new(inertia.Si, rate.Si, attitude.Bare);
        return new TorqueFreeMotion<TBody>(rotation, attitude.Apply(inertia * rate));
    }

    /// <summary>The largest angle, over all time, between the angular momentum and an axis of the body.</summary>
    /// <param name="axis">The axis; its nearer end counts, so that the angle is from 0° to 90°.</param>
    /// <exception cref="ArgumentException">The axis is <c>default</c>.</exception>
    public Angle LargestNutation(Direction<TBody> axis)
    {
        _rotation.Extremes(Checked(axis), out double nutation, out _, out _);
        return Angle.FromRadians(nutation);
    }

    /// <summary>The largest rate across an axis of the body over all time.</summary>
    /// <param name="axis">The axis.</param>
    /// <exception cref="ArgumentException">The axis is <c>default</c>.</exception>
    public RotationalSpeed LargestRateAcross(Direction<TBody> axis)
    {
        _rotation.Extremes(Checked(axis), out _, out double across, out _);
        return RotationalSpeed.FromRadiansPerSecond(across);
    }

    /// <summary>The largest rate about an axis of the body over all time, without its sign.</summary>
    /// <param name="axis">The axis.</param>
    /// <exception cref="ArgumentException">The axis is <c>default</c>.</exception>
    public RotationalSpeed LargestRateAlong(Direction<TBody> axis)
    {
        _rotation.Extremes(Checked(axis), out _, out _, out double along);
        return RotationalSpeed.FromRadiansPerSecond(along);
    }

    /// <summary>Rate and attitude at a time.</summary>
    /// <param name="time">Time since the initial state; may be negative.</param>
    /// <exception cref="ComputationRefusedException">The time is not finite, or so long, beyond 1e15 rad, that the angle is lost.</exception>
    public RotationState<TBody> At(Duration time)
    {
        _rotation.At(time.Seconds, out Vec rate, out Quaternion attitude);
        return new RotationState<TBody>(
            new Vector<RotationalSpeed, TBody>(rate),
            Rotation<TBody, Inertial>.Unchecked(attitude));
    }

    private static Vec Checked(Direction<TBody> axis)
    {
        Direction<TBody>.Require(axis);
        return axis.Si;
    }
}
