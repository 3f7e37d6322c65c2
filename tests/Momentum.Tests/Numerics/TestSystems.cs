using Momentum.Numerics;

namespace Momentum.Tests.Numerics;

internal readonly record struct Oscillator(double Frequency) : IOdeSystem
{
    public int Dimension
    {
        get { return 2; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        derivatives[0] = Frequency * state[1];
        derivatives[1] = -Frequency * state[0];
    }
}

/// <summary>y = t³ - s t², by its derivative.</summary>
internal readonly record struct Cubic(double Dip) : IOdeSystem
{
    public int Dimension
    {
        get { return 1; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        derivatives[0] = time * ((3.0 * time) - (2.0 * Dip));
    }
}

/// <summary>y' = y cos t, whose solution is exp(sin t).</summary>
internal readonly record struct ExponentialOfSine : IOdeSystem
{
    public int Dimension
    {
        get { return 1; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        derivatives[0] = state[0] * Math.Cos(time);
    }
}

internal readonly record struct Lorenz : IOdeSystem
{
    public int Dimension
    {
        get { return 3; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        derivatives[0] = 10.0 * (state[1] - state[0]);
        derivatives[1] = (state[0] * (28.0 - state[2])) - state[1];
        derivatives[2] = (state[0] * state[1]) - (8.0 / 3.0 * state[2]);
    }
}

internal readonly record struct VanDerPol(double Mu) : IOdeSystem
{
    public int Dimension
    {
        get { return 2; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        derivatives[0] = state[1];
        derivatives[1] = (Mu * (1.0 - (state[0] * state[0])) * state[1]) - state[0];
    }
}

/// <summary>Euler's equations about principal axes, with the torque 0.25 sin² t about the third axis while it is on.</summary>
internal record struct EulerBody(double First, double Second, double Third) : IOdeSystem
{
    public bool TorqueIsOn { get; set; }

    public readonly int Dimension
    {
        get { return 3; }
    }

    public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        double sine = Math.Sin(time);
        double torque = TorqueIsOn ? 0.25 * sine * sine : 0.0;
        derivatives[0] = (Second - Third) / First * state[1] * state[2];
        derivatives[1] = (Third - First) / Second * state[2] * state[0];
        derivatives[2] = (((First - Second) * state[0] * state[1]) + torque) / Third;
    }
}

/// <summary>The restricted problem of three bodies in the plane, in the rotating frame.</summary>
internal readonly record struct ThreeBodies : IOdeSystem
{
    private const double Mu = 0.012277471;

    public int Dimension
    {
        get { return 4; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        (double x, double y, double u, double v) = (state[0], state[1], state[2], state[3]);
        double rest = 1.0 - Mu;
        double d1 = Math.Pow(((x + Mu) * (x + Mu)) + (y * y), 1.5);
        double d2 = Math.Pow(((x - rest) * (x - rest)) + (y * y), 1.5);
        derivatives[0] = u;
        derivatives[1] = v;
        derivatives[2] = x + (2.0 * v) - (rest * (x + Mu) / d1) - (Mu * (x - rest) / d2);
        derivatives[3] = y - (2.0 * u) - (rest * y / d1) - (Mu * y / d2);
    }
}

/// <summary>y' = y², which is 1 / (1 - t) from 1: infinite at 1.</summary>
internal readonly record struct BlowUp : IOdeSystem
{
    public int Dimension
    {
        get { return 1; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        derivatives[0] = state[0] * state[0];
    }
}

/// <summary>Not a number beyond time 1.</summary>
internal readonly record struct NotANumberBeyondOne : IOdeSystem
{
    public int Dimension
    {
        get { return 1; }
    }

    public void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        derivatives[0] = time > 1.0 ? double.NaN : 1.0;
    }
}

/// <summary>Zeros of one component minus a level, all with one rule.</summary>
internal record struct Levels(int Component, double[] Values, EventRule Common) : IEventFunctions
{
    public readonly int Count
    {
        get { return Values.Length; }
    }

    public readonly EventRule Rule(int index)
    {
        return Common;
    }

    public readonly void Evaluate(double time, ReadOnlySpan<double> state, Span<double> values)
    {
        for (int i = 0; i < Values.Length; i++)
        {
            values[i] = state[Component] - Values[i];
        }
    }
}
