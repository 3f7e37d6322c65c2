using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Momentum.Benchmarks.Integration;

/// <summary>
/// All solvers on the planar de-spin in one run: time against achieved error, and the ratios at 1e-9. Builds the C program
/// against CVODE and calls SciPy; leaves out, and says so, what the machine does not have.
/// </summary>
internal static class WorkPrecision
{
    private const double AchievedError = 1e-9;

    private readonly record struct Row(string Solver, double Tolerance, double Error, double Nanoseconds);

    /// <summary>Runs the comparison and writes planar-despin.md and planar-despin.svg.</summary>
    /// <param name="sources">Folder of cvode_planar.c and scipy_planar.py.</param>
    /// <param name="results">Folder to write to.</param>
    public static void Run(string sources, string results)
    {
        string program = Path.Combine(Path.GetTempPath(), "momentum-cvode-planar");
        List<Row> rows = [.. Managed()];
        rows.AddRange(External("gcc", $"-O3 -march=native -o {program} {Path.Combine(sources, "cvode_planar.c")} -lsundials_cvode -lsundials_nvecserial -lsundials_sunmatrixdense -lsundials_sunlinsoldense -lsundials_sunnonlinsolfixedpoint -lm"));
        rows.AddRange(External(program, ""));
        rows.AddRange(External("/usr/bin/python3", Path.Combine(sources, "scipy_planar.py")));

        StringBuilder text = new();
        text.AppendLine("# Planar de-spin: time a run at an achieved error of 1e-9").AppendLine();
        text.AppendLine(CultureInfo.InvariantCulture, $".NET {Environment.Version}, {Environment.ProcessorCount} processors, {System.Runtime.InteropServices.RuntimeInformation.OSArchitecture}. Best of 15 batches, all solvers in one run; the loosest tolerance (the fewest steps) from which on all tighter ones reach the error.").AppendLine();
        text.AppendLine("| solver | tolerance or steps | achieved error | µs a run | times slower than Momentum |").AppendLine("|---|---|---|---|---|");
        List<Row> best = [.. rows.GroupBy(r => r.Solver).Select(Loosest).OfType<Row>()];
        double own = best.First(r => r.Solver == "Momentum").Nanoseconds;
        foreach (Row row in best)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| {row.Solver} | {row.Tolerance:G3} | {row.Error:0.0E+0} | {row.Nanoseconds / 1000.0:F1} | {row.Nanoseconds / own:F1} |");
        }

        Console.Write(text);
        text.AppendLine().AppendLine("## All tolerances").AppendLine().AppendLine("| solver | tolerance or steps | achieved error | µs a run |").AppendLine("|---|---|---|---|");
        foreach (Row row in rows)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"| {row.Solver} | {row.Tolerance:G3} | {row.Error:0.0E+0} | {row.Nanoseconds / 1000.0:F1} |");
        }

        Directory.CreateDirectory(results);
        File.WriteAllText(Path.Combine(results, "planar-despin.md"), text.ToString());
        File.WriteAllText(Path.Combine(results, "planar-despin.svg"), Picture(rows));
    }

    private static Row? Loosest(IEnumerable<Row> ofOneSolver)
    {
        // Rows come from loose to tight.
        Row? found = null;
        foreach (Row row in ofOneSolver.Reverse())
        {
            if (row.Error > AchievedError)
            {
                break;
            }

            found = row;
        }

        return found;
    }

    private static IEnumerable<Row> Managed()
    {
        for (int i = 16; i <= 52; i++)
        {
            double tolerance = Math.Pow(10.0, -i / 4.0);
            PlanarDespinSolvers solvers = new(tolerance);
            double time = BestTime(solvers.RunMomentum, 200);
            yield return new Row("Momentum", tolerance, PlanarDespinProblem.Error(solvers.State), time);
        }

        PlanarDespinSolvers mathNet = new(1e-9);
        for (int steps = 64; steps < 20000; steps += steps / 3)
        {
            int count = steps;
            double time = BestTime(() => mathNet.RunMathNet(count), 20);
            yield return new Row("MathNet.Numerics RK4", steps, PlanarDespinProblem.Error(mathNet.State), time);
        }
    }

    private static double BestTime(Action run, int repeats)
    {
        // Long enough for the runtime to compile the loop for good.
        long start = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(start).TotalMilliseconds < 300.0)
        {
            run();
        }

        double best = double.PositiveInfinity;
        for (int batch = 0; batch < 15; batch++)
        {
            long begin = Stopwatch.GetTimestamp();
            for (int i = 0; i < repeats; i++)
            {
                run();
            }

            best = Math.Min(best, Stopwatch.GetElapsedTime(begin).TotalNanoseconds / repeats);
        }

        return best;
    }

    private static List<Row> External(string program, string arguments)
    {
        List<Row> rows = [];
        try
        {
            using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
            while (process.StandardOutput.ReadLine() is { } line)
            {
                string[] parts = line.Split(' ');
                rows.Add(new Row(parts[0], Number(parts[1]), Number(parts[2]), Number(parts[3])));
            }

            process.WaitForExit();
            if (process.ExitCode != 0)
            {
                Console.Error.WriteLine($"{program} ended with {process.ExitCode}: left out.");
            }
        }
        catch (System.ComponentModel.Win32Exception e)
        {
            Console.Error.WriteLine($"{program} cannot be started ({e.Message}): left out.");
        }

        return rows;
    }

    private static double Number(string text)
    {
        return double.Parse(text, CultureInfo.InvariantCulture);
    }

    /// <summary>Work-precision plot: achieved error to the right from 1e-3 to 1e-14, time upward from 1 µs to 100 ms.</summary>
    private static string Picture(List<Row> rows)
    {
        string[] colours = ["#0072b2", "#d55e00", "#009e73", "#cc79a7", "#56b4e9"];
        string[] marks = ["", "6 3", "2 2", "8 3 2 3", "1 3"];
        static double X(double error)
        {
            return 70.0 + (50.0 * (-3.0 - Math.Log10(Math.Max(error, 1e-14))));
        }

        static double Y(double nanoseconds)
        {
            return 430.0 - (80.0 * Math.Log10(nanoseconds / 1000.0));
        }

        StringBuilder svg = new();
        svg.AppendLine("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 860 490\" font-family=\"sans-serif\" font-size=\"13\" role=\"img\" aria-label=\"Time a run against achieved error for each solver\"><rect width=\"860\" height=\"490\" fill=\"#fff\"/>");
        for (int decade = 3; decade <= 14; decade++)
        {
            double x = 70.0 + (50.0 * (decade - 3));
            svg.AppendLine(CultureInfo.InvariantCulture, $"<path d=\"M{x} 30V430\" stroke=\"#ddd\"/><text x=\"{x}\" y=\"448\" text-anchor=\"middle\">1e-{decade}</text>");
        }

        string[] times = ["1 µs", "10 µs", "100 µs", "1 ms", "10 ms", "100 ms"];
        for (int decade = 0; decade < times.Length; decade++)
        {
            double y = 430.0 - (80.0 * decade);
            svg.AppendLine(CultureInfo.InvariantCulture, $"<path d=\"M70 {y}H620\" stroke=\"#ddd\"/><text x=\"62\" y=\"{y + 4}\" text-anchor=\"end\">{times[decade]}</text>");
        }

        svg.AppendLine("<text x=\"345\" y=\"475\" text-anchor=\"middle\">achieved relative error</text>");
        int index = 0;
        foreach (IGrouping<string, Row> solver in rows.GroupBy(r => r.Solver))
        {
            string points = string.Join(' ', solver.Select(r => string.Create(CultureInfo.InvariantCulture, $"{X(r.Error):F1},{Y(r.Nanoseconds):F1}")));
            string style = $"fill=\"none\" stroke=\"{colours[index % 5]}\" stroke-width=\"2\" stroke-dasharray=\"{marks[index % 5]}\"";
            int y = 50 + (24 * index);
            svg.AppendLine(CultureInfo.InvariantCulture, $"<polyline points=\"{points}\" {style}/><path d=\"M640 {y}h36\" {style}/><text x=\"684\" y=\"{y + 4}\">{solver.Key}</text>");
            index++;
        }

        return svg.AppendLine("</svg>").ToString();
    }
}
