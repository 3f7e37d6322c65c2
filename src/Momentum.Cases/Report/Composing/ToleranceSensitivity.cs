using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>How far the tolerance of each input, taken alone, moves the final spin.</summary>
internal static class ToleranceSensitivity
{
    /// <summary>The bars, largest first; null if no input that the motion depends on has a tolerance.</summary>
    public static Sensitivity? Of(Spread? spread, RotationalSpeed initial)
    {
        IReadOnlyList<InputEffect> effects = [.. (spread?.Effects ?? []).Where(e => e.Input.Text.Length > 0)];
        return effects.Count == 0
            ? null
            : new Sensitivity(
                new ChartAxis("final spin rate", "rpm"),
                [.. effects.Select(e => new SensitivityBar(e.Input.Path, GivenKey.ToleranceOf(e.Input.Text) is { Length: > 0 } tolerance ? tolerance : e.Input.Text, Rpm(e.Below), Rpm(e.Above)))],
                "One input at a time, one standard deviation either way, the design as sized. It tells where the spread comes from.");

        double Rpm(RotationalSpeed change) =>
            Solver.Rounded(change.RevolutionsPerMinute, initial.RevolutionsPerMinute);
    }
}
