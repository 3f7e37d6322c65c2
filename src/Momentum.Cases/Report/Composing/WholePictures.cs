using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Cases.Report.Composing;

/// <summary>The animation's frames and the charts of the motion in three dimensions.</summary>
internal sealed class WholePictures
{
    // Between two steps of the integration the motion is smooth; so many pieces a step leave nothing out.
    private const int PiecesOfStep = 4;

    // What may change from one frame to the next, so that a straight line between them keeps to what a reader can see:
    // a path that turns by this cuts its corner by (4°)²/8 = 6e-4 of the radius.
    private const double LargestTurn = 4 * Math.PI / 180;
    private const double LargestChangeOfTension = 0.03;
    private const double LongestGap = 1.0 / 150;
    // The page grows with frames times cords; with many cords the frames are fewer, and the path a little less smooth.
    private const int MostFrames = 640;
    private const int MostCordFrames = 2400;

    // Cords that let go within this share of the whole let go together, to the eye.
    private const double Together = 1e-3;

    // An instant just before an event, as a share of the whole: nothing moves visibly in it.
    private const double Eve = 1e-9;

    private readonly DeploymentResult _result;
    private readonly Rotation<HubAxes, Body> _hub;
    private readonly Rotation<Inertial, StageAxes> _stage;
    private readonly Position<Body> _centre;
    private readonly int[] _joints;
    private readonly double _momentum;
    private readonly double _centreHeight;
    private readonly HashSet<double> _kept;
    private readonly Landing?[] _landings;
    private readonly DeploymentState[] _states;
    private readonly UnwindingFrame[] _frames;

    private WholePictures(DeploymentResult result)
    {
        _result = result;
        CordDeployment deployment = result.Deployment;
        var axes = new StageTurn(deployment);
        _hub = axes.Hub;
        _stage = axes.Inertial;
        _centreHeight = OnHub(deployment.Hub.CentreOfMass).Z.Meters;
        _centre = deployment.Rig is null
            ? deployment.Hub.CentreOfMass
            : Position<Body>.Origin + _hub.Apply(Vector<Length, HubAxes>.FromSi(0, 0, _centreHeight));
        double end = result.End.Seconds;
        double[] events = [.. result.Events.Select(e => e.Time.Seconds).Where(t => t > 0).Distinct()];
        double[] eves = [.. events.Select(t => Math.Max(0, t - (Eve * end)))];
        _landings = new Landing?[deployment.Cords.Count];
        foreach (Landing landing in result.Landings)
        {
            _landings[landing.Cord] = landing;
        }

        _kept = [0, end, .. events, .. eves, .. result.Landings.Select(l => l.Time.Seconds).Where(t => t < end)];
        double[] steps = [.. result.StepTimes.Select(t => t.Seconds)];
        double[] times = [.. steps.Skip(1)
            .SelectMany((until, i) => Enumerable.Range(1, PiecesOfStep).Select(k => k == PiecesOfStep ? until : steps[i] + ((until - steps[i]) * k / PiecesOfStep)))
            .Concat(_kept).Distinct().Order()];
        _states = [.. result.History(times.Select(t => Duration.FromSeconds(t)))];
        _joints = [.. deployment.Cords.Select((_, c) => _states.Max(s => s.Cords[c].Joints.Count))];
        _momentum = _states[0].HubAngularMomentum.Magnitude.KilogramSquareMetersPerSecond;
        _frames = [.. Frames()];
        Unwinding = Drawn();
    }

    /// <summary>Every step of the motion, ready to be drawn.</summary>
    public static WholePictures Of(DeploymentResult result) => new(result);

    /// <summary>The animation.</summary>
    public Unwinding Unwinding { get; }

    /// <summary>Histories against time.</summary>
    /// <param name="planar">The planar motion, for comparison.</param>
    public IReadOnlyList<LineChart> Charts(PlanarMotion planar)
    {
        double[] times = [.. _frames.Select(f => f.Time)];
        double[] held = [.. times.TakeWhile(t => t < FirstLetGo)];
        double[] tense = LettingGoTogether ? held : [.. times.TakeWhile(t => t < (LastLetGo ?? double.PositiveInfinity))];
        double[] planarTimes = [.. held.Where((_, i) => i % PiecesOfStep == 0).Where(t => t < planar.LetGoTime.Seconds), planar.LetGoTime.Seconds, Math.Max(planar.LetGoTime.Seconds, times[^1])];
        bool onRig = _result.Deployment.Rig is not null;
        LineChart[] wobble = !Unwinding.Wobbles ? [] :
        [
            Against("Nutation angle", "Between spin axis and hub's angular momentum", "°", new ChartSeries("Nutation angle", times, [.. _frames.Select(f => f.Wobble!.Value.NutationAngle)])),
            Against("Transverse rate", "Rate across the spin axis", "rpm", new ChartSeries("Transverse rate", times, [.. _frames.Select(f => f.Wobble!.Value.TransverseRate)])),
        ];
        return
        [
            Against("Spin rate", "Hub spin rate", "rpm",
                new("Whole motion", times, [.. _frames.Select(f => f.Spin)]),
                new("Planar motion", planarTimes, [.. planar.History(planarTimes.Select(t => Duration.FromSeconds(t))).Select(s => s.Spin.RevolutionsPerMinute)])),
            .. OfCords("Cord tension", "Tension where the cord meets the hub", "N", Tensions(tense), HighestPeak()),
            .. OfCords(
                "Speed of the weights",
                onRig ? "Speed of each weight relative to the room" : "Speed of each weight, inertial",
                "m/s",
                Speeds(times),
                FastestLetGo(),
                WholeMotionWords.SpeedsAreOf(_result.Deployment)),
            .. wobble,
            Against("Where the energy is", "Energy of what is still together", "J", [.. Energies(held)]),
        ];

        IEnumerable<LineChart> OfCords(string title, string quantity, string unit, CordCurves curves, ChartMark? mark, string caption = "") =>
            curves.Series.Count == 0 ? [] : [Against(title, quantity, unit, [.. curves.Series]) with
            {
                Band = curves.Band,
                Marks = mark is null ? [] : [mark],
                Caption = string.Join(' ', new[] { caption, curves.Caption }.Where(c => c.Length > 0)),
            }];

        LineChart Against(string title, string quantity, string unit, params ChartSeries[] series) => new()
        {
            Title = title,
            X = new ChartAxis("Time", "s"),
            Y = new ChartAxis(quantity, unit),
            Series = series,
            Events = [.. ChartEvents().Where(e => e.X <= series.Max(s => s.X[^1]))],
            FollowsAnimation = true,
        };
    }

    private Unwinding Drawn()
    {
        CordDeployment deployment = _result.Deployment;
        Vector<Length, HubAxes> centre = OnHub(_centre);
        Drum[] drums = [.. deployment.Cords.Select(DrumOf)];
        DeckRing? deck = deployment.Deck is { } edge ? new DeckRing(edge.Radius.Meters, edge.Height.Meters - _centreHeight) : null;
        IEnumerable<double> heights = drums.Select(d => d.Height);
        HubShape hub = HubCylinder.Of(
            deployment.Hub.Inertia,
            deployment.SpinAxis,
            drums.Max(d => d.Radius),
            [.. deck is null ? heights : heights.Append(deck.Height)],
            -centre.X.Meters,
            -centre.Y.Meters);
        Room? room = deployment.Rig is { } rig ? RoomOf(rig) : null;
        return new Unwinding
        {
            Hub = room?.Floor is { } floor ? hub with { Bottom = Math.Max(hub.Bottom, Math.Min(-_centreHeight - floor, heights.Min())) } : hub,
            Drums = drums,
            Deck = deck,
            Room = room,
            SpinUnit = "rpm",
            Frames = Thinned(),
            Phases = Phases(),
            LetGo = LastLetGo,
        };
    }

    private Room RoomOf(BenchRig rig) => new(
        OnStage(_states[0].Origin, CentreAt(_states[0])),
        _stage.Apply(Direction<Inertial>.ZAxis),
        rig.FloorBelow?.Meters,
        rig.Walls?.Meters,
        [.. _landings.Select(l => l is { } landing ? OnStage(landing.Place, CentreAt(_states[0])) : (Position<StageAxes>?)null)]);

    private double? LastLetGo
    {
        get
        {
            double[] letGoes = [.. Times(DeploymentEventKind.LetGo)];
            return letGoes.Length == _result.Deployment.Cords.Count ? letGoes[^1] : null;
        }
    }

    private double FirstLetGo => Times(DeploymentEventKind.LetGo).Append(double.PositiveInfinity).First();

    private bool LettingGoTogether => LastLetGo - FirstLetGo < Together * _result.End.Seconds;

    private IEnumerable<double> Times(params DeploymentEventKind[] kinds) =>
        _result.Events.Where(e => kinds.Contains(e.Kind)).Select(e => e.Time.Seconds);

    /// <summary>Each as long as it is on the hub.</summary>
    private CordCurves Tensions(double[] times) => CordCurves.Of("cord", times, OfEachCord(
        times, (f, c) => f.Cords[c].Attached, (i, c) => _frames[i].Cords[c].Tension));

    /// <summary>Each as far as it flies: to where it lands, or to the end.</summary>
    private CordCurves Speeds(double[] times) => CordCurves.Of("weight", times, OfEachCord(
        times, (f, c) => !(f.Time > _landings[c]?.Time.Seconds), (i, c) => _states[i].Cords[c].WeightVelocity.Magnitude.MetersPerSecond));

    private double[][] OfEachCord(double[] times, Func<UnwindingFrame, int, bool> lasts, Func<int, int, double> value) =>
        [.. Enumerable.Range(0, _landings.Length).Select(c => Enumerable.Range(0, times.Length)
            .TakeWhile(i => lasts(_frames[i], c)).Select(i => value(i, c)).ToArray())];

    private ChartMark? FastestLetGo()
    {
        if (_result.Departures.Count == 0)
        {
            return null;
        }

        WeightDeparture fastest = _result.Departures.MaxBy(l => l.Velocity.Magnitude.MetersPerSecond);
        double speed = fastest.Velocity.Magnitude.MetersPerSecond;
        return new ChartMark(fastest.Time.Seconds, speed, $"let go at {new Figure(speed, "m/s")}", Under: true);
    }

    private ChartMark HighestPeak()
    {
        PeakTension peak = _result.PeakTension;
        return new ChartMark(peak.Time.Seconds, peak.Tension.Newtons, $"peak {new Figure(peak.Tension.Newtons, "N")}");
    }

    private List<ChartSeries> Energies(double[] times)
    {
        DeploymentEnergy[] energies = [.. _states.Take(times.Length).Select(s => s.Energy)];
        List<ChartSeries> series =
        [
            Curve("Hub", e => e.HubRotation + e.HubTranslation),
            Curve("Weights", e => e.Weights),
        ];
        AddIfAny("Cords", e => e.Cords);
        AddIfAny("Stretch", e => e.Elastic);
        AddIfAny("Height", e => e.Gravity);
        series.Add(Curve("Sum", e => e.Total));
        return series;

        ChartSeries Curve(string name, Func<DeploymentEnergy, Energy> part) => new(name, times, [.. energies.Select(e => part(e).Joules)]);

        void AddIfAny(string name, Func<DeploymentEnergy, Energy> part)
        {
            if (energies.Any(e => part(e).Joules != 0))
            {
                series.Add(Curve(name, part));
            }
        }
    }

    /// <summary>The events that a curve bends at, those of the same kind at about the same time as one.</summary>
    private IEnumerable<ChartEvent> ChartEvents()
    {
        (string Label, DeploymentEventKind Kind)[] drawn =
        [
            ("weights released", DeploymentEventKind.WeightReleased), ("cord fully out", DeploymentEventKind.Unwound),
            ("cord jams", DeploymentEventKind.Jammed), ("slack", DeploymentEventKind.CordSlack),
            ("wraps back", DeploymentEventKind.CordWrapsBack), ("let-go", DeploymentEventKind.LetGo),
        ];
        double near = 0.01 * _result.End.Seconds;
        foreach ((string label, DeploymentEventKind kind) in drawn)
        {
            double last = double.NegativeInfinity;
            int found = 0;
            foreach (double time in Times(kind).Where(t => t > near))
            {
                if (time - last > near && found++ < 2)
                {
                    yield return new ChartEvent(time, label);
                }

                last = time;
            }
        }
    }

    private List<UnwindingPhase> Phases()
    {
        List<UnwindingPhase> phases = [];
        double[] released = [.. Times(DeploymentEventKind.WeightReleased)];
        double[] hinged = [.. Times(DeploymentEventKind.Unwound, DeploymentEventKind.Jammed)];
        double[] departed = [.. Times(DeploymentEventKind.LetGo)];
        if (released.Length == 0 || released[0] > 0)
        {
            phases.Add(new("held", 0));
        }

        Add("unwinding", released);
        Add("hinging", hinged);
        if (departed.Length > 0 && !LettingGoTogether)
        {
            Add("a cord still on", departed);
        }

        if (LastLetGo is { } last)
        {
            Add("free flight", [last]);
        }

        return phases;

        // Of two that begin at once the later is the one that lasts: let go at the tangent, there is no hinging.
        void Add(string name, double[] starts)
        {
            if (starts.Length == 0)
            {
                return;
            }

            if (phases.Count > 0 && starts[0] - phases[^1].Start < Together * _result.End.Seconds)
            {
                phases.RemoveAt(phases.Count - 1);
            }

            phases.Add(new(name, phases.Count == 0 ? 0 : starts[0]));
        }
    }

    /// <summary>Every state as a frame.</summary>
    private IEnumerable<UnwindingFrame> Frames()
    {
        CordDeployment deployment = _result.Deployment;
        double[] roots = [.. deployment.Cords.Select(c => c.StartAngle.Radians)];
        double[] heights = [.. deployment.Cords.Select(c => c.PlaneHeight.Meters - _centreHeight)];
        var pointing = Direction<StageAxes>.ZAxis;
        foreach (DeploymentState state in _states)
        {
            Position<Inertial> centre = CentreAt(state);
            Vector<AngularMomentum, Inertial> momentum = state.HubAngularMomentum;
            double share = momentum.Magnitude.KilogramSquareMetersPerSecond / _momentum;
            pointing = share > 1e-9 ? _stage.Apply(momentum.Direction()) : pointing;
            yield return new UnwindingFrame(
                state.Time.Seconds,
                _hub.Then(state.Attitude).Then(_stage),
                state.Spin.RevolutionsPerMinute,
                new HubMomentum(pointing, share),
                new WobbleFrame(state.TransverseRate.RevolutionsPerMinute, state.NutationAngle.Degrees),
                [.. state.Cords.Select((c, i) => Cord(state, c, i))]);

            CordFrame Cord(DeploymentState at, CordState cord, int number)
            {
                if (cord.Phase is CordPhase.Unwinding or CordPhase.Hinging)
                {
                    Vector<Length, HubAxes> root = _hub.Inverse().Apply(at.Attitude.Inverse().Apply(cord.Root - at.Origin));
                    double angle = Math.Atan2(root.Y.Meters, root.X.Meters);
                    roots[number] += Math.IEEERemainder(angle - roots[number], 2 * Math.PI);
                    heights[number] = root.Z.Meters - _centreHeight;
                }

                // Of a piece that is barely free the tension has few digits: the library counts no peak there, and none is drawn.
                // The library's weights fly on for ever; in a room they come to an end.
                Position<Inertial> weight = _landings[number] is { } landing && landing.Time <= at.Time ? landing.Place : cord.Weight;
                Position<Inertial>[] joints = new Position<Inertial>[_joints[number]];
                joints.AsSpan().Fill(cord.Root);
                cord.Joints.ToArray().CopyTo(joints, joints.Length - cord.Joints.Count);
                return new CordFrame(
                    roots[number],
                    heights[number],
                    [.. joints.Select(j => OnStage(j, centre))],
                    OnStage(weight, centre),
                    cord.FreeLength.Meters,
                    Math.Min(cord.Tension.Newtons, _result.PeakTensions[number].Tension.Newtons),
                    cord.Phase == CordPhase.LetGo ? CordHold.Gone : cord.IsSlack ? CordHold.Slack : CordHold.Taut);
            }
        }
    }

    /// <summary>As few frames as straight lines between them allow.</summary>
    private List<UnwindingFrame> Thinned()
    {
        double peak = _result.PeakTensions.Max(p => p.Tension.Newtons);
        int most = Math.Min(MostFrames, MostCordFrames / _result.Deployment.Cords.Count);
        for (double coarser = 1; ; coarser *= 1.25)
        {
            List<UnwindingFrame> kept = [_frames[0]];
            for (int i = 1; i < _frames.Length; i++)
            {
                UnwindingFrame next = _frames[Math.Min(i + 1, _frames.Length - 1)];
                if (_kept.Contains(_frames[i].Time) || Change(kept[^1], next, peak) > coarser)
                {
                    kept.Add(_frames[i]);
                }
            }

            if (kept.Count <= most || coarser > 100)
            {
                return kept;
            }
        }
    }

    /// <summary>How far apart two frames are; 1 is as far as they may be.</summary>
    private double Change(UnwindingFrame from, UnwindingFrame to, double peak)
    {
        double change = (to.Time - from.Time) / (LongestGap * _result.End.Seconds);
        change = Math.Max(change, from.Attitude.Inverse().Then(to.Attitude).Angle.Radians / (2 * LargestTurn));
        foreach ((CordFrame before, CordFrame after) in from.Cords.Zip(to.Cords).Where(c => c.First.Attached))
        {
            double turn = before.Weight.FromOrigin.Direction().AngleTo(after.Weight.FromOrigin.Direction()).Radians;
            change = Math.Max(change, turn / LargestTurn);
            double arm = LargestTurn * after.Weight.FromOrigin.Magnitude.Meters;
            foreach ((Position<StageAxes> joint, Position<StageAxes> there) in before.Joints.Zip(after.Joints))
            {
                change = Math.Max(change, (there - joint).Magnitude.Meters / arm);
            }

            change = Math.Max(change, Math.Abs(after.Tension - before.Tension) / (LargestChangeOfTension * peak));
        }

        return change;
    }

    private Drum DrumOf(Cord cord, int number) => new(
        cord.HubRadius.Meters,
        cord.PlaneHeight.Meters - _centreHeight,
        _result.Deployment.EndAngle(number).Radians,
        cord.Length.Meters / cord.Pieces);

    /// <summary>Where the stage's origin is.</summary>
    private Position<Inertial> CentreAt(DeploymentState state) => state.Origin + state.Attitude.Apply(_centre.FromOrigin);

    /// <summary>A place on the stage, whose origin is now at a centre.</summary>
    private Position<StageAxes> OnStage(Position<Inertial> place, Position<Inertial> centre) =>
        Position<StageAxes>.Origin + _stage.Apply(place - centre);

    private Vector<Length, HubAxes> OnHub(Position<Body> place) => _hub.Inverse().Apply(place.FromOrigin);
}
