using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Momentum.Tool.Report.Model;

namespace Momentum.Tool.Report.Pictures;

/// <summary>
/// The stage of the animation and the frames it plays. The stage is drawn in metres about the hub's centre, y up, so that
/// what the page shows can be compared with the trajectory directly.
/// </summary>
internal static class UnwindingStage
{
    /// <summary>The stage with everything on it that the script moves.</summary>
    public static Markup Draw(Unwinding motion)
    {
        double view = View(motion);
        var to = new Drawing(190, 190 / view);
        string hub = Metres(motion.HubRadius);
        return Markup.Of($"""
            <svg id="stage" viewBox="{Metres(-view)} {Metres(-view)} {Metres(2 * view)} {Metres(2 * view)}" role="img" aria-label="Animation of the unwinding, seen along the spin axis: the hub, a line on it that shows its turning, the cords and the weights. The figures beside it give the same in numbers.">
            <g transform="scale(1 -1)">
            {Markup.Each(Cords(motion), c => Markup.Of($"<polyline class=\"trail\" id=\"trail-{c}\"/>"))}
            <g id="hub"><circle class="hub" r="{hub}"/><path class="hub-sector" d="M0 0H{hub}A{hub} {hub} 0 0 1 0 {hub}ZM0 0H-{hub}A{hub} {hub} 0 0 1 0 -{hub}Z"/><line class="hub-mark" x2="{hub}"/></g>
            {Markup.Each(Cords(motion), c => Cord(c, Ink.OfCord(c - 1), Metres(0.022 * view)))}
            </g>
            </svg>
            <svg class="stage-scale" viewBox="0 0 380 380" aria-hidden="true">{to.ScaleBar()}</svg>
            """);
    }

    private static Markup Cord(int cord, int ink, string weightRadius) => Markup.Of($"""
        <path class="cord wound stroke-curve-{ink}" id="wound-{cord}"/><line class="cord stroke-curve-{ink} dash-{ink}" id="cord-{cord}"/><circle class="fill-curve-{ink}" id="weight-{cord}" r="{weightRadius}"/>
        """);

    /// <summary>The frames as JSON, six digits each, safe inside a script element.</summary>
    public static Markup Data(Unwinding motion)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteNumber("hub_radius_m", motion.HubRadius);
            json.WriteString("spin_unit", motion.SpinUnit);
            json.WriteNumber("poster_s", 0.8 * (motion.LetGo ?? motion.Frames[^1].Time));
            WriteDecimals(json, motion);
            json.WriteStartArray("phases");
            foreach (UnwindingPhase phase in motion.Phases)
            {
                json.WriteStartObject();
                json.WriteString("name", phase.Name);
                json.WriteNumber("start_s", phase.Start);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WriteColumn(json, "time_s", motion, f => f.Time);
            WriteColumn(json, "hub_rad", motion, f => f.HubAngle);
            WriteColumn(json, "spin", motion, f => f.Spin);
            WriteColumn(json, "free_length_m", motion, f => f.FreeLength);
            WriteColumn(json, "tension_n", motion, f => f.Tension);
            json.WriteStartArray("cords");
            for (int c = 0; c < motion.Frames[0].Cords.Count; c++)
            {
                int cord = c;
                json.WriteStartObject();
                WriteColumn(json, "tangent_rad", motion, f => f.Cords[cord].TangentAngle);
                WriteColumn(json, "wound_rad", motion, f => f.Cords[cord].WoundAngle);
                WriteColumn(json, "x_m", motion, f => f.Cords[cord].WeightX);
                WriteColumn(json, "y_m", motion, f => f.Cords[cord].WeightY);
                WriteColumn(json, "attached", motion, f => f.Cords[cord].Attached ? 1 : 0);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Markup.Trusted(Encoding.UTF8.GetString(buffer.WrittenSpan));
    }

    /// <summary>Half the side of the stage, m: all that happens on the cords, and a little of the flight after.</summary>
    private static double View(Unwinding motion) =>
        1.25 * motion.Frames.SelectMany(f => f.Cords).Where(c => c.Attached)
            .Max(c => Math.Sqrt((c.WeightX * c.WeightX) + (c.WeightY * c.WeightY)));

    private static IEnumerable<int> Cords(Unwinding motion) => Enumerable.Range(1, motion.Frames[0].Cords.Count);

    /// <summary>Decimals that show the largest value to three digits.</summary>
    private static void WriteDecimals(Utf8JsonWriter json, Unwinding motion)
    {
        json.WriteStartObject("decimals");
        json.WriteNumber("time", Decimals(f => f.Time));
        json.WriteNumber("spin", Decimals(f => f.Spin));
        json.WriteNumber("length", Decimals(f => f.FreeLength));
        json.WriteNumber("tension", Decimals(f => f.Tension));
        json.WriteEndObject();

        int Decimals(Func<UnwindingFrame, double> value)
        {
            double largest = motion.Frames.Max(f => Math.Abs(value(f)));
            return largest > 0 ? Math.Clamp(2 - (int)Math.Floor(Math.Log10(largest)), 0, 9) : 0;
        }
    }

    private static void WriteColumn(Utf8JsonWriter json, string name, Unwinding motion, Func<UnwindingFrame, double> value)
    {
        json.WriteStartArray(name);
        foreach (UnwindingFrame frame in motion.Frames)
        {
            json.WriteRawValue(value(frame).ToString("G6", CultureInfo.InvariantCulture));
        }

        json.WriteEndArray();
    }

    private static string Metres(double value) => value.ToString("G6", CultureInfo.InvariantCulture);
}
