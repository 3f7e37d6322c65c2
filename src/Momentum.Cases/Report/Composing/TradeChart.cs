using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Tethers;

namespace Momentum.Cases.Report.Composing;

/// <summary>The chart of cord length against weight mass.</summary>
internal static class TradeChart
{
    /// <summary>The chart; none if nothing is traded.</summary>
    public static IEnumerable<LineChart> Of(IReadOnlyList<Trade> trades, PlanarMotion motion)
    {
        if (trades.Count == 0)
        {
            yield break;
        }

        PlanarDesign design = motion.Design;
        yield return new LineChart
        {
            Title = "Cord length against weight mass",
            X = new ChartAxis("Weight mass, each", "kg"),
            Y = new ChartAxis("Cord length, each", "m"),
            Series = [.. trades.Select(t => new ChartSeries(Name(t.LetGo), [.. t.WeightMasses.Select(m => m.Kilograms)], [.. t.CordLengths.Select(l => l.Meters)]))],
            Marks = [new ChartMark(design.WeightMass.Kilograms, design.CordLength.Meters, "this design")],
            Caption = $"Every point of the curves leaves the same final spin rate, {new Figure(motion.FinalSpin.RevolutionsPerMinute, "rpm", 3, 1e-9 * design.Hub.Spin.RevolutionsPerMinute)}.",
        };
    }

    private static string Name(LetGo letGo) =>
        letGo == LetGo.Tangent ? "let go at the tangent"
        : letGo == LetGo.Radial ? "let go radially"
        : $"let go at {new Figure(((LetGo.CordAngleRule)letGo).CordAngle.Degrees, "deg", 3)}";
}
