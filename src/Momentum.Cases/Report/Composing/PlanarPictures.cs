using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Sections;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>The animation's frames and the charts of the planar motion.</summary>
internal static class PlanarPictures
{
    // The weights' paths turn by this much between frames at most, so that straight lines between them keep within
    // (4°)²/8 = 6e-4 of the radius.
    private const double LargestTurn = 4 * Math.PI / 180;
    private const int FewestFrames = 200;
    private const int MostFrames = 2000;
    private const int ChartSamples = 160;

    // How long the flight after let-go is shown, as a share of the time until then.
    private const double Aftermath = 0.15;

    // The planar motion's inertial axes are the stage's: both begin at the hub's centre and stand as the hub does at release.
    private static readonly Rotation<Inertial, StageAxes> _stage = Rotation<Inertial, StageAxes>.Identity;

    /// <summary>The frames from release of the weights to a little after let-go, or to where the weights meet the wall.</summary>
    /// <param name="motion">The motion.</param>
    /// <param name="body">The body, for the hub's shape.</param>
    /// <param name="bench">The rig, for its room; null in space.</param>
    public static Unwinding Unwinding(PlanarMotion motion, SpinningBody body, BenchSection? bench)
    {
        double letGo = motion.LetGoTime.Seconds;
        PlanarState last = motion.At(motion.LetGoTime);
        double turn = last.HubAngle.Radians + (last.FreeLength.Meters / motion.Design.Hub.Radius.Meters) + Math.PI;
        int frames = (int)Math.Clamp(Math.Ceiling(turn / LargestTurn), FewestFrames, MostFrames);
        UnwindingFrame[] attached = [.. Instants(motion, frames).Select(t => Frame(motion, t, attached: true))];

        // Two frames share the instant of let-go, with the cords and without, so that nothing is drawn in between.
        IEnumerable<UnwindingFrame> free = Enumerable.Range(0, 31)
            .Select(i => Frame(motion, letGo + (Flight(motion, bench?.WallDistance?.Value.Meters) * i / 30), attached: false));
        List<UnwindingPhase> phases = [new("unwinding", 0)];
        if (motion.LetGoPhase == CordPhase.Hinging)
        {
            phases.Add(new UnwindingPhase("hinging", motion.UnwindTime.Seconds));
        }

        phases.Add(new UnwindingPhase("free flight", letGo));
        HubShape hub = HubCylinder.Of(body.Inertia, body.SpinAxis, motion.Design.Hub.Radius.Meters, [0]);
        return new Unwinding
        {
            Hub = bench?.CordHeight is { } height ? hub with { Bottom = Math.Max(hub.Bottom, -height.Value.Meters) } : hub,
            Room = bench is null ? null : new Room(
                Position<StageAxes>.Origin,
                Direction<StageAxes>.ZAxis,
                bench.CordHeight?.Value.Meters,
                bench.WallDistance?.Value.Meters,
                [.. Enumerable.Repeat<Position<StageAxes>?>(null, motion.Design.WeightCount)]),
            Drums = [.. Enumerable.Range(0, motion.Design.WeightCount).Select(i => DrumOf(motion.Design, i))],
            SpinUnit = "rpm",
            Frames = [.. attached, .. free],
            Phases = phases,
            LetGo = letGo,
        };
    }

    /// <summary>How long the flight after let-go is shown, s: to the wall at most, |p + v t| = w, which all weights meet at once.</summary>
    private static double Flight(PlanarMotion motion, double? wall)
    {
        double shown = Aftermath * motion.LetGoTime.Seconds;
        if (wall is not { } distance)
        {
            return shown;
        }

        Vector<Length, Inertial> place = motion.AtLetGo.WeightPosition(0).FromOrigin;
        Vector<Speed, Inertial> velocity = motion.AtLetGo.WeightVelocity(0);
        (double x, double y) = (place.X.Meters, place.Y.Meters);
        (double vx, double vy) = (velocity.X.MetersPerSecond, velocity.Y.MetersPerSecond);
        double square = (vx * vx) + (vy * vy);
        double along = (x * vx) + (y * vy);
        double room = (distance * distance) - (x * x) - (y * y);
        return room <= 0 ? 0 : Math.Min(shown, (Math.Sqrt((along * along) + (square * room)) - along) / square);
    }

    /// <summary>Histories against time.</summary>
    public static IReadOnlyList<LineChart> Charts(PlanarMotion motion)
    {
        double[] times = [.. Instants(motion, ChartSamples)];
        PlanarState[] states = [.. motion.History(times.Select(t => Duration.FromSeconds(t)))];
        double after = motion.LetGoTime.Seconds * (1 + Aftermath);
        PeakTension peak = motion.PeakTension;
        double peakForce = peak.Tension.Newtons;
        return
        [
            Against("Spin rate", "Hub spin rate", "rpm", Curve("Hub", [.. times, after], [.. states.Select(s => s.Spin.RevolutionsPerMinute), motion.FinalSpin.RevolutionsPerMinute])),
            Against("Cord tension", "Tension, each cord", "N", Curve("Each cord", times, [.. states.Select(s => s.CordTension.Newtons)])) with
            {
                Marks = [new ChartMark(peak.Time.Seconds, peakForce, $"peak {new Figure(peakForce, "N")}")],
            },
            Against("Speed of the weights", "Speed of each weight in space", "m/s", Curve("Each weight", times, [.. states.Select(s => s.WeightSpeed.MetersPerSecond)])),
            Against("Where the energy is", "Energy, all weights and all cords", "J", [.. Energies(motion, times, states)]),
        ];

        ChartSeries Curve(string name, double[] x, double[] y) => new(name, x, y);

        LineChart Against(string title, string quantity, string unit, params ChartSeries[] series) => new()
        {
            Title = title,
            X = new ChartAxis("Time", "s"),
            Y = new ChartAxis(quantity, unit),
            Series = series,
            Events = Events(motion),
            FollowsAnimation = true,
        };
    }

    private static List<ChartSeries> Energies(PlanarMotion motion, double[] times, PlanarState[] states)
    {
        DeploymentEnergy[] energies = [.. states.Select(s => s.Energy)];
        double[] damped = [.. states.Select(s => s is SpringCordState stretched ? stretched.DampedEnergy.Joules : 0)];
        List<ChartSeries> series =
        [
            new("Hub", times, [.. energies.Select(e => e.HubRotation.Joules)]),
            new("Weights", times, [.. energies.Select(e => e.Weights.Joules)]),
        ];
        if (energies.Any(e => e.Cords > Energy.Zero))
        {
            series.Add(new("Cords", times, [.. energies.Select(e => e.Cords.Joules)]));
        }

        if (motion is SpringCordMotion)
        {
            series.Add(new("Stretch and damping", times, [.. energies.Zip(damped, (e, d) => e.Elastic.Joules + d)]));
        }

        series.Add(new("Sum", times, [.. energies.Zip(damped, (e, d) => e.Total.Joules + d)]));
        return series;
    }

    private static List<ChartEvent> Events(PlanarMotion motion)
    {
        List<ChartEvent> events = [];
        if (motion.LetGoPhase == CordPhase.Hinging)
        {
            events.Add(new ChartEvent(motion.UnwindTime.Seconds, "cord fully out"));
        }

        events.Add(new ChartEvent(motion.LetGoTime.Seconds, "let-go"));
        return events;
    }

    /// <summary>Evenly spaced instants from release to let-go, with the end of unwinding among them.</summary>
    private static IEnumerable<double> Instants(PlanarMotion motion, int count)
    {
        double letGo = motion.LetGoTime.Seconds;
        return Enumerable.Range(0, count + 1).Select(i => letGo * i / count)
            .Append(motion.UnwindTime.Seconds)
            .Where(t => t <= letGo)
            .Distinct()
            .Order();
    }

    private static Drum DrumOf(PlanarDesign design, int cord) =>
        new(design.Hub.Radius.Meters, 0, (design.CordLength.Meters / design.Hub.Radius.Meters) + Spaced(design, cord), design.CordLength.Meters);

    private static double Spaced(PlanarDesign design, int cord) => 2 * Math.PI * cord / design.WeightCount;

    private static UnwindingFrame Frame(PlanarMotion motion, double time, bool attached)
    {
        PlanarState state = motion.At(Duration.FromSeconds(time));
        PlanarDesign design = motion.Design;
        double free = state.FreeLength.Meters;
        double share = state.Spin / design.Hub.Spin;
        var axis = Direction<StageAxes>.ZAxis;
        return new UnwindingFrame(
            time,
            Rotation<HubAxes, StageAxes>.About(Direction<HubAxes>.ZAxis, state.HubAngle),
            state.Spin.RevolutionsPerMinute,
            new HubMomentum(share < 0 ? -axis : axis, Math.Abs(share)),
            null,
            [.. Enumerable.Range(0, design.WeightCount).Select(i => new CordFrame(
                ((free - state.Stretch.Meters) / design.Hub.Radius.Meters) + Spaced(design, i),
                0,
                [],
                Position<StageAxes>.Origin + _stage.Apply(state.WeightPosition(i).FromOrigin),
                free,
                attached ? state.CordTension.Newtons : 0,
                attached ? CordHold.Taut : CordHold.Gone))]);
    }
}
