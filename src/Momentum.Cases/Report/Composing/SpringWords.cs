using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>What spring cords forgive, as a report shows it.</summary>
internal static class SpringWords
{
    private const int Tries = 40;

    // Initial spins tried, either way of the nominal one, as a share of it: beyond any usual error of a spin-up.
    private const double Widest = 0.1;

    public static SpringSection Of(SpringCords springs) => new(
        springs.Words,
        [.. springs.Forgiveness.Select(f => new ForgivenRow(f.Error, Row(f.Springs), Row(f.WithoutStretch)))],
        SpinUp(springs));

    /// <summary>What the let-go cords do, for those nearby.</summary>
    public static string Caution(SpringCords springs) =>
        $"Each cord is still stretched by {new Figure(springs.Motion.AtLetGo.Stretch.Meters, "m", 3)} when it is let go, and whips back with the {new Figure(springs.LetGoEnergy.Joules, "J", 3)} in it.";

    private static Figure Row(AnswerFigure figure) => new(figure.Shown, figure.Unit, 3);

    private static LineChart SpinUp(SpringCords springs)
    {
        DespinHub hub = springs.Design.Hub;
        double nominal = hub.Spin.RevolutionsPerMinute;
        double[] tried = [.. Enumerable.Range(0, Tries + 1).Select(i => nominal * (1 + (Widest * ((2.0 * i / Tries) - 1))))];
        (double Initial, double Final)[] found = [.. tried.SelectMany(initial => Final(springs.Design, initial) is { } final ? [(initial, final)] : Array.Empty<(double, double)>())];
        return new LineChart
        {
            Title = "Final spin rate against initial spin rate",
            X = new ChartAxis("Initial spin rate", "rpm"),
            Y = new ChartAxis("Final spin rate", "rpm"),
            Series =
            [
                new ChartSeries("Spring cords", [.. found.Select(f => f.Initial)], [.. found.Select(f => f.Final)]),
                new ChartSeries("Without stretch", [tried[0], tried[^1]], [springs.WithoutStretch.ToInitialSpin * tried[0], springs.WithoutStretch.ToInitialSpin * tried[^1]]),
            ],
            Events = [new ChartEvent(nominal, "as stated")],
            Caption = found.Length == tried.Length ? "" : "Where the curve of the spring cords ends, they do not come to let-go.",
        };
    }

    private static double? Final(SpringCordDesign design, double rpm)
    {
        try
        {
            var hub = new DespinHub(design.Hub.SpinInertia, design.Hub.Radius, RotationalSpeed.FromRevolutionsPerMinute(rpm));
            return design.On(hub).Deploy().FinalSpin.RevolutionsPerMinute;
        }
        catch (ComputationRefusedException)
        {
            return null;
        }
    }
}
