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
    private readonly double _hub;
    private readonly double _radius;
    private readonly double _weights;
    private readonly double _density;
    private readonly double _length;
    private readonly double _carried;

    /// <summary>Takes SI numbers that were checked at the door.</summary>
    /// <param name="hub">Spin inertia without weights and cords, kg·m².</param>
    /// <param name="radius">Radius to the cord's centreline, m.</param>
    /// <param name="weights">Mass of all weights together, kg.</param>
    /// <param name="density">Mass of all cords together per length of one, kg/m.</param>
    /// <param name="length">Length of each cord, m.</param>
    internal PlanarCords(double hub, double radius, double weights, double density, double length)
    {
        _hub = hub;
        _radius = radius;
        _weights = weights;
        _density = density;
        _length = length;
        _carried = hub + ((weights + (density * length)) * radius * radius);
    }

    /// <summary>Spin inertia with the weights stowed and the cords wound (A).</summary>
    internal double Carried => _carried;

    /// <summary>Spin inertia of the hub alone.</summary>
    internal double Hub => _hub;

    internal double Weights => _weights;

    internal double Density => _density;

    internal double Radius => _radius;

    internal double Length => _length;

    /// <summary>The coordinate at the start, when nothing is unwound.</summary>
    internal double Start => -_length / _radius;

    /// <summary>Free length at a coordinate.</summary>
    internal double FreeLength(double a) => a >= 0 ? _length : Math.Max(0, _length + (_radius * a));

    /// <summary>Spin over initial spin.</summary>
    internal double Spin(double a)
    {
        if (a <= 0)
        {
            double swung = Swung(FreeLength(a));
            return (_carried - swung) / (_carried + swung);
        }

        // From H and T: da/dt = w0 sqrt(A (B + 2 C sin a) / D), w (A + B + 2 C sin a) = A w0 - (B + C sin a) da/dt, with
        // D = A B - C² sin² a; then w multiplied through by the conjugate so that a vanishing spin does not cancel:
        // w/w0 = A (A B - b²) / (D (A + b g)), b = B + C sin a, g = (da/dt)/w0. B, b, D without their common powers of L.
        double sine = Math.Sin(a);
        double third = _weights + (_density * _length / 3);
        double half = _weights + (_density * _length / 2);
        double arm = (third * _length) + (half * _radius * sine);
        double determinant = Determinant(Math.Cos(a));
        double rate = Math.Sqrt(_carried * ((third * _length) + (2 * half * _radius * sine)) / (_length * determinant));
        return _carried * ((_carried * third) - (arm * arm)) / (determinant * (_carried + (_length * arm * rate)));
    }

    /// <summary>Rate of the coordinate over initial spin.</summary>
    internal double CordRate(double a)
    {
        if (a <= 0)
        {
            return 1;
        }

        double third = _weights + (_density * _length / 3);
        double half = _weights + (_density * _length / 2);
        return Math.Sqrt(
            _carried * ((third * _length) + (2 * half * _radius * Math.Sin(a))) / (_length * Determinant(Math.Cos(a))));
    }

    /// <summary>Rate at which the cord turns in inertial space, over initial spin: the sum of the two rates above, without their cancellation.</summary>
    internal double Turning(double a)
    {
        if (a <= 0)
        {
            return 2 * _carried / (_carried + Swung(FreeLength(a)));
        }

        double coupling = (_weights + (_density * _length / 2)) * _length * _radius * Math.Sin(a);
        double swung = Swung(_length);
        return (_carried + ((_carried + coupling) * CordRate(a))) / (_carried + swung + (2 * coupling));
    }

    /// <summary>
    /// Largest tension along the cord, all cords together, over w0² (kg·m); and the tension at the hub's end.
    /// </summary>
    /// <remarks>
    /// At distance s from the hub the acceleration along the cord, towards the hub, is k + s O² with
    /// k = R (dw/dt cos a + w² sin a), so that the tension there is the mass beyond times its acceleration. With massive
    /// cords k is negative near the tangent, and the largest tension stands a little way out from the hub.
    /// </remarks>
    internal double Tension(double a, out double atHub) => Tension(a, Spin(a), Turning(a), out atHub);

    /// <summary>The same for rates that came from elsewhere.</summary>
    internal double Tension(double a, double spin, double turning, out double atHub)
    {
        double free = FreeLength(a);
        double inward;
        if (a <= 0)
        {
            double half = _weights + (_density * free / 2);
            inward = -_radius * _radius * half * free * turning * turning / _carried;
        }
        else
        {
            double sine = Math.Sin(a);
            double cosine = Math.Cos(a);
            double acceleration = SpinAcceleration(sine, cosine, spin, turning);
            inward = _radius * ((acceleration * cosine) + (spin * spin * sine));
        }

        double square = turning * turning;
        double atWeight = _weights * (inward + (free * square));
        atHub = atWeight + (_density * free * (inward + (free * square / 2)));
        if (_density == 0 || inward >= 0 || square == 0)
        {
            return atHub;
        }

        double out1 = Math.Min(free, -inward / square);
        return atWeight + (_density * (free - out1) * (inward + ((free + out1) * square / 2)));
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

            peak = (high - _length) / _radius;
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
            double target = _carried * (1 - ratio) / (1 + ratio);
            double free = Math.Sqrt(target / _weights);
            for (int i = 0; _density > 0 && i < 100; i++)
            {
                double next = free - ((Swung(free) - target) / (((2 * _weights) + (_density * free)) * free));
                if (!(next < free))
                {
                    break;
                }

                free = next;
            }

            return Math.Min(0, (free - _length) / _radius);
        }

        if (ratio < Spin(Math.PI / 2))
        {
            return double.NaN;
        }

        double low = 0;
        double high = Math.PI / 2;
        while (true)
        {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high)
            {
                return high;
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
    }

    /// <summary>Spin acceleration over w0², while hinging: Lagrange's equations solved for it.</summary>
    internal double SpinAcceleration(double sine, double cosine, double spin, double turning)
    {
        double third = _weights + (_density * _length / 3);
        double half = _weights + (_density * _length / 2);
        return -cosine * half * _radius *
            ((third * _length * turning * turning) + (half * _radius * sine * spin * spin)) / Determinant(cosine);
    }

    /// <summary>B, the inertia of the swinging weights and free cord about the tangent point.</summary>
    private double Swung(double free) => (_weights + (_density * free / 3)) * free * free;

    // (A B - C² sin² a)/L², arranged so that every term is positive and a light hub does not cancel.
    private double Determinant(double cosine)
    {
        double third = _weights + (_density * _length / 3);
        double half = _weights + (_density * _length / 2);
        double cord = _density * _length;
        return (_hub * third) +
            (_radius * _radius * ((half * half * cosine * cosine) + (cord * ((_weights / 3) + (cord / 12)))));
    }

    // Sign of the logarithmic derivative of the tension by free length, from
    // F = 2 w0² n l (2 A (I + mu (L - l) R²) + mu R⁴ n l)/(A + B)², n = m + mu l/2; massless: past l² = A/(3 m).
    private bool PastUnwindingPeak(double free)
    {
        if (free == 0)
        {
            return false;
        }

        double square = _radius * _radius;
        double half = _weights + (_density * free / 2);
        double reach = half * free;
        double factor = (2 * _carried * (_hub + (_density * (_length - free) * square))) + (_density * square * square * reach);
        double factorSlope = _density * square * ((square * (_weights + (_density * free))) - (2 * _carried));
        double slope = (_density / 2 / half) + (1 / free) + (factorSlope / factor) - (4 * reach / (_carried + Swung(free)));
        return slope < 0;
    }

    // The tension is symmetric about radial, so only the way there is searched. A short cord changes fast near the tangent,
    // on the scale e = B/(2 C); the grid is even in p with a = p (2 sqrt(e) + p), which resolves it.
    private double HingingPeakAt(double end)
    {
        const int Panels = 32;
        double last = Math.Min(end, Math.PI / 2);
        double scale = Math.Sqrt(
            (_weights + (_density * _length / 3)) * _length / (2 * (_weights + (_density * _length / 2)) * _radius));
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

        // Golden section between the neighbours.
        const double Golden = 0.6180339887498949;
        double low = Angle(Math.Max(0, best - 1));
        double high = best >= Panels - 1 ? last : Angle(best + 1);
        double left = high - (Golden * (high - low));
        double right = low + (Golden * (high - low));
        double leftTension = Tension(left, out _);
        double rightTension = Tension(right, out _);
        for (int i = 0; i < 40; i++)
        {
            if (leftTension > rightTension)
            {
                high = right;
                right = left;
                rightTension = leftTension;
                left = high - (Golden * (high - low));
                leftTension = Tension(left, out _);
            }
            else
            {
                low = left;
                left = right;
                leftTension = rightTension;
                right = low + (Golden * (high - low));
                rightTension = Tension(right, out _);
            }
        }

        double inside = 0.5 * (low + high);
        double atBest = best == Panels ? last : Angle(best);
        return Tension(inside, out _) > bestTension ? inside : atBest;

        double Angle(int index)
        {
            double p = lastP * index / Panels;
            return p * ((2 * scale) + p);
        }
    }
}
