using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>How far a body is out of balance about the axis that it is meant to spin about.</summary>
/// <typeparam name="TFrame">The body's frame.</typeparam>
/// <remarks>
/// <para>Static imbalance: the centre of mass is off the axis. Dynamic imbalance: the axis is not parallel to a principal
/// axis. A free body with either does not spin about the intended axis but about a principal axis through its centre of
/// mass.</para>
/// <para>The body is taken as rigid. Spinning a body to measure or to prove its balance stores energy and can throw
/// parts: guards, speed limits and the rules of the place apply, and these figures replace none of them.</para>
/// <para>Immutable, so safe to share between threads. Compared by reference.</para>
/// </remarks>
public sealed class Balance<TFrame>
    where TFrame : struct, IFrame
{
    private readonly Vec _axis;
    private readonly Vec _u;
    private readonly Vec _v;

    // Across the axis, along u and v: Σ m r, and Σ m h r with heights h from the stated point.
    private readonly (double U, double V) _moment;
    private readonly (double U, double V) _momentByHeight;

    private Balance(MassProperties<TFrame> body, Position<TFrame> through, Direction<TFrame> axis)
    {
        Body = body;
        Through = through;
        Axis = axis;
        _axis = axis.Si;
        _u = Triad.InPlaneOf(_axis);
        _v = _axis.Cross(_u);
        Vec arm = (body.CentreOfMass - through).Si;
        double height = arm.Dot(_axis);
        double eu = arm.Dot(_u);
        double ev = arm.Dot(_v);

        // The tensor's elements are the negative integrals: ∫ h u dm about the centre of mass is -u·I n.
        Vec products = body.Inertia.Si * _axis;
        double pu = -products.Dot(_u);
        double pv = -products.Dot(_v);
        _moment = (body.SiMass * eu, body.SiMass * ev);
        _momentByHeight = ((_moment.U * height) + pu, (_moment.V * height) + pv);
        Eccentricity = new((eu * _u) + (ev * _v));
        Static = Imbalance.FromKilogramMeters(Math.Sqrt((_moment.U * _moment.U) + (_moment.V * _moment.V)));
        Dynamic = MassMomentOfInertia.FromKilogramSquareMeters(Math.Sqrt((pu * pu) + (pv * pv)));
    }

    /// <summary>The body.</summary>
    public MassProperties<TFrame> Body { get; }

    /// <summary>A point on the intended spin axis; heights of stations are measured from it.</summary>
    public Position<TFrame> Through { get; }

    /// <summary>The direction of the intended spin axis.</summary>
    public Direction<TFrame> Axis { get; }

    /// <summary>
    /// The bearing from which angles about the axis are measured: the projection, across the axis, of the frame axis farthest
    /// from it (of equally far ones the first). About the third axis it is the first.
    /// </summary>
    public Direction<TFrame> ZeroBearing => Direction<TFrame>.Of(_u.X, _u.Y, _u.Z);

    /// <summary>The shortest displacement from the axis to the centre of mass.</summary>
    public Vector<Length, TFrame> Eccentricity { get; }

    /// <summary>Static imbalance: mass times eccentricity.</summary>
    public Imbalance Static { get; }

    /// <summary>
    /// Dynamic (couple) imbalance: the size of the products of inertia that involve the spin axis, about the centre of mass.
    /// Times the square of the rate it is the torque with which the body, held to its axis, works on its bearings.
    /// </summary>
    public MassMomentOfInertia Dynamic { get; }

    /// <summary>The angle between the intended spin axis and the principal axis nearest to it: 0 when dynamically balanced.</summary>
    /// <remarks>Moments that are equal within 1e-12 of the largest leave their axes free, as <see cref="PrincipalAxes{TFrame}"/> states; the angle is then to the nearest axis that is principal.</remarks>
    public Angle PrincipalAxisTilt
    {
        get
        {
            PrincipalAxes<TFrame> principal = Body.Inertia.PrincipalAxes();
            double a = Acute(principal.SmallestAxis);
            double b = Acute(principal.IntermediateAxis);
            double c = Acute(principal.LargestAxis);
            return Angle.FromRadians((principal.SmallestTwoAreEqual, principal.LargestTwoAreEqual) switch
            {
                (true, true) => 0,
                (true, false) => Math.Min(c, (Math.PI / 2) - c),
                (false, true) => Math.Min(a, (Math.PI / 2) - a),
                _ => Math.Min(a, Math.Min(b, c)),
            });
        }
    }

    /// <summary>The balance of a body about an axis.</summary>
    /// <param name="body">The body.</param>
    /// <param name="through">A point on the intended spin axis.</param>
    /// <param name="axis">The direction of the intended spin axis.</param>
    /// <exception cref="ArgumentException">The body is <c>default</c>, no body at all; or the direction is, which points nowhere.</exception>
    public static Balance<TFrame> Of(MassProperties<TFrame> body, Position<TFrame> through, Direction<TFrame> axis)
    {
        Direction<TFrame>.Require(axis);
        return body.SiMass > 0
            ? new(body, through, axis)
            : throw new ArgumentException("body is default, which is no body at all; make it with MassProperties<TFrame>.Of or an assembly.", nameof(body));
    }

    /// <summary>
    /// Eccentricity times rate, the speed of the centre of mass about the axis: in mm/s it is the number of the balance
    /// quality grade G of ISO 21940-11 (1 to 6.3 for most machines).
    /// </summary>
    /// <param name="rate">The spin rate; its sign does not matter.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rate is not finite.</exception>
    /// <remarks>The standard is for rotors held in bearings, at their service speed. For a free body this is a reading, not a requirement.</remarks>
    public Speed QualityGrade(RotationalSpeed rate) =>
        Speed.FromMetersPerSecond(Eccentricity.SiMagnitude * Math.Abs(Finite.Require(rate.ToSi(), nameof(rate))));

    /// <summary>
    /// The masses that, added at two stations, put the centre of mass on the axis and make the axis principal, their own mass
    /// included. With masses w = m r across the axis, Σ w must cancel the static moment and Σ h w the moment by height: two
    /// vector equations for two vectors, linear and exact.
    /// </summary>
    /// <param name="first">The first station.</param>
    /// <param name="second">The second station, at another height.</param>
    /// <exception cref="ArgumentOutOfRangeException">A radius is not above zero, or a height is not finite.</exception>
    /// <exception cref="ArgumentException">The stations are at one height (within 1e-9 of it): no two masses there can cancel a couple.</exception>
    public BalanceCorrection<TFrame> CorrectAt(BalanceStation first, BalanceStation second)
    {
        double r1 = Checks.Positive(first.Radius.Meters, "first.Radius", "metres");
        double r2 = Checks.Positive(second.Radius.Meters, "second.Radius", "metres");
        double h1 = Finite.Require(first.Height.Meters, "first.Height");
        double h2 = Finite.Require(second.Height.Meters, "second.Height");
        double apart = h1 - h2;
        if (!(Math.Abs(apart) > 1e-9 * Math.Max(Math.Abs(h1), Math.Abs(h2))))
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"Both stations are at the height {h1} m; two masses at one height cannot cancel dynamic imbalance. Give stations at different heights along the spin axis."),
                nameof(second));
        }

        CorrectionMass<TFrame> one = MassAt(
            h1, r1, ((h2 * _moment.U) - _momentByHeight.U) / apart, ((h2 * _moment.V) - _momentByHeight.V) / apart);
        CorrectionMass<TFrame> two = MassAt(
            h2, r2, (_momentByHeight.U - (h1 * _moment.U)) / apart, (_momentByHeight.V - (h1 * _moment.V)) / apart);
        return new(one, two, Body + AsBody(one) + AsBody(two));
    }

    private static MassProperties<TFrame> AsBody(CorrectionMass<TFrame> mass) => new(mass.Mass.ToSi(), mass.At, default);

    private CorrectionMass<TFrame> MassAt(double height, double radius, double u, double v)
    {
        double size = Math.Sqrt((u * u) + (v * v));
        (double cos, double sin) = size > 0 ? (u / size, v / size) : (1, 0);
        Position<TFrame> at = Through + new Vector<Length, TFrame>((height * _axis) + (radius * ((cos * _u) + (sin * _v))));
        return new(Mass.FromKilograms(size / radius), at, Angle.FromRadians(Math.Atan2(sin, cos)));
    }

    private double Acute(Direction<TFrame> other)
    {
        double angle = Axis.AngleTo(other).Radians;
        return Math.Min(angle, Math.PI - angle);
    }
}
