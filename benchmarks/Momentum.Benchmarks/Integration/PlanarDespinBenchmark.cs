using BenchmarkDotNet.Attributes;

namespace Momentum.Benchmarks.Integration;

/// <summary>
/// How much faster than MathNet.Numerics' Runge–Kutta is the library's integrator at the same achieved error of 1e-9? Tolerance
/// and number of steps are the loosest that reach it; the setup searches for them, so that no error is assumed.
/// </summary>
[MemoryDiagnoser]
public class PlanarDespinBenchmark
{
    private const double AchievedError = 1e-9;

    private PlanarDespinSolvers _momentum = null!;
    private int _steps;

    [GlobalSetup]
    public void FindSettings()
    {
        _momentum = new PlanarDespinSolvers(LoosestTolerance(AchievedError));
        _steps = FewestSteps(AchievedError);
    }

    [Benchmark(Baseline = true, Description = "MathNet.Numerics RungeKutta.FourthOrder")]
    public double MathNet()
    {
        _momentum.RunMathNet(_steps);
        return _momentum.State[2];
    }

    [Benchmark(Description = "Momentum OdeIntegrator")]
    public double Momentum()
    {
        _momentum.RunMomentum();
        return _momentum.State[2];
    }

    /// <summary>The loosest of the tolerances 10^(-i/4) from which on every tighter one keeps the error too.</summary>
    internal static double LoosestTolerance(double error)
    {
        double loosest = 1e-13;
        for (int i = 52; i >= 16; i--)
        {
            double tolerance = Math.Pow(10.0, -i / 4.0);
            PlanarDespinSolvers solvers = new(tolerance);
            solvers.RunMomentum();
            if (PlanarDespinProblem.Error(solvers.State) > error)
            {
                break;
            }

            loosest = tolerance;
        }

        return loosest;
    }

    internal static int FewestSteps(double error)
    {
        PlanarDespinSolvers solvers = new(1e-9);
        for (int steps = 64; ; steps += steps / 8)
        {
            solvers.RunMathNet(steps);
            if (PlanarDespinProblem.Error(solvers.State) <= error)
            {
                return steps;
            }
        }
    }
}
