using System.Runtime.InteropServices;

namespace Momentum.Benchmarks.Integration;

/// <summary>The shared library of cvode.c: CVODE's runs, the right-hand side, and the processor time of this thread.</summary>
internal sealed class Cvode
{
    private readonly New _new;
    private readonly Run _run;
    private readonly Derivative _derivatives;
    private readonly Start _start;
    private readonly Seconds _seconds;
    private readonly int _problem;

    public Cvode(string library, Problem problem)
    {
        nint handle = NativeLibrary.Load(library);
        _new = Export<New>("cvode_new");
        _run = Export<Run>("cvode_run");
        _derivatives = Export<Derivative>("derivatives");
        _start = Export<Start>("start");
        _seconds = Export<Seconds>("processor_seconds");
        _problem = problem.Index;

        T Export<T>(string name) => Marshal.GetDelegateForFunctionPointer<T>(NativeLibrary.GetExport(handle, name));
    }

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate nint New(int problem, int bdf, double relative, double absolute);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate int Run(nint solver, [Out] double[] end);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate void Derivative(int problem, int phase, [In] double[] state, [Out] double[] derivatives);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate void Start(int problem, [Out] double[] state);

    [UnmanagedFunctionPointer(CallingConvention.Cdecl)]
    private delegate double Seconds();

    public double ProcessorSeconds() => _seconds();

    /// <summary>A run by Adams' methods or the backward differentiation formulas, again and again. Kept to the end of the program.</summary>
    public (Action Run, Func<double[]> Components) Solver(bool bdf, double relative, double absolute)
    {
        nint solver = _new(_problem, bdf ? 1 : 0, relative, absolute);
        double[] end = new double[64];
        return (() =>
        {
            if (_run(solver, end) != 0)
            {
                Array.Fill(end, double.NaN);
            }
        }, () => end);
    }

    /// <summary>Refuses to compare what is not the same problem: start and derivatives, at the start and at the end.</summary>
    public void RequireSame(Problem problem)
    {
        ReadOnlySpan<int> places = problem.Places;
        double[] own = new double[problem.Start.Length];
        double[] slope = new double[own.Length];
        double[] state = new double[places.Length];
        double[] derivatives = new double[places.Length];
        _start(_problem, state);
        for (int i = 0; i < places.Length; i++)
        {
            Require(state[i], problem.Start[places[i]], 1.0, "start", i);
        }

        for (int phase = 0; phase < problem.Times.Length - 1; phase++)
        {
            // The start is a state of the first phase, the end one of the last.
            ReadOnlySpan<double> at = phase == 0 ? state : problem.End;
            problem.Start.CopyTo(own, 0);
            for (int i = 0; i < places.Length; i++)
            {
                own[places[i]] = at[i];
            }

            problem.Derivatives(phase, own, slope);
            _derivatives(_problem, phase, at.ToArray(), derivatives);
            double size = derivatives.Max(Math.Abs);
            for (int i = 0; i < places.Length; i++)
            {
                Require(derivatives[i], slope[places[i]], size, $"derivative in phase {phase}", i);
            }
        }

        static void Require(double theirs, double ours, double size, string what, int component)
        {
            // Some operations, each with its rounding.
            if (!(Math.Abs(theirs - ours) <= 1e-14 * size))
            {
                throw new InvalidOperationException(FormattableString.Invariant($"{what}, component {component}: {ours:R} here, {theirs:R} in equations.h."));
            }
        }
    }
}
