using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using Momentum.Numerics;

namespace Momentum.Benchmarks.Integration;

/// <summary>
/// An initial-value problem, in phases, that all solvers get. The solvers that are not in .NET have it in equations.h, with
/// the same components in the same order; the library may keep them at other places of a longer state.
/// </summary>
internal abstract class Problem
{
    /// <summary>The name of its files of results, and the argument that asks for it.</summary>
    public abstract string Name { get; }

    public abstract string Title { get; }

    /// <summary>What is integrated, in a sentence for the table.</summary>
    public abstract string Description { get; }

    /// <summary>Its number in equations.h.</summary>
    public abstract int Index { get; }

    /// <summary>The begin, then the end of each phase, in seconds.</summary>
    public abstract ReadOnlySpan<double> Times { get; }

    /// <summary>The state at the begin, as the library keeps it.</summary>
    public abstract double[] Start { get; }

    /// <summary>Where each component of equations.h stands in that state.</summary>
    public abstract ReadOnlySpan<int> Places { get; }

    /// <summary>
    /// The components of equations.h at the end: what reference.c prints, an extrapolation method in quadruple precision.
    /// </summary>
    public abstract ReadOnlySpan<double> End { get; }

    /// <summary>Largest difference of a component at the end, over the largest component.</summary>
    public double Error(ReadOnlySpan<double> components)
    {
        double largest = 0.0;
        double size = 0.0;
        for (int i = 0; i < End.Length; i++)
        {
            largest = Math.Max(largest, Math.Abs(components[i] - End[i]));
            size = Math.Max(size, Math.Abs(End[i]));
        }

        return largest / size;
    }

    /// <summary>What changes at the begin of a phase.</summary>
    public virtual void Enter(int phase, Span<double> state)
    {
    }

    public abstract void Derivatives(int phase, ReadOnlySpan<double> state, Span<double> derivatives);

    /// <summary>One run of the library's integrator, again and again.</summary>
    public abstract (Action Run, Func<double[]> Components) Momentum(double relative, double absolute);

    /// <summary>MathNet.Numerics' classical method of order 4 with a fixed step, the same number of steps a second in all phases.</summary>
    public (Action Run, Func<double[]> Components) MathNet(int steps)
    {
        double[] state = (double[])Start.Clone();
        return (Run, () => Components(state));

        void Run()
        {
            Vector<double> y = Vector<double>.Build.DenseOfArray(Start);
            double whole = Times[^1] - Times[0];
            for (int phase = 0; phase < Times.Length - 1; phase++)
            {
                int now = phase;
                Enter(phase, y.AsArray());
                int own = Math.Max(1, (int)Math.Round(steps * (Times[phase + 1] - Times[phase]) / whole));
                y = RungeKutta.FourthOrder(y, Times[phase], Times[phase + 1], own + 1, (_, at) =>
                {
                    double[] f = new double[at.Count];
                    Derivatives(now, at.AsArray(), f);
                    return Vector<double>.Build.Dense(f);
                })[^1];
            }

            y.AsArray().CopyTo(state, 0);
        }
    }

    protected double[] Components(ReadOnlySpan<double> state)
    {
        double[] components = new double[Places.Length];
        for (int i = 0; i < components.Length; i++)
        {
            components[i] = state[Places[i]];
        }

        return components;
    }
}

/// <typeparam name="TSystem">The equations as the library's integrator wants to see them.</typeparam>
internal abstract class Problem<TSystem> : Problem
    where TSystem : struct, IOdeSystem
{
    protected abstract TSystem System(int phase);

    public override void Derivatives(int phase, ReadOnlySpan<double> state, Span<double> derivatives) =>
        System(phase).Derivatives(0.0, state, derivatives);

    public override (Action Run, Func<double[]> Components) Momentum(double relative, double absolute)
    {
        OdeIntegrator<TSystem, NoEvents, DormandPrince853> integrator = new(System(0), default, OdeTolerances.Of(relative, absolute));
        double[] start = Start;
        double[] times = Times.ToArray();
        double[] state = new double[start.Length];
        return (Run, () => Components(state));

        void Run()
        {
            start.CopyTo(state, 0);
            for (int phase = 0; phase < times.Length - 1; phase++)
            {
                Enter(phase, state);
                integrator.System = System(phase);
                integrator.Start(times[phase], state);
                integrator.Run(times[phase + 1]);
                integrator.State.CopyTo(state);
            }
        }
    }
}
