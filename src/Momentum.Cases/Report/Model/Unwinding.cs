using Momentum.Frames;
using Momentum.Tethers.Deployment;
using UnitsNet.Units;

namespace Momentum.Cases.Report.Model;

/// <summary>The computed motion, dense enough that straight lines between frames look smooth.</summary>
internal sealed record Unwinding
{
    // A difference that no read-out would show.
    private const double Alike = 1e-5;

    /// <summary>The hub as it is drawn.</summary>
    public required HubShape Hub { get; init; }

    /// <summary>The drum of each cord.</summary>
    public required IReadOnlyList<Drum> Drums { get; init; }

    /// <summary>The deck's edge; null if none is watched.</summary>
    public DeckRing? Deck { get; init; }

    /// <summary>The room of a rig; null for a vehicle in space.</summary>
    public Room? Room { get; init; }

    /// <summary>Unit of <see cref="UnwindingFrame.Spin"/>.</summary>
    public required string SpinUnit { get; init; }

    /// <summary>Frames in order of time, the first at 0 s.</summary>
    public required IReadOnlyList<UnwindingFrame> Frames { get; init; }

    /// <summary>Phases in order of time, the first at 0 s.</summary>
    public required IReadOnlyList<UnwindingPhase> Phases { get; init; }

    /// <summary>When the last cord leaves the hub, s; null if one never does.</summary>
    public double? LetGo { get; init; }

    /// <summary>Whether this is the motion in three dimensions, and not only the planar one.</summary>
    public bool IsWhole => Frames[0].Wobble is not null;

    /// <summary>Whether the hub can wobble, which a rig's bearing keeps it from.</summary>
    public bool Wobbles => IsWhole && Room is null;

    /// <summary>Whether all cords have the same free length and tension in every frame, as far as a reader can tell.</summary>
    public bool CordsAreAlike
    {
        get
        {
            double length = Alike * Frames.SelectMany(f => f.Cords).Max(c => c.FreeLength);
            double tension = Alike * Frames.SelectMany(f => f.Cords).Max(c => c.Tension);
            return Frames.All(f => f.Cords.All(c =>
                Math.Abs(c.FreeLength - f.Cords[0].FreeLength) <= length && Math.Abs(c.Tension - f.Cords[0].Tension) <= tension));
        }
    }

    /// <summary>Where a free cord begins.</summary>
    public Position<StageAxes> Root(UnwindingFrame frame, int cord)
    {
        CordFrame state = frame.Cords[cord];
        double radius = Drums[cord].Radius;
        var onHub = Position<HubAxes>.Of(
            Hub.AxisX + (radius * Math.Cos(state.RootAngle)),
            Hub.AxisY + (radius * Math.Sin(state.RootAngle)),
            state.RootHeight,
            LengthUnit.Meter);
        return Position<StageAxes>.Origin + frame.Attitude.Apply(onHub.FromOrigin);
    }
}
