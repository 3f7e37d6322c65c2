using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>What spring cords forgive, as a report shows it.</summary>
internal static class SpringWords
{
    public static SpringSection Of(SpringCords springs) => new(
        springs.Words,
        springs.Forgiveness,
        SpinUp(springs));

    /// <summary>What the let-go cords do, for those nearby.</summary>
    public static string Caution(SpringCords springs) =>
        $"Each cord is still stretched by {new Figure(springs.Motion.AtLetGo.Stretch.Meters, "m", 3)} when it is let go, and whips back with the {new Figure(springs.LetGoEnergy.Joules, "J", 3)} in it.";

    private static LineChart SpinUp(SpringCords springs)
    {
        IReadOnlyList<(RotationalSpeed Initial, RotationalSpeed? Final)> tried = SpinUpSweep.Of(springs.Design);
        (double Initial, double Final)[] found = [.. tried.Where(t => t.Final is not null).Select(t => (t.Initial.RevolutionsPerMinute, t.Final!.Value.RevolutionsPerMinute))];
        double[] ends = [tried[0].Initial.RevolutionsPerMinute, tried[^1].Initial.RevolutionsPerMinute];
        return new LineChart
        {
            Title = "Final spin rate against initial spin rate",
            X = new ChartAxis("Initial spin rate", "rpm"),
            Y = new ChartAxis("Final spin rate", "rpm"),
            Series =
            [
                new ChartSeries("Spring cords", [.. found.Select(f => f.Initial)], [.. found.Select(f => f.Final)]),
                new ChartSeries("Without stretch", ends, [.. ends.Select(initial => springs.WithoutStretch.ToInitialSpin * initial)]),
            ],
            Events = [new ChartEvent(springs.Design.Hub.Spin.RevolutionsPerMinute, "as stated")],
            Caption = found.Length == tried.Count ? "" : "Where the curve of the spring cords ends, they do not come to let-go.",
        };
    }
}
