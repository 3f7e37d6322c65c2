using Momentum.Frames;
using Momentum.Numerics;

namespace Momentum.Motion;

/// <summary>
/// Torque-free rotation of a rigid body in closed form, in SI numbers: <see cref="TorqueFreeMotion{TFrame}"/> without types.
/// </summary>
/// <remarks>
/// <para>
/// Rates: L. D. Landau, E. M. Lifshitz, Mechanics, section 37 (from memory, not read; the tests check it against
/// independent computations). Axes 1, 2, 3 below are principal, renamed and turned so that the momentum circles about the
/// third and the first and third rates are not negative at the start. With h the momentum and T the kinetic energy
///   w1 = A1 cn u, w2 = A2 sn u, w3 = A3 dn u, u = u0 + s t.
/// </para>
/// <para>
/// Attitude: precession p, nutation and spin about the axes 3, 1, 3, with the momentum along the third inertial axis. The
/// rate of p is h/I3 + h (I3 - I1)/(I1 I3) / (1 + v sn² u) with v = I3 (I2 - I1)/(I1 (I3 - I2)). Its integral is an
/// elliptic integral P of the third kind with negative parameter -v; changed to the positive one N = (k² + v)/(1 + v)
/// (Abramowitz and Stegun, 17.7.15, from memory, not read) all terms have one sign, and the factor before them
/// turns out to be 1 (own derivation):
///   p = (h/I3 + s k²/m) t + Q P(N; u) + atan(m sn u cn u / dn u), Q &lt; 1.
/// P grows by the same amount in every half period of the rates. No term is large but the first.
/// </para>
/// <para>
/// What the time multiplies is computed in twice the digits, with the input taken as exact. So a long time costs no
/// accuracy beyond what the input itself leaves open.
/// </para>
/// </remarks>
internal sealed partial class FreeRotation
{
    // Below this share of the largest, a rate is not felt within any time that can be stated; its square would underflow.
    private const double NegligibleRate = 1e-100;

    // A smaller share of the largest moment is rounding, not a moment.
    private const double ThinRod = 1e-14;

    // Moments of a symmetric body that was given along turned axes differ by the rounding of the work in twice the digits.
    private const double EqualMoments = 1e-28;

    // Beyond this many radians even twice the digits leave no good angle.
    private const double LargestAngle = 1e15;

    private readonly bool _steady;
    private readonly bool _separatrix;

    // The rates are scaled by a power of two to about 1, and times with them: no square over- or underflows.
    private readonly double _rateScale;

    // Steady rotation.
    private readonly DoubleDouble _speed;
    private readonly Vec _steadyRate;
    private readonly Vec _steadyAxis;
    private readonly Quaternion _attitude;

    // Any other: amplitudes of rates and momentum along the renamed principal axes, and their rows in the body's frame.
    private readonly Vec _axis1;
    private readonly Vec _axis2;
    private readonly Vec _axis3;
    private readonly Vec _rateAmplitude;
    private readonly Vec _momentumAmplitude;
    private readonly double _spinCosine;
    private readonly double _spinSine;
    private readonly DoubleDouble _phaseRate;
    private readonly DoubleDouble _quarter;
    private readonly DoubleDouble _uniformRate;
    private readonly DoubleDouble _turnPerHalfPeriod;
    private readonly double _phaseAtStart;
    private readonly double _complement;
    private readonly double _thirdKindFactor;
    private readonly double _thirdKindParameter;
    private readonly double _thirdKindComplement;
    private readonly double _tangentFactor;
    private readonly DoubleDouble _turnAtStart;
    private readonly Quaternion _toRenamed;
    private readonly Quaternion _momentumFrame;

    /// <summary>Prepares the motion.</summary>
    /// <param name="inertia">About the centre of mass in body axes, kg·m²; positive definite.</param>
    /// <param name="rate">Angular velocity in body axes at time 0, rad/s.</param>
    /// <param name="attitude">Rotation from body to inertial axes at time 0.</param>
    /// <exception cref="ArgumentException">A principal moment is zero, or a rate is not finite.</exception>
    /// <exception cref="ComputationRefusedException">Moments or rates are too far apart, or too large.</exception>
    public FreeRotation(Tensor inertia, Vec rate, Quaternion attitude)
    {
        _attitude = attitude.Normalised();
        double largest = rate.LargestMagnitude;
        if (!double.IsFinite(largest))
        {
            throw new ArgumentOutOfRangeException(nameof(rate), rate, FormattableString.Invariant($"rate is ({rate.X}, {rate.Y}, {rate.Z}) rad/s; its components must be finite numbers. A division by zero or an overflow before this is the usual cause."));
        }

        _rateScale = largest > 0.0 ? PowerOfTwo(largest) : 1.0;
        double largestMoment = Math.Max(inertia.Xx, Math.Max(inertia.Yy, inertia.Zz));
        double inertiaScale = largestMoment > 0.0 ? PowerOfTwo(largestMoment) : 1.0;
        Vec scaled = rate / _rateScale;
        ExactPrincipal principal = new(inertia / inertiaScale);
        DoubleDouble w1 = Felt(principal.Along(0, scaled));
        DoubleDouble w2 = Felt(principal.Along(1, scaled));
        DoubleDouble w3 = Felt(principal.Along(2, scaled));
        DoubleDouble i1 = principal.Moment(0);
        DoubleDouble i2 = principal.Moment(1);
        DoubleDouble i3 = principal.Moment(2);
        if (!(i1.High > ThinRod * i3.High))
        {
            throw new ArgumentException(FormattableString.Invariant($"inertia has the principal moments {i1.High * inertiaScale:G9}, {i2.High * inertiaScale:G9} and {i3.High * inertiaScale:G9} kg·m²: how a body without inertia about an axis (a point, a thin rod) turns about it cannot be told. Give the body its thickness."), nameof(inertia));
        }

        double closeness = EqualMoments * i3.High;
        if ((i2 - i1).High <= closeness)
        {
            i1 = i2;
        }

        if ((i3 - i2).High <= closeness)
        {
            i1 = i1 == i2 ? i3 : i1;
            i2 = i3;
        }

        DoubleDouble h = DoubleDouble.Sqrt(Square(i1 * w1) + Square(i2 * w2) + Square(i3 * w3));
        AngularMomentum = (double)h * inertiaScale * _rateScale;
        Energy = 0.5 * (double)((i1 * w1 * w1) + (i2 * w2 * w2) + (i3 * w3 * w3)) * inertiaScale * _rateScale * _rateScale;

        // h² - 2 T I2, whose sign says which axis the momentum circles about; as a product, which keeps its digits.
        DoubleDouble outer = DoubleDouble.Sqrt(i3 * (i3 - i2)) * w3;
        DoubleDouble inner = DoubleDouble.Sqrt(i1 * (i2 - i1)) * w1;
        DoubleDouble excess = (outer - inner) * (outer + inner);
        _steady = outer.High == 0.0 && inner.High == 0.0;
        if (_steady)
        {
            _steadyRate = rate;
            _speed = DoubleDouble.Sqrt(Square(w1) + Square(w2) + Square(w3));
            double size = scaled.Length;
            _steadyAxis = size > 0.0 ? scaled * (1.0 / size) : default;
            MeanPrecession = (double)_speed * _rateScale;
            RatePeriod = double.PositiveInfinity;
            Require(double.IsFinite(AngularMomentum) && double.IsFinite(Energy) && double.IsFinite(MeanPrecession));
            return;
        }

        (_axis1, _axis2, _axis3) = (principal.Axis(0), principal.Axis(1), principal.Axis(2));
        if (excess.High < 0.0)
        {
            // About the axis of least inertia: rename it to be the third; 3, 2, -1 is right-handed.
            (i1, i3) = (i3, i1);
            (w1, w3) = (w3, -w1);
            (_axis1, _axis3) = (_axis3, -_axis1);
        }

        if (w3.High < 0.0)
        {
            (w1, w3) = (-w1, -w3);
            (_axis1, _axis3) = (-_axis1, -_axis3);
        }

        if (w1.High < 0.0)
        {
            (w1, w2) = (-w1, -w2);
            (_axis1, _axis2) = (-_axis1, -_axis2);
        }

        // The three differences have one sign, that of i3 - i1. a = |2 T I3 - h²| and b = |h² - 2 T I1| as sums of positive terms.
        DoubleDouble d31 = DoubleDouble.Abs(i3 - i1);
        DoubleDouble d32 = DoubleDouble.Abs(i3 - i2);
        DoubleDouble d21 = DoubleDouble.Abs(i2 - i1);
        DoubleDouble a = (i1 * d31 * w1 * w1) + (i2 * d32 * w2 * w2);
        DoubleDouble b = (i2 * d21 * w2 * w2) + (i3 * d31 * w3 * w3);
        _rateAmplitude = new Vec(Root(a / (i1 * d31)), Root(a / (i2 * d32)), Root(b / (i3 * d31)));
        _momentumAmplitude = new Vec(
            (double)i1 * _rateAmplitude.X, (double)i2 * _rateAmplitude.Y, (double)i3 * _rateAmplitude.Z);

        // Momentum across the third axis, without the amplitude that both components share and that may be 0.
        _spinCosine = Root(i1 * d32);
        _spinSine = Root(i2 * d31);

        DoubleDouble one = 1.0;
        DoubleDouble complement = DoubleDouble.Sqrt(d31 * DoubleDouble.Abs(excess) / (d32 * b));
        DoubleDouble v = i3 * d21 / (i1 * d32);
        DoubleDouble kappa = i1 * a / (i3 * b);
        DoubleDouble speed = DoubleDouble.Sqrt(d32 * b / (i1 * i2 * i3));
        _phaseRate = i3 > i1 ? speed : -speed;
        _complement = (double)complement;
        _separatrix = _complement == 0.0;

        // With κ = k²/v: m = v sqrt((1 + κ)/(1 + v)), k²/m = κ sqrt((1 + v)/(1 + κ)), Q = k'²/sqrt((1 + v)(1 + κ)).
        DoubleDouble linear = kappa * DoubleDouble.Sqrt((one + v) / (one + kappa));
        DoubleDouble third = complement * complement / DoubleDouble.Sqrt((one + v) * (one + kappa));
        _uniformRate = (h / i3) + (linear * _phaseRate);
        _thirdKindFactor = (double)third;
        _thirdKindParameter = (double)(v * (one + kappa) / (one + v));
        _thirdKindComplement = (double)(complement * complement / (one + v));
        _tangentFactor = (double)(v * DoubleDouble.Sqrt((one + kappa) / (one + v)));
        if (_separatrix)
        {
            // No period, and Q = 0.
            RatePeriod = double.PositiveInfinity;
            MeanPrecession = (double)_uniformRate * _rateScale;
        }
        else
        {
            DoubleDouble p = complement * complement / (one + v);
            _quarter = Elliptic.Complete(complement, 1.0, 1.0, 1.0);
            DoubleDouble turnPerQuarter = Elliptic.Complete(complement, p, third, third);
            _turnPerHalfPeriod = turnPerQuarter + turnPerQuarter;
            MeanPrecession = (double)(_uniformRate + (_phaseRate * turnPerQuarter / _quarter)) * _rateScale;
            RatePeriod = a.High > 0.0 ? 4.0 * (double)_quarter / ((double)speed * _rateScale) : double.PositiveInfinity;
        }

        _phaseAtStart = PhaseOf((double)w1 * Root(i1 * d31), (double)w2 * Root(i2 * d32));
        Phase start = PhaseAt(_phaseAtStart);
        _turnAtStart = TurnOf(start);
        _toRenamed = Quaternion.FromRows(_axis1, _axis2, _axis3).Normalised();
        _momentumFrame = _attitude * _toRenamed.Conjugate() * EulerRotation(0.0, start).Conjugate();
        Require(
            double.IsFinite(AngularMomentum) && double.IsFinite(Energy) && double.IsFinite(MeanPrecession) && !double.IsNaN(RatePeriod) &&
            double.IsFinite(_phaseAtStart) && double.IsFinite(_momentumFrame.SquaredLength) && double.IsFinite(_turnAtStart.High));
    }

    /// <summary>Magnitude of the angular momentum, N·m·s.</summary>
    public double AngularMomentum { get; }

    /// <summary>Kinetic energy, J.</summary>
    public double Energy { get; }

    /// <summary>Period of the rates in the body, s; infinite if they are steady, or on the separatrix.</summary>
    public double RatePeriod { get; }

    /// <summary>Mean rate of precession about the momentum, rad/s.</summary>
    public double MeanPrecession { get; }

    /// <summary>Rate and attitude at a time.</summary>
    /// <param name="time">Time since the initial state, s; may be negative.</param>
    /// <param name="rate">Angular velocity in body axes, rad/s.</param>
    /// <param name="attitude">Rotation from body to inertial axes, of unit length.</param>
    /// <exception cref="ComputationRefusedException">The time is not finite or so long that the angle is lost.</exception>
    public void At(double time, out Vec rate, out Quaternion attitude)
    {
        DoubleDouble scaledTime = time * _rateScale;
        double fastest = _steady ? _speed.High : Math.Max(Math.Abs(_phaseRate.High), Math.Abs(_uniformRate.High));
        if (!(Math.Abs(scaledTime.High) * fastest <= LargestAngle))
        {
            throw new ComputationRefusedException(FormattableString.Invariant($"After {time:R} s the body has turned through more than {LargestAngle:G1} rad: the angle cannot be told from the numbers any more. Ask for an earlier time."));
        }

        if (_steady)
        {
            rate = _steadyRate;
            (double sine, double cosine) = Math.SinCos(0.5 * Reduced(_speed * scaledTime));
            attitude = (_attitude * new Quaternion(_steadyAxis.X * sine, _steadyAxis.Y * sine, _steadyAxis.Z * sine, cosine)).Normalised();
            return;
        }

        Phase phase = PhaseAt((_phaseRate * scaledTime) + _phaseAtStart);
        Vec renamed = new(_rateAmplitude.X * phase.Cn, _rateAmplitude.Y * phase.Sn, _rateAmplitude.Z * phase.Dn);
        rate = ((_axis1 * renamed.X) + (_axis2 * renamed.Y) + (_axis3 * renamed.Z)) * _rateScale;
        double turn = Reduced((_uniformRate * scaledTime) + (TurnOf(phase) - _turnAtStart));
        attitude = (_momentumFrame * EulerRotation(turn, phase) * _toRenamed).Normalised();
        Require(double.IsFinite(rate.LargestMagnitude) && double.IsFinite(attitude.SquaredLength));
    }

    private static void Require(bool told)
    {
        if (!told)
        {
            throw new ComputationRefusedException("The torque-free motion of this body cannot be told from its moments and rates: they are too large, or too far apart in size, for the numbers to hold them. Check their units.");
        }
    }

    private static DoubleDouble Felt(DoubleDouble scaledRate)
    {
        return Math.Abs(scaledRate.High) < NegligibleRate ? default : scaledRate;
    }

    private static DoubleDouble Square(DoubleDouble value)
    {
        return value * value;
    }

    private static double Root(DoubleDouble value)
    {
        return Math.Sqrt((double)value);
    }

    private static double PowerOfTwo(double value)
    {
        return Math.ScaleB(1.0, Math.ILogB(value));
    }

    /// <summary>An angle less whole double turns, since half of it is what a quaternion needs.</summary>
    private static double Reduced(DoubleDouble angle)
    {
        double doubleTurns = Math.Round(angle.High / (4.0 * Math.PI));
        return (double)(angle - (DoubleDouble.Pi * (4.0 * doubleTurns)));
    }

    /// <summary>The phase u between -K and K whose cn and sn are as these two, the first not negative.</summary>
    private double PhaseOf(double cosine, double sine)
    {
        double length = Math.Sqrt((cosine * cosine) + (sine * sine));
        if (length == 0.0)
        {
            return 0.0;
        }

        cosine /= length;
        sine /= length;
        double dn = (cosine * cosine) + (_complement * _complement * sine * sine);
        return sine * Elliptic.FirstKind(cosine * cosine, dn, 1.0);
    }

    /// <summary>The elliptic functions of a phase of any size.</summary>
    private Phase PhaseAt(DoubleDouble u)
    {
        if (_separatrix)
        {
            double all = (double)u;
            (double tangent, double secant, _) = Elliptic.Jacobi(all, 0.0);
            return new Phase(0.0, all, tangent, secant, secant, 1.0);
        }

        DoubleDouble half = _quarter + _quarter;
        double halfPeriods = Math.Round(u.High / half.High);
        DoubleDouble within = u - (half * halfPeriods);
        double sign = Math.IEEERemainder(halfPeriods, 2.0) == 0.0 ? 1.0 : -1.0;
        double v = (double)within;
        if (Math.Abs(v) <= 0.5 * _quarter.High)
        {
            (double sn, double cn, double dn) = Elliptic.Jacobi(v, _complement);
            return new Phase(halfPeriods, v, sign * sn, sign * cn, dn, cn / dn);
        }

        // Near the quarter period from its other end, where cn and dn keep their digits.
        double rest = (double)(_quarter - DoubleDouble.Abs(within));
        (double snRest, double cnRest, double dnRest) = Elliptic.Jacobi(rest, _complement);
        double snHere = Math.CopySign(cnRest / dnRest, v);
        return new Phase(halfPeriods, v, sign * snHere, sign * _complement * snRest / dnRest, _complement / dnRest, snRest);
    }

    /// <summary>The precession of a phase, but for its uniform part.</summary>
    private DoubleDouble TurnOf(Phase phase)
    {
        double sn = Math.CopySign(phase.Sn, phase.V);
        double tangent = Math.Atan(_tangentFactor * sn * phase.CnOverDn);
        if (_separatrix)
        {
            return tangent;
        }

        double cn2 = phase.Cn * phase.Cn;
        double sn2 = sn * sn;
        double thirdKind = Elliptic.ThirdKind(cn2, phase.Dn * phase.Dn, 1.0, cn2 + (_thirdKindComplement * sn2));
        double within = _thirdKindFactor * (phase.V + (_thirdKindParameter / 3.0 * sn * sn2 * thirdKind));
        return (_turnPerHalfPeriod * phase.HalfPeriods) + (within + tangent);
    }

    /// <summary>The rotation from the renamed principal axes to axes whose third is the momentum.</summary>
    private Quaternion EulerRotation(double precession, Phase phase)
    {
        double spin = Math.Atan2(_spinCosine * phase.Cn, _spinSine * phase.Sn);
        double across1 = _momentumAmplitude.X * phase.Cn;
        double across2 = _momentumAmplitude.Y * phase.Sn;
        double along = _momentumAmplitude.Z * phase.Dn;
        double across = Math.Sqrt((across1 * across1) + (across2 * across2));
        double momentum = Math.Sqrt((across * across) + (along * along));
        double cosineOfHalf = Math.Sqrt(0.5 * (1.0 + (along / momentum)));
        double sineOfHalf = 0.5 * across / (momentum * cosineOfHalf);
        (double sineOfSum, double cosineOfSum) = Math.SinCos(0.5 * (precession + spin));
        (double sineOfDifference, double cosineOfDifference) = Math.SinCos(0.5 * (precession - spin));
        return new Quaternion(
            sineOfHalf * cosineOfDifference, sineOfHalf * sineOfDifference, cosineOfHalf * sineOfSum, cosineOfHalf * cosineOfSum);
    }

    /// <summary>Half periods (2 K) and the rest V of a phase, and the elliptic functions there.</summary>
    private readonly record struct Phase(double HalfPeriods, double V, double Sn, double Cn, double Dn, double CnOverDn);
}
