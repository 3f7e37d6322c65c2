using System.Globalization;
using Momentum.Cases.Report.Model;
using Momentum.Quantities;
using Momentum.Tethers.Deployment;

namespace Momentum.Cases.Report.Pictures;

/// <summary>
/// Where the hub's spin axis and its angular momentum point, seen along the spin axis at the start: the distance from the
/// middle is the angle away from that axis.
/// </summary>
internal static class PointingPicture
{
    private const double Half = 190;
    private const double Margin = 26;

    // With less than this of the momentum at the start left, a small push turns it by any angle, and the picture would show
    // nothing but that.
    private const double EnoughMomentum = 0.05;

    /// <summary>The whole figure.</summary>
    public static Markup Draw(Unwinding motion)
    {
        (double X, double Y)[] axis = [.. motion.Frames.Select(f => Angles(f.Attitude.Apply(Direction<HubAxes>.ZAxis)))];
        (double X, double Y)[] momentum = [.. motion.Frames.TakeWhile(f => f.Momentum.Share >= EnoughMomentum).Select(f => Angles(f.Momentum.Direction))];
        double ring = Ring(axis.Concat(momentum).Max(p => Math.Sqrt((p.X * p.X) + (p.Y * p.Y))));
        var to = new Drawing(Half, (Half - Margin) / ring);
        return Markup.Of($"""
            <figure>
            <figcaption><h3>Where the axes point</h3><p class="axis-name">Angle from the spin axis at the start, °</p><ul class="legend">{Sample(1, "spin axis")}{Sample(4, "angular momentum of the hub")}</ul></figcaption>
            <svg class="plot" viewBox="0 0 380 380" role="img" aria-label="{Describe(motion, axis, momentum)}">
            {Markup.Each([0.5, 1.0], part => Circle(part * ring, to))}
            <path class="stroke-grid" d="M{Drawing.Text(Margin)} {Drawing.Text(Half)}H{Drawing.Text((2 * Half) - Margin)}M{Drawing.Text(Half)} {Drawing.Text(Margin)}V{Drawing.Text((2 * Half) - Margin)}"/>
            {Path(axis, 1, to)}
            {Path(momentum, 4, to)}
            </svg>
            <p class="caption">Seen along the spin axis, from the start to {new Figure(motion.Frames[^1].Time, "s", 3).ToString()}; dots mark the ends. The angular momentum is drawn as long as a twentieth of it is left; after that it points wherever the last small push left it.</p>
            </figure>
            """);
    }

    private static Markup Sample(int ink, string name) => Markup.Of(
        $"<li><svg viewBox=\"0 0 36 8\" aria-hidden=\"true\"><line class=\"stroke-curve-{ink} dash-{ink}\" x1=\"1\" x2=\"35\" y1=\"4\" y2=\"4\"/></svg>{name}</li>");

    private static Markup Circle(double degrees, Drawing to) => Markup.Of($"""
        <circle class="ring" cx="{to.X(0)}" cy="{to.Y(0)}" r="{to.Size(degrees)}"/><text class="fill-text halo" x="{to.X(0)}" y="{to.Y(degrees)}" dy="-3" text-anchor="middle" font-size="12">{new Figure(degrees, "", 2).Number}°</text>
        """);

    private static Markup Path((double X, double Y)[] path, int ink, Drawing to) => Markup.Of($"""
        <polyline class="cord stroke-curve-{ink} dash-{ink}" points="{string.Join(' ', path.Select(p => $"{to.X(p.X)},{to.Y(p.Y)}"))}"/><circle class="fill-curve-{ink}" cx="{to.X(path[^1].X)}" cy="{to.Y(path[^1].Y)}" r="4.5"/>
        """);

    private static (double X, double Y) Angles(Direction<StageAxes> direction)
    {
        double across = Math.Sqrt((direction.X * direction.X) + (direction.Y * direction.Y));
        double angle = Math.Atan2(across, direction.Z) * 180 / Math.PI;
        return across > 0 ? (angle * direction.X / across, angle * direction.Y / across) : (angle, 0);
    }

    /// <summary>A round angle that holds all: 1, 2 or 5 times a power of ten, or the whole sphere.</summary>
    private static double Ring(double largest)
    {
        double wanted = Math.Clamp(largest, 1e-3, 180);
        double power = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        double leading = wanted / power;
        return Math.Min(180, power * (leading <= 1 ? 1 : leading <= 2 ? 2 : leading <= 5 ? 5 : 10));
    }

    private static string Describe(Unwinding motion, (double X, double Y)[] axis, (double X, double Y)[] momentum)
    {
        return string.Create(CultureInfo.InvariantCulture, $"Where the axes point, from {new Figure(motion.Frames[0].Time, "s", 3)} to {new Figure(motion.Frames[^1].Time, "s", 3)}. ")
            + $"The spin axis goes as far as {Largest(axis)} from where it pointed at the start, the hub's angular momentum, as long as a twentieth of it is left, as far as {Largest(momentum)}.";

        static Figure Largest((double X, double Y)[] path) => new(path.Max(p => Math.Sqrt((p.X * p.X) + (p.Y * p.Y))), "°", 3);
    }
}
