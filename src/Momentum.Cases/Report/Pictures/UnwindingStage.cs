using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Cases.Report.Pictures;

/// <summary>
/// The stage of the animation and the frames it plays, in SI and in the stage's axes, so that what the page shows can be
/// compared with the trajectory. The stage holds what the script moves; the script projects it.
/// </summary>
internal static class UnwindingStage
{
    // What happens on the cords, and a little of the flight after.
    private const double Margin = 1.2;

    // The standard view takes in the wall and where weights land, but not what would leave the unwinding less than two fifths of it.
    private const double FarthestSeen = 2.5;

    // A wall has no height of its own; so far above the hub, and without a floor below all else, it is drawn, as a share of the
    // weights' reach.
    private const double WallAbove = 0.25;

    // Digits of the largest value of a column: places to less than a tenth of a pixel, read-outs to what is shown, turns to a
    // thousandth of a degree.
    private const double JointDigits = 1e-4; // of the view, a twentieth of a pixel
    private const int PlaceDigits = 5;
    private const int Digits = 6;

    /// <summary>The stage with everything on it that the script moves, in the order in which it is painted.</summary>
    public static Markup Draw(Unwinding motion) => Markup.Of($"""
        <svg id="scene" viewBox="-190 -190 380 380" role="img" aria-label="{Describe(motion)}">
        {(motion.Room is { IsSeen: true } ? RoomBehind : Markup.None)}
        <path class="plane" id="plane-far"/>
        <g id="behind">
        <path class="spin-axis" id="axis-far"/>
        {(motion.Deck is null ? Markup.None : Markup.Trusted("<path class=\"deck\" id=\"deck-far\"/>"))}
        {Markup.Each(Cords(motion), c => Side(c, "far"))}
        </g>
        <g id="hub"><path class="hub" id="hub-side"/><path class="hub-sector" id="hub-side-sectors"/><path class="hub" id="hub-cap"/><path class="hub-sector" id="hub-cap-sectors"/><path class="hub-drum" id="hub-drums"/><path class="hub-mark" id="hub-mark"/></g>
        <g id="front">
        <path class="plane" id="plane-near"/>
        <path class="spin-axis" id="axis-near"/>
        {(motion.Deck is null ? Markup.None : Markup.Trusted("<path class=\"deck\" id=\"deck-near\"/>"))}
        {Markup.Each(Cords(motion), c => Side(c, "near"))}
        {Markup.Each(Cords(motion), Cord)}
        </g>
        {(motion.Room is { IsSeen: true } room ? RoomBefore(room) : Markup.None)}
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
            WriteDeck(json, motion.Deck);
            WriteRoom(json, motion);
            WriteDecimals(json, motion);
            WritePhases(json, motion);
            WriteColumn(json, "time_s", motion, f => f.Time);
            WriteColumn(json, "spin", motion, f => f.Spin);
            if (motion.Wobbles)
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
            <g id="flight-{cord}"><polyline class="cord stroke-curve-{ink} dash-{ink}" id="cord-{cord}"/><circle class="weight fill-curve-{ink}" id="weight-{cord}" r="6"/></g>
            """);
    }

    private static string Describe(Unwinding motion) =>
        "Animation of the unwinding in three dimensions: the hub as a cylinder with dark quarters that show its turning, its spin axis, "
        + $"the direction of its angular momentum, {motion.Drums.Count.ToString(CultureInfo.InvariantCulture)} cords and their weights with the paths they have come{Around(motion)}. "
        + "The figures beside it give the same in numbers.";

    /// <summary>Sentences that say what stands round the hub.</summary>
    public static string AroundWords(Unwinding motion) => string.Join(' ', new[]
    {
        motion.Deck is null ? "" : "The ring about the hub is the edge of its deck.",
        motion.Room?.Floor is { } floor
            ? $"The floor lies {new Figure(floor - motion.Room.Bearing.Z.Meters + motion.Drums[0].Height, "m", 3)} below the cords; its grid has squares of {new Figure(Grid(motion), "m", 1)}." : "",
        motion.Room?.Walls is { } walls
            ? $"The nearest wall, {new Figure(walls, "m", 3)} from the axis, is taken all round; its height stands for nothing." : "",
        motion.Room?.Landings.Any(l => l is not null) == true ? "A cross marks where a weight lands." : "",
    }.Where(s => s.Length > 0));

    private static string Around(Unwinding motion) =>
        (motion.Deck is null ? "" : ", the deck's edge")
        + (motion.Room is not { IsSeen: true } room ? ""
            : $", the {(room.Floor is null ? "" : "floor")}{(room is { Floor: not null, Walls: not null } ? " and " : "")}{(room.Walls is null ? "" : "wall")} of the rig's room");

    /// <summary>What is painted first: the floor seen from above, and the half of the wall behind the rig.</summary>
    private static Markup RoomBehind { get; } = Markup.Trusted("""
        <g id="room-behind"><path class="floor" id="floor-above"/><path class="floor-grid" id="floor-grid-above"/><path class="wall" id="wall-far"/></g>
        """);

    /// <summary>What is painted last: where weights land, the half of the wall before the rig, and the floor seen from below.</summary>
    private static Markup RoomBefore(Room room) => Markup.Of($"""
        <g id="room-before">{Markup.Each(room.Landings.Index().Where(l => l.Item is not null), l => Markup.Of($"<path class=\"landing stroke-curve-{Ink.OfCord(l.Index)}\" id=\"landing-{l.Index + 1}\"/>"))}<path class="wall" id="wall-near"/><path class="floor-grid" id="floor-grid-below"/></g>
        """);

    /// <summary>Half the side of the stage in the standard view, m.</summary>
    private static double View(Unwinding motion)
    {
        double reach = Math.Max(Reach(motion), 1.15 * Math.Max(motion.Hub.Top, -motion.Hub.Bottom));
        IEnumerable<double> around = motion.Room is not { } room ? []
            : room.Landings.OfType<Position<StageAxes>>().Select(l => l.FromOrigin.Magnitude.Meters)
                .Concat(new[] { Math.Abs(room.Bearing.Z.Meters - (room.Floor ?? 0)), room.Walls ?? 0 });
        return Margin * around.Append(reach).Where(d => d <= FarthestSeen * reach).Max();
    }

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

    private static void WriteDeck(Utf8JsonWriter json, DeckRing? deck)
    {
        if (deck is not null)
        {
            json.WriteStartObject("deck");
            WriteRounded(json, "radius_m", deck.Radius);
            WriteRounded(json, "height_m", deck.Height);
            json.WriteEndObject();
        }
    }

    /// <summary>Heights from the bearing; with the size in which floor and wall are drawn, which they have not of their own.</summary>
    private static void WriteRoom(Utf8JsonWriter json, Unwinding motion)
    {
        if (motion.Room is not { IsSeen: true } room)
        {
            return;
        }

        double reach = Reach(motion);
        double bearing = room.Bearing.Z.Meters;
        json.WriteStartObject("room");
        WritePlace(json, "bearing_m", room.Bearing.X.Meters, room.Bearing.Y.Meters, bearing);
        WritePlace(json, "up", room.Up.X, room.Up.Y, room.Up.Z);
        if (room.Floor is { } floor)
        {
            WriteRounded(json, "floor_m", -floor);
        }

        if (room.Walls is { } walls)
        {
            WriteRounded(json, "wall_m", walls);
        }

        WriteRounded(json, "grid_m", Grid(motion));
        WriteRounded(json, "drawn_radius_m", RoomRadius(motion));
        double lowest = room.Landings.OfType<Position<StageAxes>>().Select(l => l.Z.Meters).Append(motion.Hub.Bottom).Min();
        WriteRounded(json, "drawn_bottom_m", -room.Floor ?? lowest - bearing - (WallAbove * reach));
        WriteRounded(json, "drawn_top_m", motion.Hub.Top - bearing + (WallAbove * reach));
        json.WriteStartArray("landings_m");
        foreach (Position<StageAxes>? landing in room.Landings)
        {
            if (landing is { } place)
            {
                WritePlace(json, null, place.X.Meters, place.Y.Meters, place.Z.Meters);
            }
            else
            {
                json.WriteNullValue();
            }
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static double RoomRadius(Unwinding motion) => motion.Room!.Walls ?? FarthestSeen * Reach(motion);

    private static double Grid(Unwinding motion) => Drawing.RoundLength(RoomRadius(motion) / 3);

    private static void WritePlace(Utf8JsonWriter json, string? name, params ReadOnlySpan<double> components)
    {
        WriteArray(json, name);
        foreach (double component in components)
        {
            json.WriteRawValue(component.ToString("G9", CultureInfo.InvariantCulture));
        }

        json.WriteEndArray();
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

        WriteJoints(json, motion, cord);
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

    /// <summary>
    /// How far each joint is off the straight line from root to weight, where it would be a whole number of pieces from the
    /// weight, and a wound one at the root: small whole numbers in place of three long columns.
    /// </summary>
    private static void WriteJoints(Utf8JsonWriter json, Unwinding motion, int cord)
    {
        double unit = Math.Pow(10, Math.Floor(Math.Log10(JointDigits * View(motion))));
        double piece = motion.Drums[cord].Piece;
        WriteRounded(json, "piece_m", piece);
        WriteRounded(json, "joint_unit_m", unit);
        json.WriteStartArray("joints");
        int joints = motion.Frames[0].Cords[cord].Joints.Count;
        for (int j = 0; j < joints; j++)
        {
            Vector<Length, StageAxes>[] aside = [.. motion.Frames.Select(f => Aside(f, j))];
            json.WriteStartArray();
            foreach (Func<Vector<Length, StageAxes>, double> along in (ReadOnlySpan<Func<Vector<Length, StageAxes>, double>>)[a => a.X.Meters, a => a.Y.Meters, a => a.Z.Meters])
            {
                json.WriteStartArray();
                foreach (Vector<Length, StageAxes> offset in aside)
                {
                    json.WriteNumberValue((int)Math.Round(along(offset) / unit));
                }

                json.WriteEndArray();
            }

            json.WriteEndArray();
        }

        json.WriteEndArray();

        Vector<Length, StageAxes> Aside(UnwindingFrame frame, int joint)
        {
            CordFrame state = frame.Cords[cord];
            if (!state.Attached)
            {
                return default;
            }

            Position<StageAxes> root = motion.Root(frame, cord);
            double share = state.FreeLength > 0 ? Math.Max(0, 1 - ((joints - joint) * piece / state.FreeLength)) : 0;
            return state.Joints[joint] - root - ((state.Weight - root) * share);
        }
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

    /// <summary>Begins an array: a member with a name, or an element of another array.</summary>
    private static void WriteArray(Utf8JsonWriter json, string? name)
    {
        if (name is not null)
        {
            json.WritePropertyName(name);
        }

        json.WriteStartArray();
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
