using Momentum.Numerics;

namespace Momentum.Tethers.Springs;

/// <summary>The planar, symmetric motion of a hub and its weights on massless cords that stretch.</summary>
/// <remarks>
/// <para>Without units, see <see cref="SpringCordProportions"/>. Unlike with rigid cords the initial spin w0 counts: it sets
/// the spring against the pull.</para>
/// <para>Own derivation, by Newton's law. The free cord, of length f, points along c; n is c turned forward by a right angle; c
/// turns at O in inertial space, at the angle a from the tangent. The weight moves at -s c + u n. The cord pulls with
/// F = k x + d x', where x is its stretch, so that I w' = -F R cos a, s' = F/m - u O, u' = s O; the cord is
/// guided by its root on the hub, R w cos a - x' = s and f O + R w sin a = u. While unwinding a = 0, f = R φ + x and
/// φ' = O - w, φ being the unwound angle: only cord without tension lies on the hub. Then it hinges: f = L + x, a' = O - w.</para>
/// </remarks>
internal struct SpringCordEquations : IOdeSystem
{
    internal const int HubAngle = 0;
    internal const int Spin = 1;

    /// <summary>Unwound angle while unwinding, cord angle from the tangent while hinging.</summary>
    internal const int Swept = 2;
    internal const int Stretch = 3;

    /// <summary>Speed of the weight along the cord towards the hub, s.</summary>
    internal const int Inward = 4;

    /// <summary>Speed of the weight across the cord, forward, u.</summary>
    internal const int Across = 5;

    /// <summary>Energy that the dampers have taken.</summary>
    internal const int Damped = 6;
    internal const int Size = 7;

    private readonly double _inertia;
    private readonly double _length;
    private readonly double _spring;
    private readonly double _damper;

    internal SpringCordEquations(SpringCordProportions proportions)
    {
        _inertia = proportions.Inertia;
        _length = proportions.Length;
        _spring = proportions.Spring;
        _damper = 2 * proportions.DampingRatio * Math.Sqrt(proportions.Spring);
    }

    /// <summary>Whether the cord is fully unwound.</summary>
    internal bool Hinging { get; set; }

    public readonly int Dimension => Size;

    public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        Glance now = Look(state);
        derivatives[HubAngle] = state[Spin];
        derivatives[Spin] = now.SpinRate;
        derivatives[Swept] = now.Turning - state[Spin];
        derivatives[Stretch] = now.StretchRate;
        derivatives[Inward] = now.InwardRate;
        derivatives[Across] = state[Inward] * now.Turning;
        derivatives[Damped] = _damper * now.StretchRate * now.StretchRate;
    }

    /// <summary>What follows from a state.</summary>
    internal readonly Glance Look(ReadOnlySpan<double> state)
    {
        double spin = state[Spin];
        double stretch = state[Stretch];
        double sine = 0;
        double cosine = 1;
        double free = state[Swept] + stretch;
        if (Hinging)
        {
            (sine, cosine) = Math.SinCos(state[Swept]);
            free = _length + stretch;
        }

        double stretchRate = (spin * cosine) - state[Inward];
        double tension = (_spring * stretch) + (_damper * stretchRate);

        // At the very start the cord has no length and the quotient is 0/0; it comes off at w0 from a hub that turns at w0.
        double turning = free > 0 ? (state[Across] - (spin * sine)) / free : 2 * spin;
        return new Glance
        {
            Free = free,
            Sine = sine,
            Cosine = cosine,
            StretchRate = stretchRate,
            Tension = tension,
            Turning = turning,
            SpinRate = -tension * cosine / _inertia,
            InwardRate = tension - (state[Across] * turning),
        };
    }

    /// <summary>Rate of the tension, F'.</summary>
    internal readonly double TensionRate(ReadOnlySpan<double> state, in Glance now)
    {
        double stretchAcceleration =
            (now.SpinRate * now.Cosine) - (state[Spin] * now.Sine * (now.Turning - state[Spin])) - now.InwardRate;
        return (_spring * now.StretchRate) + (_damper * stretchAcceleration);
    }

    /// <summary>What the state gives with little effort.</summary>
    internal readonly struct Glance
    {
        /// <summary>Free length, stretch and all.</summary>
        internal double Free { get; init; }

        internal double Sine { get; init; }

        internal double Cosine { get; init; }

        internal double StretchRate { get; init; }

        internal double Tension { get; init; }

        /// <summary>Rate at which the cord turns in inertial space, O.</summary>
        internal double Turning { get; init; }

        internal double SpinRate { get; init; }

        internal double InwardRate { get; init; }
    }
}
