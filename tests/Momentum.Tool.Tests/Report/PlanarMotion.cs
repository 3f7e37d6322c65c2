namespace Momentum.Tool.Tests.Report;

/// <summary>
/// A second, independent computation of the planar motion of two weights on massless cords, for pictures to be compared
/// with: closed form while unwinding; while hinging the spin follows from conserved angular momentum and energy at each
/// cord angle, and only the time needs a sum. Own derivation.
/// </summary>
/// <param name="Inertia">Spin inertia without the weights, kg m².</param>
/// <param name="Weights">Both weights together, kg.</param>
/// <param name="Radius">To the cord's centreline, m.</param>
/// <param name="Length">Of each cord, m.</param>
/// <param name="InitialSpin">rad/s.</param>
internal sealed record PlanarMotion(double Inertia, double Weights, double Radius, double Length, double InitialSpin)
{
    private const int HingeSteps = 200;

    private double C => 1 + (Inertia / (Weights * Radius * Radius));

    private double Momentum => (Inertia + (Weights * Radius * Radius)) * InitialSpin;

    public double UnwindingEnds => Length / (Radius * InitialSpin);

    /// <summary>The two weights leave a hub of inertia I at rest from cords of this length, let go radially.</summary>
    public static double RadialLengthToZero(double inertia, double weights, double radius) =>
        Math.Sqrt((radius * radius) + (inertia / weights)) - radius;

    /// <summary>Time s, hub angle rad, spin rad/s, tension N of each cord, tangent and cord direction rad, free length m.</summary>
    public IReadOnlyList<(double Time, double Hub, double Spin, double Tension, double Tangent, double Cord, double Free)> ToRadial(int unwindingSteps)
    {
        var states = new List<(double, double, double, double, double, double, double)>();
        for (int i = 0; i <= unwindingSteps; i++)
        {
            double phi = Length / Radius * i / unwindingSteps;
            double hub = -phi + (2 * Math.Sqrt(C) * Math.Atan(phi / Math.Sqrt(C)));
            double spin = InitialSpin * (C - (phi * phi)) / (C + (phi * phi));
            double tension = 2 * C * phi * Inertia * InitialSpin * InitialSpin / (Radius * Math.Pow(C + (phi * phi), 2));
            states.Add((phi / InitialSpin, hub, spin, tension, hub + phi, hub + phi - (Math.PI / 2), phi * Radius));
        }

        double wound = Length / Radius;
        (double time, double hubAngle) = (UnwindingEnds, states[^1].Item2);
        double step = Math.PI / 2 / HingeSteps;
        for (int i = 1; i <= HingeSteps; i++)
        {
            // Midpoint sum of dt = dγ/γ' and dθ = ω dγ/γ'.
            (double middleSpin, double middleCord) = Hinged((i - 0.5) * step);
            double dt = step / (middleCord - middleSpin);
            time += dt;
            hubAngle += middleSpin * dt;
            double angle = i * step;
            (double spin, _) = Hinged(angle);
            double rate = (Hinged(angle).Spin - Hinged(angle - 1e-5).Spin) / 1e-5 * (Hinged(angle).Cord - spin);
            double lever = Radius * Math.Cos(angle);
            double tension = lever > 1e-3 * Radius ? Math.Abs(Inertia * rate / lever) / 2 : states[^1].Item4;
            states.Add((time, hubAngle, spin, tension, hubAngle + wound, hubAngle + wound - (Math.PI / 2) + angle, Length));
        }

        return states;
    }

    /// <summary>Hub spin and inertial turning rate of the cord when it stands at an angle from the tangent, rad/s.</summary>
    private (double Spin, double Cord) Hinged(double angle)
    {
        // H = a ω + b Ω and 2E = p ω² + q Ω² + 2 s ω Ω, solved for ω on the branch that starts at ω = ω(unwound).
        double couple = Weights * Radius * Length * Math.Sin(angle);
        double own = Weights * Length * Length;
        double hub = Inertia + (Weights * Radius * Radius);
        double a = hub + couple;
        double b = own + couple;
        double twiceEnergy = hub * InitialSpin * InitialSpin;
        double second = hub + (own * a * a / (b * b)) - (2 * couple * a / b);
        double first = (-2 * own * a * Momentum / (b * b)) + (2 * couple * Momentum / b);
        double zeroth = (own * Momentum * Momentum / (b * b)) - twiceEnergy;
        double spin = (-first - Math.Sqrt((first * first) - (4 * second * zeroth))) / (2 * second);
        return (spin, (Momentum - (a * spin)) / b);
    }
}
