using Momentum.Numerics;

namespace Momentum.Tethers;

/// <summary>
/// Lagrange's equations of the planar de-spin, in hub angle and cord direction; made without the conserved quantities, so
/// that integrating them is an independent check of the closed form.
/// </summary>
/// <remarks>
/// State: hub angle, spin w, coordinate a (see <see cref="PlanarCords"/>), rate O at which the cord turns in inertial
/// space; da/dt = O - w. Rates per initial spin, time in its inverse. From 2T = A w² + 2 C sin(a) w O + B O²:
/// unwinding (C sin a absent, B depends on a with slope B'), A dw/dt = -B' O²/2, B dO/dt = -B' O (O - 2 w)/2;
/// hinging, A dw/dt + C sin(a) dO/dt = -C cos(a) O², C sin(a) dw/dt + B dO/dt = C cos(a) w².
/// </remarks>
internal struct PlanarCordEquations : IOdeSystem
{
    internal const int HubAngle = 0;
    internal const int Spin = 1;
    internal const int Coordinate = 2;
    internal const int Turning = 3;

    private readonly PlanarCords _cords;

    internal PlanarCordEquations(PlanarCords cords) => _cords = cords;

    /// <summary>Whether the cords are fully unwound.</summary>
    internal bool Hinging { get; set; }

    public readonly int Dimension => 4;

    public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        double spin = state[1];
        double turning = state[3];
        double radius = _cords.Radius;
        double mass = _cords.Weights;
        double density = _cords.Density;
        derivatives[0] = spin;
        derivatives[2] = turning - spin;
        double inertia = _cords.Hub + ((mass + (density * _cords.Length)) * radius * radius);
        if (!Hinging)
        {
            double free = _cords.Length + (radius * state[2]);
            double halfSlope = (mass + (0.5 * density * free)) * free * radius;
            derivatives[1] = -halfSlope * turning * turning / inertia;

            // At the very start the cord has no length and the quotient is 0/0, with the limit zero.
            double relative = free > 0 ? radius * (mass + (0.5 * density * free)) / ((mass + (density * free / 3)) * free) : 0;
            derivatives[3] = -relative * turning * (turning - (2 * spin));
            return;
        }

        double length = _cords.Length;
        double swung = (mass + (density * length / 3)) * length * length;
        double coupling = (mass + (0.5 * density * length)) * length * radius;
        (double sine, double cosine) = Math.SinCos(state[2]);
        double off = coupling * sine;
        double first = -coupling * cosine * turning * turning;
        double second = coupling * cosine * spin * spin;
        double determinant = (inertia * swung) - (off * off);
        derivatives[1] = ((swung * first) - (off * second)) / determinant;
        derivatives[3] = ((inertia * second) - (off * first)) / determinant;
    }
}
