using Momentum.Cases.Keys;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The numbers of the whole motion.</summary>
internal static class WholeMotionFigures
{
    private const double RpmPerRadian = 30 / Math.PI;

    /// <summary>The motion, what its ledger holds, and what happens in it.</summary>
    public static AnswerGroup Of(WholeMotion whole) => new("whole_motion", "Whole motion, in three dimensions",
    [
        .. Motion(whole),
        .. Ledger(whole.Result),
        Events(whole.Result),
    ]);

    private static List<AnswerFigure> Motion(WholeMotion whole)
    {
        DeploymentResult result = whole.Result;
        double initial = result.Deployment.Rates.ComponentAlong(result.Deployment.SpinAxis).RadiansPerSecond;
        List<AnswerFigure> figures =
        [
            Rate("final_spin_rad_s", "Final spin rate, in three dimensions", result.FinalSpin, "").Headline(),
        ];
        if (result.Deployment.Rig is null)
        {
            figures.AddRange(
            [
                Degrees("nutation_before_rad", "Nutation half-angle before release", result.Before.LargestNutation, "largest; between spin axis and angular momentum"),
                Degrees("nutation_during_rad", "Nutation half-angle during unwinding", result.During.LargestNutation, "largest"),
                Degrees("nutation_after_rad", "Nutation half-angle after let-go, in three dimensions", result.After.LargestNutation, "largest, for all time after").Headline(),
                Rate("transverse_rate_before_rad_s", "Transverse rate before release", result.Before.LargestTransverseRate, "largest"),
                Rate("transverse_rate_during_rad_s", "Transverse rate during unwinding", result.During.LargestTransverseRate, "largest"),
                Rate("transverse_rate_after_rad_s", "Transverse rate after let-go, in three dimensions", result.After.LargestTransverseRate, "largest, for all time after").Headline(),
                Rate("spin_after_rad_s", "Spin rate after let-go", result.After.LargestSpin, "size, largest for all time after: a wobbling body's comes and goes"),
                Degrees("angular_momentum_tilt_after_rad", "Turn of the angular momentum", result.After.MomentumTilt, "its direction after let-go against that before release"),
            ]);
        }

        foreach (PeakTension peak in result.PeakTensions)
        {
            figures.Add(AnswerFigure.Si(
                FormattableString.Invariant($"peak_tension_cord_{peak.Cord + 1}_n"), FormattableString.Invariant($"Peak tension of cord {peak.Cord + 1}"), peak.Tension.Newtons, "N",
                FormattableString.Invariant($"at {peak.Time.Seconds:G4} s")));
        }

        foreach (WeightDeparture letGo in result.Departures)
        {
            string number = FormattableString.Invariant($"{letGo.Cord + 1}");
            figures.Add(AnswerFigure.Si(
                $"let_go_speed_weight_{number}_m_s", $"Speed of weight {number} at let-go", letGo.Speed.MetersPerSecond, "m/s",
                result.Deployment.Rig is null ? "inertial; the vehicle at rest before release" : "relative to the room"));
            figures.Add(AnswerFigure.Si(
                $"let_go_energy_weight_{number}_j", $"Kinetic energy of weight {number} at let-go", letGo.Energy.Joules, "J", "of the weight alone"));
        }

        if (whole.Residual is { } residual)
        {
            figures.AddRange(residual.Shares.Select(share =>
                Rate($"final_spin_by_{KeyDescription.SpellingOf(share.Cause.ToString())}_rad_s", $"Final spin rate from {Words(share.Cause)}", share.Share, "")));
            figures.Add(Rate("final_spin_by_causes_together_rad_s", "Final spin rate from causes acting together", residual.Together, ""));
            figures.Add(Rate("final_spin_ideal_rad_s", "Final spin rate without any of them", residual.Ideal, "of the same weights on light cords, in the plane"));
        }

        figures.Add(AnswerFigure.Si("ledger_closure", "Ledger closes to", result.Ledger.Closure, "", "momenta and energy, largest relative departure"));
        return figures;

        AnswerFigure Rate(string key, string name, RotationalSpeed rate, string note) =>
            new(key, name, rate.RadiansPerSecond, Solver.Rounded(rate.RadiansPerSecond, initial) * RpmPerRadian, "rpm", note);

        static AnswerFigure Degrees(string key, string name, Angle angle, string note) => new(key, name, angle.Radians, angle.Degrees, "deg", note);
    }

    private static IEnumerable<AnswerNode> Ledger(DeploymentResult result)
    {
        DeploymentLedger ledger = result.Ledger;
        yield return new AnswerGroup("", "Ledger of the whole motion",
        [
            new AnswerWord("drum", "What the cords are wound on", result.Deployment.Cords[0].Surface.ToString().ToLowerInvariant()),
            .. Components("before", "before release", result.Before.Momentum),
            .. Components("after", "after let-go", result.After.Momentum),
            AnswerFigure.Si("linear_momentum_closure", "Linear momentum closes to", ledger.LinearMomentumClosure, ""),
            AnswerFigure.Si("angular_momentum_closure", "Angular momentum closes to", ledger.AngularMomentumClosure, ""),
            AnswerFigure.Si("energy_closure", "Energy closes to", ledger.EnergyClosure, ""),
            Joules("energy_at_start_j", "Energy at the start", ledger.EnergyAtStart.Total),
            Joules("energy_at_end_j", "Energy at the end", ledger.EnergyAtEnd.Total),
            Joules("energy_carried_away_j", "Energy carried away", ledger.EnergyCarriedAway),
            Joules("cord_damping_work_j", "Work of damping in the cords", ledger.CordDampingWork),
            Joules("drum_friction_work_j", "Work of friction at the drums", ledger.DrumFrictionWork),
            Joules("bearing_work_j", "Work of the bearing", ledger.BearingWork),
            Joules("impulse_loss_j", "Energy that impulses take", ledger.ImpulseLoss),
        ]);

        static AnswerFigure Joules(string key, string name, Energy energy) => AnswerFigure.Si(key, name, energy.Joules, "J");

        static IEnumerable<AnswerFigure> Components(string when, string words, Vector<AngularMomentum, Inertial> momentum) =>
            new[] { ("x", momentum.X), ("y", momentum.Y), ("z", momentum.Z) }.Select(c => AnswerFigure.Si(
                $"angular_momentum_{when}_{c.Item1}_kg_m2_s", $"Angular momentum of the body {words}, {c.Item1}", c.Item2.KilogramSquareMetersPerSecond, "kg·m²/s", "along inertial axes"));
    }

    private static AnswerTable Events(DeploymentResult result) => new("events", "What happens", [.. result.Events.Select(e => AnswerTable.Row(
        new AnswerWord("event", "Event", KeyDescription.SpellingOf(e.Kind.ToString())),
        AnswerFigure.Si("time_s", "Time", e.Time.Seconds, "s"),
        e.Cord is { } cord ? new AnswerCount("cord", "Cord", cord + 1) : null,
        AnswerFigure.Si("energy_lost_j", "Energy lost", e.EnergyLost.Joules, "J")))]);

    /// <summary>A cause as the middle of a sentence.</summary>
    public static string Words(SpinCause cause) => cause switch
    {
        SpinCause.Wobble => "wobble before release",
        SpinCause.Imbalance => "imbalance of the body",
        SpinCause.CordPlaneOffset => "cords beside the centre of mass",
        SpinCause.CordStretch => "stretch of the cords",
        SpinCause.CordMass => "mass of the cords",
        SpinCause.DrumFriction => "friction at the drums",
        SpinCause.UnequalCords => "unequal cords",
        SpinCause.LateLetGo => "cords that let go late",
        SpinCause.LateRelease => "weights released late",
        SpinCause.StuckCords => "stuck cords",
        SpinCause.Rig => "the rig's bearing and gravity",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "This cause has no words yet."),
    };
}
