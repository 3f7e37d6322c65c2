using System.Globalization;
using System.Text;

namespace Momentum.Benchmarks.Integration;

/// <summary>Time a run against achieved error, both in decades: a line a solver, told apart by colour and by dashes.</summary>
internal static class WorkPrecisionPlot
{
    private const int LoosestDecade = 3;
    private const int TightestDecade = 14;
    private const double Left = 70.0;
    private const double Bottom = 430.0;
    private const double ErrorDecade = 50.0;
    private const double TimeDecade = 80.0;

    public static string Of(IReadOnlyCollection<WorkPrecision.Candidate> candidates)
    {
        string[] colours = ["#0072b2", "#d55e00", "#009e73", "#cc79a7", "#56b4e9"];
        string[] marks = ["", "6 3", "2 2", "8 3 2 3", "1 3"];

        // Five decades of time, from the one that the fastest is in.
        int first = (int)Math.Floor(Math.Log10(candidates.Min(c => c.Seconds)));
        string[] units = ["1 µs", "10 µs", "100 µs", "1 ms", "10 ms", "100 ms", "1 s"];
        StringBuilder svg = new();
        svg.AppendLine("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 860 490\" font-family=\"sans-serif\" font-size=\"13\" role=\"img\" aria-label=\"Time a run against achieved error for each solver\"><rect width=\"860\" height=\"490\" fill=\"#fff\"/>");
        for (int decade = LoosestDecade; decade <= TightestDecade; decade++)
        {
            double x = X(Math.Pow(10.0, -decade));
            svg.AppendLine(CultureInfo.InvariantCulture, $"<path d=\"M{x:F0} 30V430\" stroke=\"#ddd\"/><text x=\"{x:F0}\" y=\"448\" text-anchor=\"middle\">1e-{decade}</text>");
        }

        for (int decade = 0; decade <= 5; decade++)
        {
            double y = Bottom - (TimeDecade * decade);
            svg.AppendLine(CultureInfo.InvariantCulture, $"<path d=\"M70 {y}H620\" stroke=\"#ddd\"/><text x=\"62\" y=\"{y + 4}\" text-anchor=\"end\">{units[first + 6 + decade]}</text>");
        }

        svg.AppendLine("<text x=\"345\" y=\"475\" text-anchor=\"middle\">achieved relative error</text><text x=\"345\" y=\"20\" text-anchor=\"middle\">processor time a run</text>");
        int index = 0;
        foreach (IGrouping<string, WorkPrecision.Candidate> solver in candidates.GroupBy(c => c.Solver))
        {
            string points = string.Join(' ', solver
                .Where(c => c.Error is > 0 and < 1e-3)
                .Select(c => string.Create(CultureInfo.InvariantCulture, $"{X(c.Error):F1},{Y(c.Seconds):F1}")));
            string style = $"fill=\"none\" stroke=\"{colours[index % 5]}\" stroke-width=\"2\" stroke-dasharray=\"{marks[index % 5]}\"";
            int y = 50 + (24 * index);
            svg.AppendLine(CultureInfo.InvariantCulture, $"<polyline points=\"{points}\" {style}/><path d=\"M640 {y}h36\" {style}/><text x=\"684\" y=\"{y + 4}\">{solver.Key}</text>");
            index++;
        }

        return svg.AppendLine("</svg>").ToString();

        static double X(double error) => Left + (ErrorDecade * (-LoosestDecade - Math.Log10(Math.Max(error, 1e-14))));
        double Y(double seconds) => Math.Max(Bottom - (TimeDecade * (Math.Log10(seconds) - first)), 30.0);
    }
}
