using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Momentum.Tool.Report.Model;

namespace Momentum.Tool.Report.Pictures;

/// <summary>
/// The stage of the animation and the frames it plays, in SI and in the stage's axes, so that what the page shows can be
/// compared with the trajectory. The stage holds what the script moves; the script projects it.
/// </summary>
internal static class UnwindingStage
{
    // What happens on the cords, and a little of the flight after.
    private const double Room = 1.2;

    // Digits of the largest value of a column: places to less than a tenth of a pixel, read-outs to what is shown, turns to a
    // thousandth of a degree.
    private const int PlaceDigits = 5;
    private const int Digits = 6;

    /// <summary>The stage with everything on it that the script moves, in the order in which it is painted.</summary>
    public static Markup Draw(Unwinding motion) => Markup.Of($"""
        <svg id="scene" viewBox="-190 -190 380 380" role="img" aria-label="{Describe(motion)}">
        <path class="plane" id="plane-far"/>
        <g id="behind">
        <path class="spin-axis" id="axis-far"/>
        {Markup.Each(Cords(motion), c => Side(c, "far"))}
        </g>
        <g id="hub"><path class="hub" id="hub-side"/><path class="hub-sector" id="hub-side-sectors"/><path class="hub" id="hub-cap"/><path class="hub-sector" id="hub-cap-sectors"/><path class="hub-drum" id="hub-drums"/><path class="hub-mark" id="hub-mark"/></g>
        <g id="front">
        <path class="plane" id="plane-near"/>
        <path class="spin-axis" id="axis-near"/>
        {Markup.Each(Cords(motion), c => Side(c, "near"))}
        {Markup.Each(Cords(motion), Cord)}
        </g>
        <g id="momentum"><path class="momentum" id="momentum-line"/><path class="momentum-size" id="momentum-size"/><path class="momentum-head" id="momentum-head"/></g>
        <g aria-hidden="true"><text class="fill-mark" id="axis-label">spin axis</text><text class="fill-momentum" id="momentum-label">angular momentum</text><path class="scale-bar" id="scale-bar"/><text class="fill-text" id="scale-length"></text></g>
        </svg>
        """);

    /// <summary>The frames as JSON, safe inside a script element.</summary>
    public static Markup Data(Unwinding motion)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("spin_unit", motion.SpinUnit);
            json.WriteNumber("poster_s", 0.8 * (motion.LetGo ?? motion.Frames[^1].Time));
            WriteRounded(json, "view_m", View(motion));
            WriteRounded(json, "reach_m", Reach(motion));
            WriteHub(json, motion.Hub);
            WriteDecimals(json, motion);
            WritePhases(json, motion);
            WriteColumn(json, "time_s", motion, f => f.Time);
            WriteColumn(json, "spin", motion, f => f.Spin);
            if (motion.IsWhole)
            {
                WriteColumn(json, "transverse_rate", motion, f => f.Wobble!.Value.TransverseRate);
                WriteColumn(json, "nutation_deg", motion, f => f.Wobble!.Value.NutationAngle);
            }

            WriteColumns(json, "attitude", motion, Digits, f => f.Attitude.X, f => f.Attitude.Y, f => f.Attitude.Z, f => f.Attitude.W);
            WriteColumns(json, "momentum", motion, PlaceDigits, f => f.Momentum.Direction.X, f => f.Momentum.Direction.Y, f => f.Momentum.Direction.Z);
            WriteColumn(json, "momentum_share", motion, f => f.Momentum.Share, PlaceDigits);
            json.WriteBoolean("cords_alike", motion.CordsAreAlike);
            json.WriteStartArray("cords");
            for (int c = 0; c < motion.Drums.Count; c++)
            {
                WriteCord(json, motion, c);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Markup.Trusted(Encoding.UTF8.GetString(buffer.WrittenSpan));
    }

    private static Markup Side(int cord, string side) => Markup.Of($"""
        <path class="trail" id="trail-{side}-{cord}"/><path class="cord wound stroke-curve-{Ink.OfCord(cord - 1)} dash-{Ink.OfCord(cord - 1)}" id="wound-{side}-{cord}"/>
        """);

    private static Markup Cord(int cord)
    {
        int ink = Ink.OfCord(cord - 1);
        return Markup.Of($"""
            <g id="flight-{cord}"><line class="cord stroke-curve-{ink} dash-{ink}" id="cord-{cord}"/><circle class="weight fill-curve-{ink}" id="weight-{cord}" r="6"/></g>
            """);
    }

    private static string Describe(Unwinding motion) =>
        "Animation of the unwinding in three dimensions: the hub as a cylinder with dark quarters that show its turning, its spin axis, "
        + $"the direction of its angular momentum, {motion.Drums.Count.ToString(CultureInfo.InvariantCulture)} cords and their weights with the paths they have come. "
        + "The figures beside it give the same in numbers.";

    /// <summary>Half the side of the stage in the standard view, m.</summary>
    private static double View(Unwinding motion) =>
        Room * Math.Max(Reach(motion), 1.15 * Math.Max(motion.Hub.Top, -motion.Hub.Bottom));

    /// <summary>How far the weights come while they hang on the hub, m.</summary>
    private static double Reach(Unwinding motion) => motion.Frames
        .SelectMany(f => f.Cords)
        .Where(c => c.Attached)
        .Max(c => c.Weight.FromOrigin.Magnitude.Meters);

    private static IEnumerable<int> Cords(Unwinding motion) => Enumerable.Range(1, motion.Drums.Count);

    private static void WriteHub(Utf8JsonWriter json, HubShape hub)
    {
        json.WriteStartObject("hub");
        WriteRounded(json, "radius_m", hub.Radius);
        WriteRounded(json, "bottom_m", hub.Bottom);
        WriteRounded(json, "top_m", hub.Top);
        WriteRounded(json, "axis_x_m", hub.AxisX);
        WriteRounded(json, "axis_y_m", hub.AxisY);
        json.WriteEndObject();
    }

    private static void WritePhases(Utf8JsonWriter json, Unwinding motion)
    {
        json.WriteStartArray("phases");
        foreach (UnwindingPhase phase in motion.Phases)
        {
            json.WriteStartObject();
            json.WriteString("name", phase.Name);
            json.WriteNumber("start_s", phase.Start);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteCord(Utf8JsonWriter json, Unwinding motion, int cord)
    {
        Drum drum = motion.Drums[cord];
        json.WriteStartObject();
        WriteRounded(json, "radius_m", drum.Radius);
        WriteRounded(json, "height_m", drum.Height);
        WriteRounded(json, "end_rad", drum.EndAngle);
        WriteColumn(json, "root_rad", motion, f => f.Cords[cord].RootAngle, PlaceDigits);
        if (motion.Frames.Any(f => Math.Abs(f.Cords[cord].RootHeight - drum.Height) > 1e-4 * drum.Radius))
        {
            WriteColumn(json, "root_m", motion, f => f.Cords[cord].RootHeight, PlaceDigits);
        }

        WriteColumns(
            json,
            "weight_m",
            motion,
            PlaceDigits,
            f => f.Cords[cord].Weight.X.Meters,
            f => f.Cords[cord].Weight.Y.Meters,
            f => f.Cords[cord].Weight.Z.Meters);
        WriteColumn(json, "free_length_m", motion, f => f.Cords[cord].FreeLength, PlaceDigits);
        WriteColumn(json, "tension_n", motion, f => f.Cords[cord].Tension, PlaceDigits);
        WriteColumn(json, "hold", motion, f => (int)f.Cords[cord].Hold);
        json.WriteEndObject();
    }

    /// <summary>Decimals that show the largest value to three digits, and the spin rate, of which little is to be left, to four.</summary>
    private static void WriteDecimals(Utf8JsonWriter json, Unwinding motion)
    {
        json.WriteStartObject("decimals");
        json.WriteNumber("time", Decimals(motion.Frames.Select(f => f.Time)));
        json.WriteNumber("spin", Decimals(motion.Frames.Select(f => f.Spin)) + 1);
        json.WriteNumber("transverse", Decimals(motion.Frames.Select(f => f.Wobble?.TransverseRate ?? 0)));
        json.WriteNumber("nutation", Decimals(motion.Frames.Select(f => f.Wobble?.NutationAngle ?? 0)));
        json.WriteNumber("length", Decimals(motion.Frames.SelectMany(f => f.Cords).Select(c => c.FreeLength)));
        json.WriteNumber("tension", Decimals(motion.Frames.SelectMany(f => f.Cords).Select(c => c.Tension)));
        json.WriteEndObject();

        static int Decimals(IEnumerable<double> values)
        {
            double largest = values.Max(Math.Abs);
            return largest > 0 ? Math.Clamp(2 - (int)Math.Floor(Math.Log10(largest)), 0, 9) : 0;
        }
    }

    private static void WriteColumns(Utf8JsonWriter json, string name, Unwinding motion, int digits, params ReadOnlySpan<Func<UnwindingFrame, double>> values)
    {
        json.WriteStartArray(name);
        foreach (Func<UnwindingFrame, double> value in values)
        {
            WriteValues(json, motion, value, digits);
        }

        json.WriteEndArray();
    }

    private static void WriteColumn(Utf8JsonWriter json, string name, Unwinding motion, Func<UnwindingFrame, double> value, int digits = Digits)
    {
        json.WritePropertyName(name);
        WriteValues(json, motion, value, digits);
    }

    /// <summary>So many digits of the largest; smaller values to the same place, so that what is nothing beside it is a 0.</summary>
    private static void WriteValues(Utf8JsonWriter json, Unwinding motion, Func<UnwindingFrame, double> value, int digits)
    {
        double largest = motion.Frames.Max(f => Math.Abs(value(f)));
        int places = largest > 0 ? Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(largest)), 0, 15) : 0;
        json.WriteStartArray();
        foreach (UnwindingFrame frame in motion.Frames)
        {
            json.WriteRawValue(Math.Round(value(frame), places).ToString("G9", CultureInfo.InvariantCulture));
        }

        json.WriteEndArray();
    }

    private static void WriteRounded(Utf8JsonWriter json, string name, double value)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(value.ToString("G9", CultureInfo.InvariantCulture));
    }
}
