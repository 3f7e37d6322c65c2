using Momentum.Numerics;

namespace Momentum.Tethers;

/// <summary>
/// The planar motion of a free hub that is left with one weight on its cord.
/// </summary>
/// <remarks>
/// <para>State: coordinate a of the cord (see <see cref="PlanarCords"/>), its rate, hub angle. Linear momentum is taken out
/// by counting kinetic energy about the system's centre of mass: with n1, n2, n3 the mass of weight and free cord and its
/// first and second moments along the cord (per l and l²), and M the mass of everything,
/// 2T = A w² + 2 C sin(a) w O + B O², A = I + (wound cord) R² + (n1 - n1²/M) R², B = (n3 - n2²/M) l²,
/// C = (n2 - n1 n2/M) l R (own derivation). For a massless cord that is the symmetric problem with the weight's mass
/// replaced by the reduced mass.</para>
/// <para>The hub angle is cyclic, so H is constant and the cord moves as with one degree of freedom: with S = A + B + 2 C sin a,
/// b = B + C sin a, D = A B - C² sin² a: w = (H - b a')/S, 2E = H²/S + D a'²/S, and so a'' = (E dS/da - a'² dD/da /2)/D.
/// The wound cord is taken as a ring centred on the hub.</para>
/// </remarks>
internal struct LateCordEquations : IOdeSystem
{
    /// <summary>Inertia of the hub with what stays wound on it of the other cords.</summary>
    internal double Hub { get; set; }

    /// <summary>Mass of the hub with what stays wound on it of the other cords.</summary>
    internal double HubMass { get; set; }

    /// <summary>Mass of the one weight.</summary>
    internal double Weight { get; set; }

    /// <summary>Mass per length of its cord.</summary>
    internal double Density { get; set; }

    internal double Radius { get; set; }

    internal double Length { get; set; }

    internal double Momentum { get; set; }

    internal double Energy { get; set; }

    /// <summary>Whether the cord is fully unwound.</summary>
    internal bool Hinging { get; set; }

    public readonly int Dimension => 3;

    public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        Inertias(state[0], out double sum, out double cordPart, out double determinant, out double sumSlope, out double determinantSlope);
        double rate = state[1];
        derivatives[0] = rate;
        derivatives[1] = ((Energy * sumSlope) - (0.5 * rate * rate * determinantSlope)) / determinant;
        derivatives[2] = (Momentum - (cordPart * rate)) / sum;
    }

    /// <summary>Sets momentum and energy from spin and rate of the cord in inertial space at a coordinate.</summary>
    internal void Begin(double a, double spin, double turning)
    {
        Inertias(a, out double sum, out double cordPart, out double determinant, out _, out _);
        double rate = turning - spin;
        Momentum = (sum * spin) + (cordPart * rate);
        Energy = ((Momentum * Momentum) + (determinant * rate * rate)) / (2 * sum);
    }

    /// <summary>Spin at a coordinate and rate.</summary>
    internal readonly double Spin(double a, double rate)
    {
        Inertias(a, out double sum, out double cordPart, out _, out _, out _);
        return (Momentum - (cordPart * rate)) / sum;
    }

    /// <summary>Momentum of weight and free cord relative to the hub's centre, along the tangent and along the radius at the root.</summary>
    internal readonly void MomentumOfCord(double a, double spin, double turning, out double radial, out double tangential)
    {
        double free = Hinging ? Length : Math.Max(0, Length + (Radius * a));
        double sine = Hinging ? Math.Sin(a) : 0;
        double cosine = Hinging ? Math.Cos(a) : 1;
        double swing = (Weight + (0.5 * Density * free)) * free * turning;
        radial = swing * cosine;
        tangential = ((Weight + (Density * free)) * Radius * spin) + (swing * sine);
    }

    private readonly void Inertias(
        double a, out double sum, out double cordPart, out double determinant, out double sumSlope, out double determinantSlope)
    {
        double free = Hinging ? Length : Math.Max(0, Length + (Radius * a));
        double cord = Density * free;
        double n1 = Weight + cord;
        double n2 = Weight + (0.5 * cord);
        double n3 = Weight + (cord / 3);
        double wound = Density * (Length - free);
        double rest = HubMass + wound;

        // 1 - n1/M, and n1 n3 - n2², without cancelling for a weight heavier than the hub or a cord heavier than the weight.
        double share = rest / (rest + n1);
        double spread = cord * ((Weight / 3) + (cord / 12));
        double square = Radius * Radius;
        double fixed1 = Hub + (wound * square);
        double carried = fixed1 + (n1 * share * square);
        double reduced = ((n3 * rest) + spread) / (rest + n1);
        double swung = reduced * free * free;
        if (Hinging)
        {
            (double sine, double cosine) = Math.SinCos(a);
            double coupling = n2 * share * free * Radius;
            double off = coupling * sine;
            sum = carried + swung + (2 * off);
            cordPart = swung + off;
            determinant = free * free *
                ((fixed1 * reduced) + (square * share * ((share * n2 * n2 * cosine * cosine) + spread)));
            sumSlope = 2 * coupling * cosine;
            determinantSlope = -2 * off * coupling * cosine;
            return;
        }

        double carriedSlope = -2 * Density * (n1 / (rest + n1)) * square * Radius;
        double swungSlope = 2 * n2 * free * share * Radius;
        sum = carried + swung;
        cordPart = swung;
        determinant = carried * swung;
        sumSlope = carriedSlope + swungSlope;
        determinantSlope = (carriedSlope * swung) + (carried * swungSlope);
    }
}
