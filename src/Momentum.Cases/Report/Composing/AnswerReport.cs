using System.Globalization;
using System.Reflection;
using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Cases.Syntax;
using Momentum.Tethers;
using Momentum.Tethers.Springs;

namespace Momentum.Cases.Report.Composing;

/// <summary>Composes the report of an answer.</summary>
internal static class AnswerReport
{
    /// <summary>What a reviewer signs, in the order in which it is read; everything else is a further figure.</summary>
    private static readonly string[] _signed =
    [
        "cord_length_m", "stiffness_n", "weight_mass_kg", "initial_spin_rad_s", "final_spin_rad_s", "unwind_time_s", "let_go_time_s", "hub_turn_rad",
        "peak_cord_tension_n", "peak_tension_stretch_m", "cord_safety_factor", "weight_let_go_speed_m_s", "weight_let_go_energy_j",
    ];

    /// <summary>Shown as checks of the computation instead.</summary>
    private static readonly string[] _checked = ["angular_momentum_closure", "energy_closure"];

    /// <summary>Signed too, of the motion in three dimensions; the rest of it has a section of its own.</summary>
    private static readonly string[] _signedOfWhole = ["final_spin_rad_s", "nutation_after_rad", "transverse_rate_after_rad_s"];

    private static readonly string[] _counts = ["weights"];

    /// <summary>Everything the answer holds, as a report shows it.</summary>
    public static DespinReport Of(Answer answer)
    {
        PlanarMotion motion = answer.Motion;
        Case given = answer.Reading.Case!;
        IReadOnlyList<GivenKey> keys = GivenKey.AllOf(answer.Reading);
        WholePictures? whole = answer.Whole is null ? null : WholePictures.Of(answer.Whole.Result);
        return new DespinReport
        {
            Title = TomlText.Printable(given.Title),
            Summary = Summary(motion),
            Case = new CaseIdentity(Path.GetFileName(answer.Reading.File), answer.Reading.Sha256, ToolVersion()),
            Answers = [.. _signed.SelectMany(key => answer.Figures.Where(f => f.Key == key)).Select(Row), .. Whole(answer)],
            FurtherFigures = [.. answer.Figures.Where(f => !_signed.Contains(f.Key) && !_checked.Contains(f.Key)).Select(Row)],
            Warnings = [.. answer.Warnings.Select(Sentence)],
            Requirements = [.. answer.Requirements.Select(Row)],
            Springs = answer.Springs is { } springs ? SpringWords.Of(springs) : null,
            Whole = answer.Whole is null ? null : WholeMotionWords.Of(answer.Whole.Result, answer.Whole.Residual, motion),
            WhyNotWhole = answer.WhyNotWhole,
            Unwinding = whole?.Unwinding ?? PlanarPictures.Unwinding(motion, answer.Body, given.Bench),
            Charts = [.. whole?.Charts(motion) ?? PlanarPictures.Charts(motion), .. TradeChart.Of(Trade.Of(motion), motion)],
            WholeSpread = answer.WholeSpread is { } spread
                ? new WholeSpreadRows(spread.Ensemble.Cases, spread.Ensemble.Failed, [.. WholeMotionFigures.Of(spread).Select(Row)])
                : null,
            ResidualSpin = ResidualSpin.Of(given, answer.Spread),
            Sensitivity = ToleranceSensitivity.Of(given, answer.Spread, motion.Design.Hub.Spin),
            Assumptions = answer.Assumptions,
            Checks = SelfChecks.Of(answer),
            Cautions = [Caution(motion), .. answer.Springs is { } stretched ? [SpringWords.Caution(stretched)] : Array.Empty<string>()],
            Inputs = [.. keys.Where(k => !k.NotUsedYet).Select(k => k.ToInput())],
            Unused = [.. keys.Where(k => k.NotUsedYet).Select(k => new UnusedKey(k.Path, k.Text))],
        };
    }

    private static IEnumerable<AnswerRow> Whole(Answer answer) => answer.Whole is null ? [] : WholeMotionFigures.Of(answer.Whole)
        .Where(f => _signedOfWhole.Contains(f.Key))
        .Select(f => Row(f with { Name = $"{f.Name}, in three dimensions" }));

    private static AnswerRow Row(AnswerFigure figure) => new(
        figure.Name, new Figure(figure.Shown, figure.Unit, _counts.Contains(figure.Key) ? 1 : 4), figure.Note, figure.Solved);

    private static RequirementRow Row(JudgedRequirement requirement) => new(
        requirement.Name,
        requirement.Limit.Trim(),
        requirement.Shown is { } shown ? new Figure(shown, requirement.Unit) : null,
        requirement.Verdict switch
        {
            Answers.Verdict.Met => Outcome.Met,
            Answers.Verdict.NotMet => Outcome.NotMet,
            _ => Outcome.NotJudged,
        },
        requirement.Note);

    private static string Sentence(Problem warning)
    {
        string subject = warning.Key.Length == 0 ? "" : $"{warning.Key}: ";
        return $"{subject}{warning.Message}. {warning.Remedy}";
    }

    private static string Summary(PlanarMotion motion)
    {
        PlanarDesign design = motion.Design;
        var initial = new Figure(design.Hub.Spin.RevolutionsPerMinute, "rpm", 3);
        var final = new Figure(motion.FinalSpin.RevolutionsPerMinute, "rpm", 3, zeroBelow: 1e-9 * initial.Value);
        return string.Create(CultureInfo.InvariantCulture, $"{Count(design.WeightCount)} weights of ")
            + $"{new Figure(design.WeightMass.Kilograms, "kg", 3)} on {(design is SpringCordDesign ? "spring cords" : "cords")} of {new Figure(design.CordLength.Meters, "m")} "
            + $"take the body from {initial} to {final} in {new Figure(motion.LetGoTime.Seconds, "s", 3)}, let go {LetGoWords(design.LetGo)}.";
    }

    private static string Count(int weights) => weights switch
    {
        2 => "Two",
        3 => "Three",
        4 => "Four",
        _ => weights.ToString(CultureInfo.InvariantCulture),
    };

    private static string LetGoWords(LetGo letGo) =>
        letGo == LetGo.Tangent ? "at the tangent, the moment the cords are fully unwound"
        : letGo == LetGo.Radial ? "when the cords stand straight out"
        : letGo is LetGo.CordAngleRule { CordAngle: var angle } ? $"at a cord angle of {new Figure(angle.Degrees, "deg", 3)} from the tangent"
        : $"at a spin rate of {new Figure(((LetGo.SpinRule)letGo).Spin.RevolutionsPerMinute, "rpm", 3)}";

    private static string Caution(PlanarMotion motion)
    {
        double speed = motion.Departure.Speed.MetersPerSecond;
        double energy = 0.5 * motion.Design.WeightMass.Kilograms * speed * speed;
        return $"In this design each weight leaves at {new Figure(speed, "m/s", 3)} with {new Figure(energy, "J", 3)}, "
            + $"and each cord is loaded up to {new Figure(motion.PeakTension.Tension.Newtons, "N", 3)}.";
    }

    /// <summary>The version alone, without the build's own marks.</summary>
    private static string ToolVersion() => typeof(AnswerReport).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];
}
