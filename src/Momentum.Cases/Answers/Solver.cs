using Momentum.Cases.Keys;
using Momentum.Cases.Sections;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Maps a case to the library's calls and the library's results to an answer.</summary>
public static class Solver
{
    private const double RpmPerRadian = 30 / Math.PI;

    /// <summary>Sizes and simulates a case, and runs the cases drawn from its tolerances.</summary>
    /// <param name="judgement">A case judged without errors.</param>
    /// <param name="options">How the spread is run; the usual way if left out.</param>
    /// <param name="progress">Told how far the spread has come, from 0 to 1; it is called on the thread that computes.</param>
    /// <param name="cancellation">Ends the computation.</param>
    /// <exception cref="ArgumentException">The judgement has errors, or the library refuses a value of the case.</exception>
    /// <exception cref="ComputationRefusedException">The library refuses: no solution, or one that cannot be trusted.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static Answer Solve(Judgement judgement, SpreadOptions? options = null, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        if (judgement.Body is not { } body)
        {
            throw new ArgumentException("The case has errors, and there is no answer to it. Look at Problems, and read it again when they are mended.", nameof(judgement));
        }

        SpreadOptions run = (options ?? SpreadOptions.Usual) with { Progress = progress, Cancellation = cancellation };
        CaseReading reading = judgement.Reading;
        Case given = reading.Case!;
        var findings = new Findings(reading.File);
        string solvedFor = UnknownOf(given.Despin);
        var hub = new DespinHub(body.SpinInertia, given.Despin.HubRadius.Value, given.Spin.Rate.Value);
        LetGo letGo = LetGoOf(given.Despin.LetGo);
        SpringCords? springs = given.Despin.OnSprings ? SpringCords.Size(given.Despin, hub, letGo) : null;
        PlanarMotion motion = springs is null ? Size(given.Despin, hub, letGo).Deploy() : springs.Motion;
        DesignJudge.Judge(given, motion, findings);
        Spread? spread = SpreadRun.Of(given, body, motion, run);
        WholeMotion? whole = WholeMotion.Of(given, body, motion, findings, out string whyNotWhole);
        WholeSpread? wholeSpread = SpreadRun.Of(given, body, whole, run);
        return new Answer(reading, body, motion)
        {
            Springs = springs,
            Whole = whole,
            WholeSpread = wholeSpread,
            WhyNotWhole = whyNotWhole,
            SolvedFor = solvedFor,
            Figures = FiguresOf(given, body, motion, springs, solvedFor),
            Spread = spread,
            Requirements = RequirementJudge.Judge(given, motion, spread, whole, wholeSpread, whyNotWhole),
            Warnings = [.. judgement.Problems, .. findings.Problems],
            Assumptions = AssumptionsOf(given, springs, whole),
        };
    }

    /// <summary>The key that a case leaves to be solved for; on spring cords the stiffness is too.</summary>
    internal static string UnknownOf(DespinSection despin) =>
        despin.CordLength is null ? "cord_length" : despin.WeightMass is null ? "weight_mass" : "final_rate";

    /// <summary>Breaking load over the peak tension of one cord; null without a breaking load.</summary>
    internal static double? CordSafetyFactor(Case given, PlanarMotion motion) =>
        given.Despin.Cord?.BreakingLoad is { } load ? load.Value.Newtons / motion.PeakTension.Tension.Newtons : null;

    private static LetGo LetGoOf(LetGoSection letGo) => letGo switch
    {
        { Rule: LetGoRule.Tangent } => LetGo.Tangent,
        { Rule: LetGoRule.Radial } => LetGo.Radial,
        { Angle: { } angle } => LetGo.AtCordAngle(angle.Value),
        _ => LetGo.AtSpin(letGo.Rate!.Value),
    };

    private static DespinDesign Size(DespinSection despin, DespinHub hub, LetGo letGo)
    {
        LinearDensity? density = despin.Cord?.LineDensity?.Value;
        return UnknownOf(despin) switch
        {
            "cord_length" => hub.SizeCordLength(despin.WeightMass!.Value, despin.FinalRate!.Value, letGo, density, despin.Weights),
            "weight_mass" => hub.SizeWeightMass(despin.CordLength!.Value, despin.FinalRate!.Value, letGo, density, despin.Weights),
            _ => hub.Carrying(despin.WeightMass!.Value, despin.CordLength!.Value, letGo, density, despin.Weights),
        };
    }

    private static List<AnswerFigure> FiguresOf(Case given, SpinningBody body, PlanarMotion motion, SpringCords? springs, string solvedFor)
    {
        PlanarDesign design = motion.Design;
        PeakTension peak = motion.PeakTension;
        double initial = design.Hub.Spin.RadiansPerSecond;
        double final = motion.FinalSpin.RadiansPerSecond;
        double speed = motion.Departure.Speed.MetersPerSecond;
        List<AnswerFigure> figures =
        [
            AnswerFigure.Si("cord_length_m", "Cord length, each", design.CordLength.Meters, "m", "from its end point on the hub to the weight's centre of mass", solvedFor == "cord_length"),
            .. springs?.DesignFigures ?? [],
            AnswerFigure.Si("weight_mass_kg", "Weight mass, each", design.WeightMass.Kilograms, "kg", "", solvedFor == "weight_mass"),
            new("final_spin_rad_s", "Final spin rate", final, Rounded(final, initial) * RpmPerRadian, "rpm", "of the body after let-go; negative if reversed", solvedFor == "final_rate"),
            new("unwind_time_s", "Unwinding time", motion.UnwindTime.Seconds, motion.UnwindTime.Seconds, "s", "from release of the weights"),
            new("let_go_time_s", "Let-go time", motion.LetGoTime.Seconds, motion.LetGoTime.Seconds, "s", "from release of the weights"),
            AnswerFigure.Si("peak_cord_tension_n", "Peak cord tension, each", peak.Tension.Newtons, "N", PeakNote(peak)),
            AnswerFigure.Si("peak_tension_time_s", "Time of peak tension", peak.Time.Seconds, "s"),
            AnswerFigure.Si("peak_tension_free_cord_length_m", "Free cord length at peak tension", peak.UnwoundLength.Meters, "m"),
            new("peak_tension_cord_angle_rad", "Cord angle at peak tension", peak.CordAngle.Radians, peak.CordAngle.Degrees, "deg", "from tangent"),
            .. springs?.StretchFigures ?? [],
        ];
        if (CordSafetyFactor(given, motion) is { } margin)
        {
            figures.Add(AnswerFigure.Si("cord_safety_factor", "Cord safety factor", margin, "", "breaking load over peak tension of one cord"));
        }

        if (given.Despin.SecondWeightDelay is { } delay && motion is DespinMotion inextensible)
        {
            LateLetGo late = inextensible.WithOneWeightLate(delay.Value, body.Mass);
            string note = FormattableString.Invariant($"if one weight lets go {delay.Value.Milliseconds:G3} ms after the others");
            figures.Add(new("late_weight_final_spin_rad_s", "Final spin rate, one weight late", late.FinalSpin.RadiansPerSecond, Rounded(late.FinalSpin.RadiansPerSecond, initial) * RpmPerRadian, "rpm", note));
            figures.Add(AnswerFigure.Si("late_weight_drift_m_s", "Drift of the body, one weight late", late.HubDrift.MetersPerSecond, "m/s", note));
        }

        figures.AddRange(
        [
            AnswerFigure.Si("weight_let_go_speed_m_s", "Weight speed at let-go", speed, "m/s", "in space, about the body's centre of mass"),
            SpeedFigure("weight_let_go_radial_speed_m_s", "Outward part of that speed", motion.Departure.RadialSpeed, ""),
            SpeedFigure("weight_let_go_tangential_speed_m_s", "Sideways part of that speed", motion.Departure.TangentialSpeed, "positive in the sense of the initial spin"),
            AnswerFigure.Si("weight_let_go_energy_j", "Energy of each weight at let-go", 0.5 * design.WeightMass.Kilograms * speed * speed, "J"),
            new("let_go_cord_angle_rad", "Cord angle at let-go", motion.AtLetGo.CordAngle.Radians, motion.AtLetGo.CordAngle.Degrees, "deg", "from tangent"),
            AnswerFigure.Si("let_go_free_cord_length_m", "Free cord length at let-go", motion.AtLetGo.UnwoundLength.Meters, "m"),
            new("hub_turn_rad", "Turn of the body until let-go", motion.HubTurn.Radians, motion.HubTurn.Degrees, "deg"),
            AnswerFigure.Si("cord_turns", "Turns of cord on the hub", design.CordTurns, ""),
            AnswerFigure.Si("stowed_holding_force_n", "Force that holds each stowed weight", motion.StowedHoldingForce.Newtons, "N", "at the initial spin rate, without its cord"),
            AnswerFigure.Si("cord_mass_kg", "Cord mass, each", (given.Despin.Cord?.LineDensity?.Value.KilogramsPerMeter ?? 0) * design.CordLength.Meters, "kg"),
            AnswerFigure.Si("weights", "Number of weights", design.WeightCount, ""),
            AnswerFigure.Si("hub_radius_m", "Hub radius", design.Hub.Radius.Meters, "m", "to the cord's centreline"),
            new("initial_spin_rad_s", "Initial spin rate", initial, initial * RpmPerRadian, "rpm"),
            .. BodyFigures.Of(body, design.Hub.Radius),
            AnswerFigure.Si("initial_angular_momentum_kg_m2_s", "Angular momentum", motion.Ledger.AngularMomentum.KilogramSquareMetersPerSecond, "kg·m²/s", "of body, weights and cords, about the spin axis"),
            AnswerFigure.Si("initial_energy_j", "Energy of rotation", motion.Ledger.Energy.Joules, "J", "of body, weights and cords, before release"),
            AnswerFigure.Si("angular_momentum_closure", "Angular momentum closes to", motion.Ledger.MomentumClosure, "", "largest relative departure over the motion"),
            AnswerFigure.Si("energy_closure", "Energy closes to", motion.Ledger.EnergyClosure, "", "largest relative departure over the motion"),
        ]);
        return figures;

        AnswerFigure SpeedFigure(string key, string name, Speed part, string note) =>
            new(key, name, part.MetersPerSecond, Rounded(part.MetersPerSecond, speed), "m/s", note);
    }

    /// <summary>What rounding leaves of nothing is shown as the zero that it is; the machine's key keeps the number.</summary>
    internal static double Rounded(double value, double scale) => Math.Abs(value) < 1e-9 * scale ? 0 : value;

    private static string PeakNote(PeakTension peak) => peak.Phase == CordPhase.Unwinding ? "while unwinding" : "while hinging";

    private static List<string> AssumptionsOf(Case given, SpringCords? springs, WholeMotion? whole)
    {
        List<string> assumptions =
        [
            "The design is planar and symmetric: the body spins about a principal axis through its centre of mass, and the weights are equal, evenly spaced and let go together.",
            "The spin inertia is taken about the spin axis through the centre of mass, without weights and cords; the weights ride at the hub radius until their release.",
            "In the design the cords " + (springs is null ? "do not stretch, " : "") + "leave the hub along its tangent, and are wound against the spin so that they trail as they unwind.",
            .. springs is null ? [] : SpringCords.AssumptionsOf(given, whole is not null),
        ];
        if (given.Part.Count > 0)
        {
            assumptions.Add("Of the parts' tolerances those of mass and density are counted, not those of sizes and places.");
        }

        assumptions.Add(given.Despin.Cord?.LineDensity is null
            ? "The cords have no mass: none is stated."
            : "The cords' mass is counted, each taken as straight where it is free.");
        if (whole is not null)
        {
            assumptions.AddRange(WholeMotion.AssumptionsOf(given, whole));
        }

        return assumptions;
    }
}
