using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers.Deployment;

namespace Momentum.Cases.Report.Pictures;

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
        double hub = motion.Hub.Radius;
        (double markX, double markY) = Mark(last, hub);
        return Markup.Of($"""
            <figure class="paths">
            <figcaption><h3>Cord paths</h3><p class="axis-name">Seen along the spin axis, in axes that do not turn</p></figcaption>
            <svg class="plot" viewBox="0 0 380 380" role="img" aria-label="{Describe(exposed)}">
            {Markup.Each(Enumerable.Range(0, last.Cords.Count), c => Path(motion, end, c, to))}
            {Markup.Each(exposed.Index(), e => Exposure(motion, e.Item, 0.3 + (0.7 * e.Index / (Exposures - 1)), to))}
            <circle class="hub" cx="{to.X(0)}" cy="{to.Y(0)}" r="{to.Size(hub)}"/>
            <line class="hub-mark" x1="{to.X(0)}" y1="{to.Y(0)}" x2="{to.X(markX)}" y2="{to.Y(markY)}"/>
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
            .Select(f => $"{to.X(f.Cords[cord].Weight.X.Meters)},{to.Y(f.Cords[cord].Weight.Y.Meters)}"));
        return Markup.Of($"<polyline class=\"trail\" points=\"{points}\"/>");
    }

    private static Markup Exposure(Unwinding motion, UnwindingFrame frame, double opacity, Drawing to) => Markup.Of($"""
        <g opacity="{Drawing.Text(opacity)}">{Markup.Each(Enumerable.Range(0, frame.Cords.Count), c => Cord(motion, frame, c, to))}</g>
        """);

    private static Markup Cord(Unwinding motion, UnwindingFrame frame, int cord, Drawing to)
    {
        int ink = Ink.OfCord(cord);
        Position<StageAxes> root = motion.Root(frame, cord);
        Position<StageAxes> weight = frame.Cords[cord].Weight;
        string line = string.Join(' ', frame.Cords[cord].Joints.Prepend(root).Append(weight).Select(p => $"{to.X(p.X.Meters)},{to.Y(p.Y.Meters)}"));
        Markup drawn = !frame.Cords[cord].Attached ? Markup.None : Markup.Of($"""
            <polyline class="cord stroke-curve-{ink} dash-{ink}" points="{line}"/>
            """);
        return Markup.Of($"""
            {drawn}<circle class="fill-curve-{ink}" cx="{to.X(weight.X.Meters)}" cy="{to.Y(weight.Y.Meters)}" r="4.5"/>
            """);
    }

    /// <summary>Where the hub's mark points, on its rim.</summary>
    private static (double X, double Y) Mark(UnwindingFrame frame, double radius)
    {
        Direction<StageAxes> mark = frame.Attitude.Apply(Direction<HubAxes>.XAxis);
        return (radius * mark.X, radius * mark.Y);
    }

    /// <summary>The time beside the first weight, moved outward so that it does not sit on the cord.</summary>
    private static Markup TimeOf(UnwindingFrame frame, Drawing to)
    {
        (double x, double y) = (frame.Cords[0].Weight.X.Meters, frame.Cords[0].Weight.Y.Meters);
        double outward = 1 + (17 / (to.Scale * Math.Sqrt((x * x) + (y * y))));
        return Markup.Of($"""
            <text class="fill-text halo" x="{to.X(x * outward)}" y="{to.Y(y * outward)}" text-anchor="middle" dominant-baseline="middle" font-size="12">{new Figure(frame.Time, "", 3).Number}</text>
            """);
    }

    private static string Describe(UnwindingFrame[] exposed)
    {
        string lengths = string.Join(", ", exposed.Select(f => $"{new Figure(f.Cords[0].FreeLength, "m", 3)} free at {new Figure(f.Time, "s", 3)}"));
        return $"Cord paths seen along the spin axis: {exposed[0].Cords.Count} cords unwind from the hub and trail behind its turning; of the first, {lengths}.";
    }

    private static double Reach(UnwindingFrame[] exposed) => exposed
        .SelectMany(f => f.Cords)
        .Max(c => Math.Sqrt(Math.Pow(c.Weight.X.Meters, 2) + Math.Pow(c.Weight.Y.Meters, 2)));

    private static UnwindingFrame Nearest(Unwinding motion, double time) => motion.Frames.MinBy(f => Math.Abs(f.Time - time))!;
}
