using Momentum.Numerics;

namespace Momentum.Tethers;

/// <summary>
/// The planar, symmetric motion of hub, weights and inextensible cords in closed form, as a function of one coordinate.
/// </summary>
/// <remarks>
/// <para>SI doubles, all weights and all cords together, and per unit of initial spin w0: rates come as multiples of w0, times as
/// multiples of 1/w0, tensions as multiples of w0². Nothing here depends on w0, because without forces from outside the
/// path does not.</para>
/// <para>Coordinate <c>a</c> (rad): the direction of the free cord in hub axes, from the direction it has when it is fully
/// unwound and still tangent. Negative while unwinding (the tangent point has -a still to run), zero at the end of it, the
/// cord angle while hinging. Both da/dt and the spin are continuous at zero.</para>
/// <para>Derivation (own). Tangent point or cord end at radius R, free length l along the unit vector u that turns at
/// O = w + da/dt in inertial space; a point of the cord at distance s from the hub moves at R w e_t + s O u', so that
/// 2T = A w² + 2 C sin(a) w O + B O², with A = I + (m + mu L) R², B = (m + mu l/3) l², C = (m + mu l/2) l R; wound cord
/// belongs to A, which therefore does not change. While unwinding the C term vanishes because the cord is tangent. Both H
/// and 2T keep their starting values A w0 and A w0². The free cord is taken as straight, which is exact for a cord
/// without mass and an approximation for one with mass.</para>
/// </remarks>
internal readonly struct PlanarCords
{
    /// <summary>Takes SI numbers that were checked at the door.</summary>
    /// <param name="hub">Spin inertia without weights and cords, kg·m².</param>
    /// <param name="radius">Radius to the cord's centreline, m.</param>
    /// <param name="weights">Mass of all weights together, kg.</param>
    /// <param name="density">Mass of all cords together per length of one, kg/m.</param>
    /// <param name="length">Length of each cord, m.</param>
    internal PlanarCords(double hub, double radius, double weights, double density, double length)
    {
        Hub = hub;
        Radius = radius;
        Weights = weights;
        Density = density;
        Length = length;
        Carried = hub + ((weights + (density * length)) * radius * radius);
    }

    /// <summary>Spin inertia with the weights stowed and the cords wound (A).</summary>
    internal double Carried { get; }

    /// <summary>Spin inertia of the hub alone.</summary>
    internal double Hub { get; }

    internal double Weights { get; }

    internal double Density { get; }

    internal double Radius { get; }

    internal double Length { get; }

    // The weights with that share of the whole unwound cord which counts in the first moment about its root, and in the second.
    private double Half => Weights + (Density * Length / 2);

    private double Third => Weights + (Density * Length / 3);

    /// <summary>The coordinate at the start, when nothing is unwound.</summary>
    internal double Start => -Length / Radius;

    /// <summary>Free length at a coordinate.</summary>
    internal double FreeLength(double a) => a >= 0 ? Length : Math.Max(0, Length + (Radius * a));

    /// <summary>Spin over initial spin.</summary>
    internal double Spin(double a)
    {
        if (a <= 0)
        {
            double swung = Swung(FreeLength(a));
            return (Carried - swung) / (Carried + swung);
        }

        (double sine, double cosine) = Math.SinCos(a);
        return HingedSpin(sine, cosine);
    }

    /// <summary>Spin over initial spin while hinging, at the sine and cosine of the cord angle.</summary>
    internal double HingedSpin(double sine, double cosine)
    {
        // From H and T: da/dt = w0 sqrt(A (B + 2 C sin a) / D), w (A + B + 2 C sin a) = A w0 - (B + C sin a) da/dt, with
        // D = A B - C² sin² a; then w multiplied through by the conjugate so that a vanishing spin does not cancel:
        // w/w0 = A (A B - b²) / (D (A + b g)), b = B + C sin a, g = (da/dt)/w0. B, b, D without their common powers of L.
        double arm = (Third * Length) + (Half * Radius * sine);
        double determinant = Determinant(cosine);
        double rate = Math.Sqrt(Carried * ((Third * Length) + (2 * Half * Radius * sine)) / (Length * determinant));
        return Carried * ((Carried * Third) - (arm * arm)) / (determinant * (Carried + (Length * arm * rate)));
    }

    /// <summary>Rate of the coordinate over initial spin.</summary>
    internal double CordRate(double a)
    {
        if (a <= 0)
        {
            return 1;
        }

        (double sine, double cosine) = Math.SinCos(a);
        return HingedRate(sine, cosine);
    }

    /// <summary>Rate of the cord angle over initial spin while hinging, at its sine and cosine.</summary>
    internal double HingedRate(double sine, double cosine) => Math.Sqrt(
        Carried * ((Third * Length) + (2 * Half * Radius * sine)) / (Length * Determinant(cosine)));

    /// <summary>
    /// How far from the tangent, and from the radial, the rates change as fast as at all (rad): near the tangent the rate goes with
    /// the square root of the sine of the angle and this, near the radial with that of the squares of the cosine and this, inverted.
    /// </summary>
    internal (double Tangent, double Radial) HingeScales => (
        Third * Length / (2 * Half * Radius), Math.Sqrt(Determinant(0)) / (Radius * Half));

    /// <summary>How far (rad) the hub has turned when a length has unwound: the integral of the spin by the unwound angle.</summary>
    /// <remarks>
    /// Own derivation, by partial fractions. Spin is 2 A/(A + B) - 1 with B = m l² + c l³, c = mu/3. With p the one real root of
    /// A p³ + m p = c, A + B = (1 + p l)(A - A p l + b l²), b = m + A p²; with N = m + 3 A p², D = A (4 m + 3 A p²) the integral of
    /// 1/(A + B) is p/N (ln(1 + p l) - ln(1 - p l + b l²/A)/2) + (2 m + 3 A p²)/(N sqrt D) atan2(l sqrt D, A (2 - p l)).
    /// </remarks>
    internal double UnwoundTurn(double free)
    {
        double cubic = Density / 3;

        // Convex and rising: Newton from above descends to the root.
        double p = Math.Min(cubic / Weights, Math.Cbrt(cubic / Carried));
        for (int i = 0; i < 100; i++)
        {
            double square = Carried * p * p;
            double next = p - (((p * (square + Weights)) - cubic) / (Weights + (3 * square)));
            if (!(next < p))
            {
                break;
            }

            p = next;
        }

        double part = Carried * p * p;
        double norm = Weights + (3 * part);
        double root = Math.Sqrt(Carried * ((4 * Weights) + (3 * part)));
        double logarithms = Log1P(p * free) - (0.5 * Log1P(free * (((Weights + part) * free / Carried) - p)));
        double angle = Math.Atan2(free * root, Carried * (2 - (p * free)));
        double integral = ((p * logarithms) + (((2 * Weights) + (3 * part)) * angle / root)) / norm;
        return ((2 * Carried * integral) - free) / Radius;
    }

    /// <summary>Rate at which the cord turns in inertial space, over initial spin: the sum of the two rates above, without their cancellation.</summary>
    internal double Turning(double a)
    {
        if (a <= 0)
        {
            return 2 * Carried / (Carried + Swung(FreeLength(a)));
        }

        double coupling = Half * Length * Radius * Math.Sin(a);
        double swung = Swung(Length);
        return (Carried + ((Carried + coupling) * CordRate(a))) / (Carried + swung + (2 * coupling));
    }

    /// <summary>
    /// Largest tension along the cord, all cords together, over w0² (kg·m); and the tension at the hub's end.
    /// </summary>
    /// <remarks>
    /// At distance s from the hub the acceleration along the cord, towards the hub, is k + s O² with
    /// k = R (dw/dt cos a + w² sin a), so that the tension there is the mass beyond times its acceleration. With massive
    /// cords k is negative near the tangent, and the largest tension stands a little way out from the hub. At the two ends it is
    /// written out so that all terms are positive (own derivation): a light hub, which hardly pulls, does not cancel.
    /// </remarks>
    internal double Tension(double a, out double atHub) => Tension(a, Spin(a), Turning(a), out atHub);

    /// <summary>The same for rates that came from elsewhere.</summary>
    internal double Tension(double a, double spin, double turning, out double atHub)
    {
        double free = FreeLength(a);
        double square = turning * turning;
        double cord = Density * free;
        double inward;
        double atWeight;
        if (a <= 0)
        {
            double half = Weights + (cord / 2);
            double left = Hub + (Density * (Length - free) * Radius * Radius);
            double pull = free * square / Carried;
            inward = -Radius * Radius * half * pull;
            atWeight = Weights * (left + (0.5 * cord * Radius * Radius)) * pull;
            atHub = half * left * pull;
        }
        else
        {
            (double sine, double cosine) = Math.SinCos(a);
            double determinant = Determinant(cosine);
            double hub = Hub * Third;
            double sag = Radius * Radius * cord * ((Weights / 3) + (cord / 12));
            double swing = free * square / determinant;
            double lift = spin * spin * Radius * sine * ((hub + sag) / determinant);
            inward = Radius * ((SpinAcceleration(sine, cosine, spin, turning) * cosine) + (spin * spin * sine));
            atWeight = Weights * (lift + (swing * (hub + sag + (Radius * Radius * Half * (cord / 6) * cosine * cosine))));
            atHub = ((Weights + cord) * lift) + (swing * Half * (hub + (sag * sine * sine)));
        }

        double largest = Math.Max(atWeight, atHub);
        if (Density == 0 || inward >= 0 || square == 0)
        {
            return largest;
        }

        double out1 = Math.Min(free, -inward / square);
        return Math.Max(largest, atWeight + (Density * (free - out1) * (inward + ((free + out1) * square / 2))));
    }

    /// <summary>Where the largest tension of all falls between the start and a coordinate.</summary>
    internal double PeakTensionAt(double end)
    {
        double unwound = FreeLength(Math.Min(end, 0));
        double peak = Math.Min(end, 0);
        if (PastUnwindingPeak(unwound))
        {
            double low = 0;
            double high = unwound;
            for (int i = 0; i < 200 && low < high; i++)
            {
                double middle = 0.5 * (low + high);
                if (middle <= low || middle >= high)
                {
                    break;
                }

                if (PastUnwindingPeak(middle))
                {
                    high = middle;
                }
                else
                {
                    low = middle;
                }
            }

            peak = (high - Length) / Radius;
        }

        if (end <= 0)
        {
            return peak;
        }

        double hinging = HingingPeakAt(end);
        return Tension(hinging, out _) > Tension(peak, out _) ? hinging : peak;
    }

    /// <summary>The coordinate at which the spin has fallen to a fraction of the initial one; NaN if it never does before re-wrapping.</summary>
    internal double WhereSpinIs(double ratio)
    {
        if (!(ratio < 1))
        {
            return double.NaN;
        }

        if (ratio >= Spin(0))
        {
            // B(l) = A (1 - r)/(1 + r): convex and increasing, so Newton from the massless root, above it, descends to the root.
            double target = Carried * (1 - ratio) / (1 + ratio);
            double free = Math.Sqrt(target / Weights);
            for (int i = 0; Density > 0 && i < 100; i++)
            {
                double next = free - ((Swung(free) - target) / (((2 * Weights) + (Density * free)) * free));
                if (!(next < free))
                {
                    break;
                }

                free = next;
            }

            return Math.Min(0, (free - Length) / Radius);
        }

        if (ratio < Spin(Math.PI / 2))
        {
            return double.NaN;
        }

        // From the tangent on down to the smallest angle that a number holds.
        const int MostHalvings = 1100;
        double low = 0;
        double high = Math.PI / 2;
        for (int i = 0; i < MostHalvings; i++)
        {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high)
            {
                break;
            }

            if (Spin(middle) > ratio)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return high;
    }

    /// <summary>Spin acceleration over w0², while hinging: Lagrange's equations solved for it.</summary>
    private double SpinAcceleration(double sine, double cosine, double spin, double turning)
    {
        return -cosine * Half * Radius *
            ((Third * Length * turning * turning) + (Half * Radius * sine * spin * spin)) / Determinant(cosine);
    }

    /// <summary>B, the inertia of the swinging weights and free cord about the tangent point.</summary>
    private double Swung(double free) => (Weights + (Density * free / 3)) * free * free;

    // ln(1 + x), near 0 without the rounding of the sum (W. Kahan; from memory, not read).
    private static double Log1P(double x)
    {
        double sum = 1 + x;
        return sum == 1 ? x : Math.Log(sum) * (x / (sum - 1));
    }

    // (A B - C² sin² a)/L², arranged so that every term is positive and a light hub does not cancel.
    private double Determinant(double cosine)
    {
        double cord = Density * Length;
        return (Hub * Third) +
            (Radius * Radius * ((Half * Half * cosine * cosine) + (cord * ((Weights / 3) + (cord / 12)))));
    }

    // Sign of the logarithmic derivative of the tension by free length, from
    // F = 2 w0² n l (2 A (I + mu (L - l) R²) + mu R⁴ n l)/(A + B)², n = m + mu l/2; massless: past l² = A/(3 m).
    private bool PastUnwindingPeak(double free)
    {
        if (free == 0)
        {
            return false;
        }

        double square = Radius * Radius;
        double half = Weights + (Density * free / 2);
        double reach = half * free;
        double factor = (2 * Carried * (Hub + (Density * (Length - free) * square))) + (Density * square * square * reach);
        double factorSlope = Density * square * ((square * (Weights + (Density * free))) - (2 * Carried));
        double slope = (Density / 2 / half) + (1 / free) + (factorSlope / factor) - (4 * reach / (Carried + Swung(free)));
        return slope < 0;
    }

    // The tension is symmetric about radial, so only the way there is searched. A short cord changes fast near the tangent,
    // on the scale e = B/(2 C); the grid is even in p with a = p (2 sqrt(e) + p), which resolves it.
    private double HingingPeakAt(double end)
    {
        const int Panels = 32;
        double last = Math.Min(end, Math.PI / 2);
        double scale = Math.Sqrt(Third * Length / (2 * Half * Radius));
        double lastP = last / (scale + Math.Sqrt((scale * scale) + last));
        int best = 0;
        double bestTension = double.NegativeInfinity;
        for (int i = 0; i <= Panels; i++)
        {
            double tension = Tension(i == Panels ? last : Angle(i), out _);
            if (tension > bestTension)
            {
                best = i;
                bestTension = tension;
            }
        }

        double low = Angle(Math.Max(0, best - 1));
        double high = best >= Panels - 1 ? last : Angle(best + 1);
        (double inside, double tensionInside) = GoldenSection.Highest(this, static (cords, angle) => cords.Tension(angle, out _), low, high, 40);
        double atBest = best == Panels ? last : Angle(best);
        return tensionInside > bestTension ? inside : atBest;

        double Angle(int index)
        {
            double p = lastP * index / Panels;
            return p * ((2 * scale) + p);
        }
    }
}
