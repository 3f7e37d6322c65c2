using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The numbers of the sized design and of its planar motion.</summary>
internal static class PlanarFigures
{
    private const double RpmPerRadian = 30 / Math.PI;

    public static IEnumerable<AnswerGroup> Of(Case given, SpinningBody body, PlanarMotion motion, SpringCords? springs, Spread? spread, string solvedFor)
    {
        yield return Design(given, motion, springs, solvedFor);
        yield return Motion(given, body, motion, springs, spread, solvedFor);
        yield return BodyFigures.Of(body, motion.Design.Hub.Radius);
        yield return Conservation(motion);
    }

    private static AnswerGroup Design(Case given, PlanarMotion motion, SpringCords? springs, string solvedFor)
    {
        PlanarDesign design = motion.Design;
        double initial = design.Hub.Spin.RadiansPerSecond;
        return new AnswerGroup("", "Design",
        [
            AnswerFigure.Si("cord_length_m", "Cord length, each", design.CordLength.Meters, "m", "from its end point on the hub to the weight's centre of mass", solvedFor == "cord_length").Headline(),
            .. springs?.DesignFigures ?? [],
            AnswerFigure.Si("weight_mass_kg", "Weight mass, each", design.WeightMass.Kilograms, "kg", "", solvedFor == "weight_mass").Headline(),
            new AnswerFigure("initial_spin_rad_s", "Initial spin rate", initial, initial * RpmPerRadian, "rpm").Headline(),
            new AnswerCount("weights", "Number of weights", design.WeightCount),
            AnswerFigure.Si("hub_radius_m", "Hub radius", design.Hub.Radius.Meters, "m", "to the cord's centreline"),
            AnswerFigure.Si("cord_turns", "Turns of cord on the hub", design.CordTurns, ""),
            AnswerFigure.Si("cord_mass_kg", "Cord mass, each", (given.Despin.Cord?.LineDensity?.Value.KilogramsPerMeter ?? 0) * design.CordLength.Meters, "kg"),
            AnswerFigure.Si("stowed_holding_force_n", "Force that holds each stowed weight", motion.StowedHoldingForce.Newtons, "N", "at the initial spin rate, without its cord"),
        ]);
    }

    private static AnswerGroup Motion(Case given, SpinningBody body, PlanarMotion motion, SpringCords? springs, Spread? spread, string solvedFor)
    {
        PlanarDesign design = motion.Design;
        PeakTension peak = motion.PeakTension;
        double initial = design.Hub.Spin.RadiansPerSecond;
        double final = motion.FinalSpin.RadiansPerSecond;
        double speed = motion.AtLetGo.WeightSpeed.MetersPerSecond;
        List<AnswerNode> nodes =
        [
            new AnswerFigure("final_spin_rad_s", "Final spin rate", final, Solver.Rounded(final, initial) * RpmPerRadian, "rpm", "of the body after let-go; negative if reversed", solvedFor == "final_rate")
            {
                Spread = spread is not { Ensemble.FinalSpin.Count: > 1 } ? null : SpreadFigures.OfSpin(spread.Ensemble.FinalSpin.StandardDeviation),
            }.Headline(),
            AnswerFigure.Si("unwind_time_s", "Unwinding time", motion.UnwindTime.Seconds, "s", "from release of the weights").Headline(),
            AnswerFigure.Si("let_go_time_s", "Let-go time", motion.LetGoTime.Seconds, "s", "from release of the weights").Headline(),
            new AnswerFigure("hub_turn_rad", "Turn of the body until let-go", motion.HubTurn.Radians, motion.HubTurn.Degrees, "deg").Headline(),
            AnswerFigure.Si("peak_cord_tension_n", "Peak cord tension, each", peak.Tension.Newtons, "N", peak.Phase == CordPhase.Unwinding ? "while unwinding" : "while hinging") with
            {
                IsHeadline = true,
                Spread = spread is not { Ensemble.FinalSpin.Count: > 1 } ? null : new FigureSpread(spread.Ensemble.PeakTension.StandardDeviation.Newtons, spread.Ensemble.PeakTension.StandardDeviation.Newtons),
            },
            .. springs?.StretchFigures ?? [],
        ];
        if (Solver.CordSafetyFactor(given, motion) is { } factor)
        {
            nodes.Add(AnswerFigure.Si("cord_safety_factor", "Cord safety factor", factor, "", "breaking load over peak tension of one cord").Headline());
        }

        nodes.AddRange(
        [
            AnswerFigure.Si("weight_let_go_speed_m_s", "Weight speed at let-go", speed, "m/s", "in space, about the body's centre of mass").Headline(),
            AnswerFigure.Si("weight_let_go_energy_j", "Energy of each weight at let-go", 0.5 * design.WeightMass.Kilograms * speed * speed, "J").Headline(),
            AnswerFigure.Si("peak_tension_time_s", "Time of peak tension", peak.Time.Seconds, "s"),
            AnswerFigure.Si("peak_tension_free_cord_length_m", "Free cord length at peak tension", peak.FreeLength.Meters, "m"),
            new AnswerFigure("peak_tension_cord_angle_rad", "Cord angle at peak tension", peak.CordAngle.Radians, peak.CordAngle.Degrees, "deg", "from tangent"),
            new AnswerWord("peak_tension_phase", "Phase of peak tension", peak.Phase.ToString().ToLowerInvariant()),
        ]);
        if (given.Despin.SecondWeightDelay is { } delay && motion is DespinMotion inextensible)
        {
            LateDeparture late = inextensible.WithOneWeightLate(delay.Value, body.Mass);
            string note = FormattableString.Invariant($"if one weight lets go {delay.Value.Milliseconds:G3} ms after the others");
            nodes.Add(new AnswerFigure("late_weight_final_spin_rad_s", "Final spin rate, one weight late", late.FinalSpin.RadiansPerSecond, Solver.Rounded(late.FinalSpin.RadiansPerSecond, initial) * RpmPerRadian, "rpm", note));
            nodes.Add(AnswerFigure.Si("late_weight_drift_m_s", "Drift of the body, one weight late", late.HubDrift.MetersPerSecond, "m/s", note));
        }

        nodes.AddRange(
        [
            SpeedFigure("weight_let_go_radial_speed_m_s", "Outward part of the weight speed", motion.AtLetGo.WeightRadialSpeed, ""),
            SpeedFigure("weight_let_go_tangential_speed_m_s", "Sideways part of the weight speed", motion.AtLetGo.WeightTangentialSpeed, "positive in the sense of the initial spin"),
            new AnswerFigure("let_go_cord_angle_rad", "Cord angle at let-go", motion.AtLetGo.CordAngle.Radians, motion.AtLetGo.CordAngle.Degrees, "deg", "from tangent"),
            AnswerFigure.Si("let_go_free_cord_length_m", "Free cord length at let-go", motion.AtLetGo.FreeLength.Meters, "m"),
            new AnswerWord("let_go_phase", "Phase of let-go", motion.LetGoPhase.ToString().ToLowerInvariant()),
        ]);
        return new AnswerGroup("", "Planar motion", nodes);

        AnswerFigure SpeedFigure(string key, string name, Speed part, string note) =>
            new(key, name, part.MetersPerSecond, Solver.Rounded(part.MetersPerSecond, speed), "m/s", note);
    }

    private static AnswerGroup Conservation(PlanarMotion motion) => new("", "What the planar motion conserves",
    [
        AnswerFigure.Si("initial_angular_momentum_kg_m2_s", "Angular momentum", motion.Ledger.AngularMomentumAtStart.Z.KilogramSquareMetersPerSecond, "kg·m²/s", "of body, weights and cords, about the spin axis"),
        AnswerFigure.Si("initial_energy_j", "Energy of rotation", motion.Ledger.EnergyAtStart.Total.Joules, "J", "of body, weights and cords, before release"),
        AnswerFigure.Si("angular_momentum_closure", "Angular momentum closes to", motion.Ledger.AngularMomentumClosure, "", "largest relative departure over the motion"),
        AnswerFigure.Si("energy_closure", "Energy closes to", motion.Ledger.EnergyClosure, "", "largest relative departure over the motion"),
    ]);
}
