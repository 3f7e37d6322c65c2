using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers.Deployment;
using UnitsNet;
using UnitsNet.Units;
using Verdict = Momentum.Cases.Answers.Verdict;

namespace Momentum.Tool.Tests.Report;

/// <summary>A full report of an invented stage, with every section filled.</summary>
internal static class SampleReport
{
    private const double Rpm = Math.PI / 30;
    private const double Inertia = 18.4;
    private const double Weights = 1.24;
    private const double Radius = 0.43;

    public static PlanarMotion Motion { get; } = new(
        Inertia, Weights, Radius, PlanarMotion.RadialLengthToZero(Inertia, Weights, Radius), 72 * Rpm);

    public static DespinReport Full { get; } = Make();

    private static DespinReport Make()
    {
        Unwinding unwinding = MakeUnwinding();
        double letGo = unwinding.LetGo!.Value;
        UnwindingFrame[] attached = [.. unwinding.Frames.Where(f => f.Cords[0].Attached)];
        UnwindingFrame peak = attached.MaxBy(f => f.Cords[0].Tension)!;
        ChartEvent[] events = [new(Motion.UnwindingEnds, "cord fully out"), new(letGo, "let-go")];
        double[] times = [.. attached.Select(f => f.Time)];
        double[] all = [.. unwinding.Frames.Select(f => f.Time)];
        double[] weightSpeed = [.. Enumerable.Range(1, attached.Length - 1).Select(i => Speed(attached[i - 1], attached[i]))];
        return new DespinReport
        {
            Title = "Harrier-Reed upper stage, instrument deck",
            Summary = $"Two weights of 0.62 kg on cords of {new Figure(Motion.Length, "m")} each take the stage from 72 rpm to 0 rpm in {new Figure(letGo, "s", 3)}, let go radially.",
            Case = new CaseIdentity("harrier-reed.toml", "9f2c4b1e7a60d35c8e1f0b7a4d92c6e3b58f7710a2c94de6f3017bb5d8e4a96c", "0.1.0"),
            Answers =
            [
                Row("Cord length, each", Motion.Length, "m", "free length from the drum to the weight's centre", solved: true),
                Row("Weight mass, each", 0.62, "kg"),
                Row("Initial spin rate", 72, "rpm"),
                Row("Final spin rate", 0, "rpm", "after both weights have gone"),
                Row("Unwinding takes", Motion.UnwindingEnds, "s", "release to cord fully out"),
                Row("Let-go after", letGo, "s", "release to radial cord"),
                Row("Hub turns through", Motion.ToRadial(240)[^1].Hub * 180 / Math.PI, "°", "release to let-go"),
                Row("Peak tension, each cord", peak.Cords[0].Tension, "N", $"at {new Figure(peak.Time, "s", 3)}, at {new Figure(peak.Spin, "rpm", 3)}"),
                Row("Weight speed at let-go", weightSpeed[^1], "m/s", "in axes that do not turn"),
            ],
            Further =
            [
                new("", "Body",
                [
                    Row("Spin inertia", Inertia, "kg·m²", "about the spin axis through the centre of mass, without weights and cords"),
                    Row("Turns of cord on the hub", Motion.Length / (2 * Math.PI * Radius), ""),
                    Row("Force that holds each stowed weight", 0.62 * Radius * Math.Pow(72 * Rpm, 2), "N", "at the initial spin rate"),
                ]),
            ],
            Warnings = ["despin.hub_radius: an invented remark on this invented stage. Nothing to mend."],
            Requirements =
            [
                Required("Final spin rate", "< 2 rpm", 0, "rpm", Verdict.Met, "nominal; 99.7 % of cases asked for"),
                Required("Cord safety factor", "> 3", 4.61, "", Verdict.Met, "breaking load over peak tension"),
                Required("Wobble", "< 5°", null, "", Verdict.NotShown, "needs the three-dimensional motion"),
            ],
            Unwinding = unwinding,
            Charts =
            [
                new LineChart
                {
                    Title = "Spin rate",
                    X = new("Time", "s"),
                    Y = new("Hub spin rate", "rpm"),
                    Series = [new("Hub", all, [.. unwinding.Frames.Select(f => f.Spin)])],
                    Events = events,
                    FollowsAnimation = true,
                },
                new LineChart
                {
                    Title = "Cord tension",
                    X = new("Time", "s"),
                    Y = new("Tension, each cord", "N"),
                    Series = [new("Each cord", times, [.. attached.Select(f => f.Cords[0].Tension)])],
                    Events = events,
                    Marks = [new(peak.Time, peak.Cords[0].Tension, $"peak {new Figure(peak.Cords[0].Tension, "N")}")],
                    FollowsAnimation = true,
                },
                new LineChart
                {
                    Title = "Speed of the weights",
                    X = new("Time", "s"),
                    Y = new("Speed, axes that do not turn", "m/s"),
                    Series = [new("Each weight", times[1..], weightSpeed)],
                    Events = events,
                    FollowsAnimation = true,
                },
                new LineChart
                {
                    Title = "Where the energy is",
                    X = new("Time", "s"),
                    Y = new("Kinetic energy", "J"),
                    Series =
                    [
                        new("Hub", times, [.. attached.Select(f => 0.5 * Inertia * f.Spin * Rpm * f.Spin * Rpm)]),
                        new("Both weights", times[1..], [.. weightSpeed.Select(v => 0.5 * Weights * v * v)]),
                        new("Sum", times[1..], [.. weightSpeed.Select((v, i) => (0.5 * Weights * v * v) + (0.5 * Inertia * Math.Pow(attached[i + 1].Spin * Rpm, 2)))]),
                    ],
                    Events = events,
                    FollowsAnimation = true,
                },
                Trade(),
            ],
            ResidualSpin = new Histogram
            {
                Title = "Residual spin rate",
                X = new("Final spin rate", "rpm"),
                Edges = [.. Enumerable.Range(-10, 21).Select(i => i * 0.25)],
                Counts = [.. Enumerable.Range(-10, 20).Select(i => (long)(2000 * Math.Exp(-Math.Pow((i + 0.5) * 0.25 / 0.8, 2) / 2)))],
                Events = [new(-2, "limit"), new(2, "limit")],
                Caption = "20 000 sampled cases.",
            },
            Sensitivity = new Sensitivity(
                new("final spin rate", "rpm"),
                [
                    new("Spin inertia", "± 2 %", 0.72, -0.72),
                    new("Cord angle at let-go", "± 4°", 0.31, -0.28),
                    new("Weight mass", "± 1 g", 0.058, -0.058),
                    new("Hub radius", "± 0.3 mm", -0.011, 0.011),
                ],
                "Low and high end of each tolerance, one standard deviation."),
            Assumptions =
            [
                "Planar motion: spin about a principal axis through the centre of mass, no wobble.",
                "Both weights and both cords are alike and are released together.",
                "Cords are massless and do not stretch.",
                "Winding opposes the spin, so that the cords leave the drum tangentially and trail.",
                "No friction on the drum, no outside torque.",
            ],
            Checks =
            [
                new("Angular momentum at let-go against the start", 3.1e-14, 1e-12),
                new("Kinetic energy at let-go against the start", 1.7e-13, 1e-12),
                new("Closed form against numeric integration, final spin rate", 5.6e-14, 1e-10),
            ],
            Cautions = [$"In this design each weight leaves at {new Figure(weightSpeed[^1], "m/s", 3)} with {new Figure(0.31 * weightSpeed[^1] * weightSpeed[^1], "J", 3)}."],
            Inputs =
            [
                new("vehicle.mass", "Mass of the vehicle", "182 kg", "± 0.5 %"),
                new("vehicle.inertia.zz", "Spin inertia about the centre of mass", "18.4 kg*m^2", "± 2 %", new(18.4, "kg·m²")),
                new("spin.rate", "Initial spin rate", "72 rpm", "± 2 %", new(72 * Rpm, "rad/s")),
                new("despin.hub_radius", "Hub radius to the cord's centreline", "430 mm", "± 0.3 mm", new(0.43, "m", 3)),
                new("despin.weights", "Number of weights", "2"),
                new("despin.weight_mass", "Mass of each weight", "0.62 kg", "± 1 g"),
                new("despin.final_rate", "Final spin rate", "0 rpm", "", new(0, "rad/s")),
                new("despin.let_go", "Let-go", "radial"),
                new("despin.cord.breaking_load", "Breaking load of the cord", "2.1 kN", "", new(2100, "N")),
            ],
            Unused =
            [
                new("despin.second_weight_delay", "2 ms"),
                new("despin.cord.stiffness", "110 kN"),
            ],
        };
    }

    private static AnswerFigure Row(string name, double value, string unit, string note = "", bool solved = false) => new("", name, value, value, unit, note, solved);

    private static JudgedRequirement Required(string name, string limit, double? value, string unit, Verdict verdict, string note) =>
        new("", name, limit, 0, value, unit, value, unit, verdict, note);

    private static Unwinding MakeUnwinding()
    {
        var frames = new List<UnwindingFrame>();
        double wound = Motion.Length / Motion.Radius;
        foreach ((double time, double hub, double spin, double tension, double tangent, double cord, double free) in Motion.ToRadial(240))
        {
            double x = (Radius * Math.Cos(tangent)) + (free * Math.Cos(cord));
            double y = (Radius * Math.Sin(tangent)) + (free * Math.Sin(cord));
            double root = Math.Min(wound, tangent - hub);
            frames.Add(Frame(time, hub, spin, root, x, y, free, tension, CordHold.Taut));
        }

        UnwindingFrame before = frames[^2];
        UnwindingFrame last = frames[^1];
        double dt = last.Time - before.Time;
        (double lastX, double lastY) = At(last);
        double vx = (lastX - At(before).X) / dt;
        double vy = (lastY - At(before).Y) / dt;
        double turn = Motion.ToRadial(240)[^1].Hub;
        for (int i = 0; i <= 40; i++)
        {
            double after = i * 0.005;
            frames.Add(Frame(last.Time + after, turn + (last.Spin * Rpm * after), last.Spin * Rpm, wound, lastX + (vx * after), lastY + (vy * after), 0, 0, CordHold.Gone));
        }

        return new Unwinding
        {
            Hub = new HubShape(Radius, -0.5, 0.5, 0, 0, "The hub is drawn as a cylinder of the drum's radius; its length stands for nothing."),
            Drums = [new Drum(Radius, 0, wound, Radius * wound), new Drum(Radius, 0, wound + Math.PI, Radius * wound)],
            SpinUnit = "rpm",
            Frames = frames,
            Phases = [new("unwinding", 0), new("hinging", Motion.UnwindingEnds), new("free flight", last.Time)],
            LetGo = last.Time,
        };
    }

    private static UnwindingFrame Frame(
        double time, double hub, double spin, double root, double x, double y, double free, double tension, CordHold hold) => new(
        time,
        Rotation<HubAxes, StageAxes>.About(Direction<HubAxes>.ZAxis, Angle.FromRadians(hub)),
        spin / Rpm,
        new HubMomentum(Direction<StageAxes>.ZAxis, spin / Motion.InitialSpin),
        null,
        [
            new CordFrame(root, 0, [], Position<StageAxes>.Of(x, y, 0, LengthUnit.Meter), free, tension, hold),
            new CordFrame(root + Math.PI, 0, [], Position<StageAxes>.Of(-x, -y, 0, LengthUnit.Meter), free, tension, hold),
        ]);

    private static (double X, double Y) At(UnwindingFrame frame) => (frame.Cords[0].Weight.X.Meters, frame.Cords[0].Weight.Y.Meters);

    private static LineChart Trade()
    {
        double[] masses = [.. Enumerable.Range(0, 61).Select(i => 0.2 + (i * 0.02))];
        return new LineChart
        {
            Title = "Trade: cord length against weight mass",
            X = new("Weight mass, each", "kg"),
            Y = new("Cord length, each", "m"),
            Series =
            [
                new("let go radially", masses, [.. masses.Select(m => PlanarMotion.RadialLengthToZero(Inertia, 2 * m, Radius))]),
                new("let go at the tangent", masses, [.. masses.Select(m => Math.Sqrt((Radius * Radius) + (Inertia / (2 * m))))]),
            ],
            Marks = [new(0.62, Motion.Length, "this design")],
            Caption = "Every point takes 72 rpm to 0 rpm.",
        };
    }

    private static double Speed(UnwindingFrame a, UnwindingFrame b) =>
        Math.Sqrt(Math.Pow(At(b).X - At(a).X, 2) + Math.Pow(At(b).Y - At(a).Y, 2)) / (b.Time - a.Time);
}
