using Momentum.Tool.Report.Model;

namespace Momentum.Tool.Report.Pictures;

/// <summary>
/// The unwinding as a multiple exposure, seen along the spin axis: what the animation shows, on paper. The exposures are
/// equally spaced in time from release of the weights to let-go.
/// </summary>
internal static class CordPathsPicture
{
    private const int Exposures = 8;
    private const double Half = 190;
    private const double Margin = 28;

    /// <summary>The whole figure.</summary>
    public static Markup Draw(Unwinding motion)
    {
        double end = motion.LetGo ?? motion.Frames[^1].Time;
        UnwindingFrame[] exposed =
            [.. Enumerable.Range(0, Exposures).Select(k => Nearest(motion, end * k / (Exposures - 1)))];
        UnwindingFrame last = exposed[^1];
        var to = new Drawing(Half, (Half - Margin) / Reach(exposed));
        double hub = motion.HubRadius;
        return Markup.Of($"""
            <figure class="paths">
            <figcaption><h3>Cord paths</h3><p class="axis-name">Seen along the spin axis, in axes that do not turn</p></figcaption>
            <svg class="plot" viewBox="0 0 380 380" role="img" aria-label="{Describe(exposed)}">
            {Markup.Each(Enumerable.Range(0, last.Cords.Count), c => Path(motion, end, c, to))}
            {Markup.Each(exposed.Index(), e => Exposure(e.Item, hub, 0.3 + (0.7 * e.Index / (Exposures - 1)), to))}
            <circle class="hub" cx="{to.X(0)}" cy="{to.Y(0)}" r="{to.Size(hub)}"/>
            <line class="hub-mark" x1="{to.X(0)}" y1="{to.Y(0)}" x2="{to.X(hub * Math.Cos(last.HubAngle))}" y2="{to.Y(hub * Math.Sin(last.HubAngle))}"/>
            {Markup.Each(exposed.Skip(1), f => TimeOf(f, to))}
            {to.ScaleBar()}
            </svg>
            <p class="caption">{Exposures} instants equally spaced from release of the weights to {(motion.LetGo is null ? "the end" : "let-go")}; each is labelled with its time in s. The line on the hub is its mark at the last one.</p>
            </figure>
            """);
    }

    private static Markup Path(Unwinding motion, double end, int cord, Drawing to)
    {
        string points = string.Join(' ', motion.Frames
            .Where(f => f.Time <= end)
            .Select(f => $"{to.X(f.Cords[cord].WeightX)},{to.Y(f.Cords[cord].WeightY)}"));
        return Markup.Of($"<polyline class=\"trail\" points=\"{points}\"/>");
    }

    private static Markup Exposure(UnwindingFrame frame, double hub, double opacity, Drawing to) => Markup.Of($"""
        <g opacity="{Drawing.Text(opacity)}">{Markup.Each(frame.Cords.Index(), c => Cord(c.Item, Ink.OfCord(c.Index), hub, to))}</g>
        """);

    private static Markup Cord(CordFrame cord, int ink, double hub, Drawing to) => Markup.Of($"""
        <line class="cord stroke-curve-{ink} dash-{ink}" x1="{to.X(hub * Math.Cos(cord.TangentAngle))}" y1="{to.Y(hub * Math.Sin(cord.TangentAngle))}" x2="{to.X(cord.WeightX)}" y2="{to.Y(cord.WeightY)}"/><circle class="fill-curve-{ink}" cx="{to.X(cord.WeightX)}" cy="{to.Y(cord.WeightY)}" r="4.5"/>
        """);

    /// <summary>The time beside the first weight, moved outward so that it does not sit on the cord.</summary>
    private static Markup TimeOf(UnwindingFrame frame, Drawing to)
    {
        CordFrame cord = frame.Cords[0];
        double distance = Math.Sqrt((cord.WeightX * cord.WeightX) + (cord.WeightY * cord.WeightY));
        double outward = 1 + (17 / (to.Scale * distance));
        return Markup.Of($"""
            <text class="fill-text halo" x="{to.X(cord.WeightX * outward)}" y="{to.Y(cord.WeightY * outward)}" text-anchor="middle" dominant-baseline="middle" font-size="12">{new Figure(frame.Time, "", 3).Number}</text>
            """);
    }

    private static string Describe(UnwindingFrame[] exposed)
    {
        UnwindingFrame last = exposed[^1];
        return $"Cord paths seen along the spin axis: {last.Cords.Count} cords unwind from the hub and trail behind its turning; "
            + string.Join(", ", exposed.Select(f => $"{new Figure(f.FreeLength, "m", 3)} free at {new Figure(f.Time, "s", 3)}"))
            + $". The hub turns through {new Figure(last.HubAngle * 180 / Math.PI, "°", 3)} meanwhile.";
    }

    private static double Reach(UnwindingFrame[] exposed) =>
        exposed.SelectMany(f => f.Cords).Max(c => Math.Sqrt((c.WeightX * c.WeightX) + (c.WeightY * c.WeightY)));

    private static UnwindingFrame Nearest(Unwinding motion, double time) => motion.Frames.MinBy(f => Math.Abs(f.Time - time))!;
}
