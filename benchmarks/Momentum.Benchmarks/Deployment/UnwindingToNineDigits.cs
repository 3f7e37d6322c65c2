using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using Momentum.Numerics;
using Momentum.Tethers.Deployment;

namespace Momentum.Benchmarks.Deployment;

/// <summary>
/// Question: what does one unwinding cost when its error at the end is to be 1e-9? The same equations of motion with the
/// library's integrator and with MathNet.Numerics' Runge–Kutta method of order four, each at the loosest setting that
/// reaches this error, found before anything is timed. The same with SUNDIALS CVODE: sundials/run.sh.
/// </summary>
[MemoryDiagnoser]
public class UnwindingToNineDigits
{
    private const double Wanted = 1e-9;

    private DeploymentCase _case = DeploymentCase.InSpace();
    private OdeIntegrator<MechanismOde, NoEvents>? _integrator;
    private int _steps;

    [Params(false, true)]
    public bool Plane { get; set; }

    [GlobalSetup]
    public void FindSettings()
    {
        _case = Plane ? DeploymentCase.InThePlane() : DeploymentCase.InSpace();
        double[] reference = _case.Run(1e-13).State;
        double tolerance = 1e-4;
        while (DeploymentCase.Error(_case.Run(tolerance).State, reference) > Wanted)
        {
            tolerance *= 0.5;
        }

        _integrator = new(new MechanismOde(_case.Mechanism), default, OdeTolerances.Of(tolerance, 0.1 * tolerance));
        _steps = 64;
        while (DeploymentCase.Error(MathNet().AsArray(), reference) > Wanted)
        {
            _steps = _steps * 5 / 4;
        }

        (_, int accepted, long evaluations) = _case.Run(tolerance);
        Console.WriteLine(FormattableString.Invariant($"// tolerance {tolerance:G3}, {accepted} steps, {evaluations} evaluations; fixed steps {_steps}, {4 * _steps} evaluations"));
    }

    [Benchmark(Baseline = true, Description = "MathNet.Numerics, Runge–Kutta 4")]
    public double WithMathNet() => MathNet()[Mechanism.Rates + 2];

    [Benchmark(Description = "Momentum")]
    public double WithMomentum()
    {
        _integrator!.Start(0, _case.Start);
        _integrator.Run(DeploymentCase.Duration);
        return _integrator.State[Mechanism.Rates + 2];
    }

    private Vector<double> MathNet() => RungeKutta.FourthOrder(
        Vector<double>.Build.DenseOfArray(_case.Start), 0, DeploymentCase.Duration, _steps + 1, Derivatives)[^1];

    private Vector<double> Derivatives(double time, Vector<double> state)
    {
        double[] rates = new double[_case.Mechanism.Dimension];
        _case.Mechanism.Derivatives(state.AsArray(), rates);
        return Vector<double>.Build.Dense(rates);
    }
}
