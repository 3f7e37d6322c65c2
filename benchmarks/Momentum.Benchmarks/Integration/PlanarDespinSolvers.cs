using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using Momentum.Numerics;

namespace Momentum.Benchmarks.Integration;

/// <summary>The managed solvers on the common problem; each run starts anew and ends with the state at the end time.</summary>
internal sealed class PlanarDespinSolvers
{
    private readonly OdeIntegrator<PlanarDespinProblem.Equations, NoEvents> _integrator;
    private readonly double[] _state = new double[4];
    private readonly Vector<double> _start = Vector<double>.Build.Dense(PlanarDespinProblem.Start.ToArray());

    public PlanarDespinSolvers(double tolerance)
    {
        _integrator = new(default, default, OdeTolerances.Of(tolerance, tolerance));
    }

    public ReadOnlySpan<double> State
    {
        get { return _state; }
    }

    public long Evaluations { get; private set; }

    public void RunMomentum()
    {
        _integrator.System.IsHinging = false;
        _integrator.Start(PlanarDespinProblem.Begin, PlanarDespinProblem.Start);
        _integrator.Run(PlanarDespinProblem.Unwound);
        Evaluations = _integrator.Evaluations;
        _integrator.State.CopyTo(_state);
        _state[1] = 0.0;
        _integrator.System.IsHinging = true;
        _integrator.Start(PlanarDespinProblem.Unwound, _state);
        _integrator.Run(PlanarDespinProblem.End);
        Evaluations += _integrator.Evaluations;
        _integrator.State.CopyTo(_state);
    }

    /// <summary>MathNet.Numerics' classical method of order 4 with a fixed step, the same number of steps a second in both phases.</summary>
    public void RunMathNet(int steps)
    {
        int first = (int)Math.Round(steps * (PlanarDespinProblem.Unwound - PlanarDespinProblem.Begin) / (PlanarDespinProblem.End - PlanarDespinProblem.Begin));
        Vector<double>[] unwinding = RungeKutta.FourthOrder(_start, PlanarDespinProblem.Begin, PlanarDespinProblem.Unwound, first, static (t, y) =>
        {
            double[] f = new double[4];
            PlanarDespinProblem.Unwinding(y.AsArray(), f);
            return Vector<double>.Build.Dense(f);
        });
        Vector<double> middle = unwinding[^1].Clone();
        middle[1] = 0.0;
        Vector<double>[] hinging = RungeKutta.FourthOrder(middle, PlanarDespinProblem.Unwound, PlanarDespinProblem.End, steps - first, static (t, y) =>
        {
            double[] f = new double[4];
            PlanarDespinProblem.Hinging(y.AsArray(), f);
            return Vector<double>.Build.Dense(f);
        });
        hinging[^1].AsArray().CopyTo(_state, 0);
    }
}
