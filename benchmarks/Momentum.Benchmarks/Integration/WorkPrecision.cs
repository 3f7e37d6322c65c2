using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Momentum.Benchmarks.Integration;

/// <summary>
/// All solvers on one problem: processor time against achieved error, and the ratios at 1e-9. Solvers and settings take turns,
/// round after round, and the best round of each counts, so that what else the machine does falls on all alike.
/// </summary>
internal static class WorkPrecision
{
    private const double AchievedError = 1e-9;
    private const int Rounds = 15;
    private const double ShortestBatch = 2e-3;

    private static readonly double[] _ratios = [1.0, 0.1, 0.01];

    /// <summary>Runs the comparison and writes the table and the plot.</summary>
    /// <param name="problem">What is integrated.</param>
    /// <param name="library">The shared library of cvode.c.</param>
    /// <param name="script">dop853.py.</param>
    /// <param name="results">Folder to write to.</param>
    public static void Run(Problem problem, string library, string script, string results)
    {
        Cvode cvode = new(library, problem);
        cvode.RequireSame(problem);
        using Scipy scipy = new(library, script, problem);
        List<Candidate> candidates = [.. Candidates(problem, cvode, scipy)];
        foreach (Candidate candidate in candidates)
        {
            candidate.Prepare(problem);
        }

        for (int round = 0; round < Rounds; round++)
        {
            candidates.ForEach(c => c.Measure());
        }

        // Ours has to reach the error with every tighter tolerance too; of the others the luckiest setting counts.
        Candidate own = candidates.Where(c => c.Solver == Candidate.Own).GroupBy(c => c.Ratio).Select(Loosest).OfType<Candidate>().MinBy(c => c.Seconds)!;
        List<Candidate> best = [own];
        best.AddRange(candidates.Where(c => c.Solver != Candidate.Own && c.Error <= AchievedError)
            .GroupBy(c => c.Solver).Select(g => g.MinBy(c => c.Seconds)!));

        StringBuilder text = new();
        text.AppendLine(CultureInfo.InvariantCulture, $"# {problem.Title}: time a run at an achieved error of 1e-9").AppendLine();
        text.AppendLine(problem.Description).AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $".NET {Environment.Version}, {Environment.ProcessorCount} processors, {RuntimeInformation.OSArchitecture}. Processor time, best of {Rounds} batches in turns, all solvers in one run; error: largest difference of a component at the end over the largest component. Absolute tolerance: the relative one times 1, 0.1 or 0.01, whichever is best for the solver. Momentum: the loosest tolerance from which on all tighter ones reach the error; the others: the fastest setting that reaches it. CVODE and SciPy get the same compiled right-hand side.").AppendLine();
        text.AppendLine("| solver | tolerance or steps | absolute over relative | achieved error | µs a run | times slower than Momentum |").AppendLine("|---|---|---|---|---|---|");
        foreach (Candidate c in best)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| {c.Solver} | {c.Setting:G3} | {c.Ratio} | {c.Error:0.0E+0} | {c.Seconds * 1e6:F1} | {c.Seconds / own.Seconds:F1} |");
        }

        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"A run of Momentum allocates {own.AllocatedBytes} bytes.");
        Console.Write(text.AppendLine());

        // The plot and the long table have of each solver the ratio that was best.
        List<Candidate> shown = [.. candidates.Where(c => best.Exists(b => b.Solver == c.Solver && b.Ratio == c.Ratio))];
        text.AppendLine("## All tolerances").AppendLine().AppendLine("| solver | tolerance or steps | achieved error | µs a run |").AppendLine("|---|---|---|---|");
        foreach (Candidate c in shown)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| {c.Solver} | {c.Setting:G3} | {c.Error:0.0E+0} | {c.Seconds * 1e6:F1} |");
        }

        Directory.CreateDirectory(results);
        File.WriteAllText(Path.Combine(results, $"{problem.Name}.md"), text.ToString());
        File.WriteAllText(Path.Combine(results, $"{problem.Name}.svg"), WorkPrecisionPlot.Of(shown));
    }

    private static Candidate? Loosest(IEnumerable<Candidate> fromLooseToTight) =>
        fromLooseToTight.Reverse().TakeWhile(c => c.Error <= AchievedError).LastOrDefault();

    private static IEnumerable<Candidate> Candidates(Problem problem, Cvode cvode, Scipy scipy)
    {
        foreach (double ratio in _ratios)
        {
            for (int i = 16; i <= 52; i++)
            {
                double relative = Math.Pow(10.0, -i / 4.0);
                yield return InProcess(Candidate.Own, relative, ratio, problem.Momentum(relative, ratio * relative));
            }
        }

        for (int steps = 64; steps < 10000; steps += steps / 4)
        {
            yield return InProcess("MathNet.Numerics RK4", steps, 1.0, problem.MathNet(steps));
        }

        foreach (bool bdf in (bool[])[false, true])
        {
            foreach (double ratio in _ratios)
            {
                for (int i = 16; i <= 56; i++)
                {
                    double relative = Math.Pow(10.0, -i / 4.0);
                    yield return InProcess(bdf ? "CVODE BDF" : "CVODE Adams", relative, ratio, cvode.Solver(bdf, relative, ratio * relative));
                }
            }
        }

        foreach (double ratio in _ratios)
        {
            for (int i = 16; i <= 52; i += 2)
            {
                double relative = Math.Pow(10.0, -i / 4.0);
                yield return new Candidate("SciPy DOP853", relative, ratio, runs => scipy.Run(relative, ratio * relative, runs), scipy.Components);
            }
        }

        Candidate InProcess(string solver, double setting, double ratio, (Action Run, Func<double[]> Components) solves) => new(
            solver,
            setting,
            ratio,
            runs =>
            {
                double begin = cvode.ProcessorSeconds();
                for (int i = 0; i < runs; i++)
                {
                    solves.Run();
                }

                return cvode.ProcessorSeconds() - begin;
            },
            solves.Components);
    }

    /// <summary>One solver with one setting.</summary>
    /// <param name="solver">Its name.</param>
    /// <param name="setting">Relative tolerance, or number of steps.</param>
    /// <param name="ratio">Absolute over relative tolerance.</param>
    /// <param name="batch">Makes so many runs and returns their processor seconds.</param>
    /// <param name="components">The components of equations.h at the end of the last run.</param>
    internal sealed class Candidate(string solver, double setting, double ratio, Func<int, double> batch, Func<double[]> components)
    {
        public const string Own = "Momentum";

        private int _runs = 1;

        public string Solver => solver;

        public double Setting => setting;

        public double Ratio => ratio;

        public double Error { get; private set; }

        /// <summary>Of the best round, for one run.</summary>
        public double Seconds { get; private set; } = double.PositiveInfinity;

        public long AllocatedBytes { get; private set; }

        /// <summary>Warms up, sets the length of a batch and finds the error.</summary>
        public void Prepare(Problem problem)
        {
            double once = batch(1);
            Error = problem.Error(components());
            _runs = (int)Math.Clamp(ShortestBatch / once, 1.0, 1000.0);
            long before = GC.GetAllocatedBytesForCurrentThread();
            batch(_runs);
            AllocatedBytes = (GC.GetAllocatedBytesForCurrentThread() - before) / _runs;
        }

        public void Measure() => Seconds = Math.Min(Seconds, batch(_runs) / _runs);
    }

    /// <summary>SciPy in a process of its own, which waits while the others have their turn.</summary>
    private sealed class Scipy : IDisposable
    {
        private readonly Process _process;
        private double[] _components = [];

        public Scipy(string library, string script, Problem problem)
        {
            _process = Process.Start(new ProcessStartInfo("/usr/bin/python3", [script, library, problem.Index.ToString(CultureInfo.InvariantCulture)])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
            })!;
        }

        public double Run(double relative, double absolute, int runs)
        {
            _process.StandardInput.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{relative:R} {absolute:R} {runs}"));
            _process.StandardInput.Flush();
            string line = _process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("SciPy ended. Is python3-scipy installed?");
            double[] numbers = [.. line.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
            _components = numbers[1..];
            return numbers[0];
        }

        public double[] Components() => _components;

        public void Dispose()
        {
            _process.StandardInput.Close();
            _process.WaitForExit();
            _process.Dispose();
        }
    }
}
