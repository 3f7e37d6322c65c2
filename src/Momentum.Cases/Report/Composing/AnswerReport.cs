using System.Globalization;
using System.Reflection;
using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Tethers;
using Momentum.Tethers.Springs;

namespace Momentum.Cases.Report.Composing;

/// <summary>Composes the report of an answer.</summary>
internal static class AnswerReport
{
    /// <summary>Everything the answer holds, as a report shows it.</summary>
    public static DespinReport Of(Answer answer)
    {
        PlanarMotion motion = answer.Motion;
        Case given = answer.Reading.Case!;
        IReadOnlyList<GivenKey> keys = GivenKey.AllOf(answer.Reading);
        WholePictures? whole = answer.Whole is null ? null : WholePictures.Of(answer.Whole.Result);
        return new DespinReport
        {
            Title = Printable.Line(given.Title),
            Summary = Summary(motion),
            Case = new CaseIdentity(Path.GetFileName(answer.Reading.File), answer.Reading.Sha256, ToolVersion()),
            Answers = [.. answer.Figures.Figures.Where(f => f.IsHeadline)],
            Further = [.. answer.Figures.Nodes.OfType<AnswerGroup>().Where(g => g.Key.Length == 0).Select(WithoutHeadlines)],
            Warnings = [.. answer.Warnings.Select(Sentence)],
            Requirements = answer.Requirements,
            Springs = answer.Springs is { } springs ? SpringWords.Of(springs) : null,
            Whole = answer.Whole is null ? null : WholeMotionWords.Of(answer.Whole.Result, answer.Whole.Residual, motion),
            WhyNotWhole = answer.WhyNotWhole,
            Unwinding = whole?.Unwinding ?? PlanarPictures.Unwinding(motion, answer.Body, given.Bench),
            Charts = [.. whole?.Charts(motion) ?? PlanarPictures.Charts(motion), .. TradeChart.Of(Trade.Of(motion), motion)],
            WholeSpread = answer.Spread is { } spread
                ? new WholeSpreadRows(SpreadFigures.Heading(spread), [.. answer.Figures["dispersion"]!.Figures])
                : null,
            ResidualSpin = ResidualSpin.Of(given, answer.Spread),
            Sensitivity = ToleranceSensitivity.Of(answer.Spread, motion.Design.Hub.Spin),
            Assumptions = answer.Assumptions,
            Checks = answer.Checks,
            Cautions = [Caution(motion), .. answer.Springs is { } stretched ? [SpringWords.Caution(stretched)] : Array.Empty<string>()],
            Inputs = [.. keys.Where(k => !k.NotUsedYet).Select(k => k.ToInput())],
            Unused = [.. keys.Where(k => k.NotUsedYet).Select(k => new UnusedKey(k.Path, k.Text))],
        };
    }

    private static AnswerGroup WithoutHeadlines(AnswerGroup group) => group with { Nodes = [.. group.Nodes.Where(n => n is not AnswerFigure { IsHeadline: true })] };

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
        double speed = motion.AtLetGo.WeightSpeed.MetersPerSecond;
        double energy = 0.5 * motion.Design.WeightMass.Kilograms * speed * speed;
        return $"In this design each weight leaves at {new Figure(speed, "m/s", 3)} with {new Figure(energy, "J", 3)}, "
            + $"and each cord is loaded up to {new Figure(motion.PeakTension.Tension.Newtons, "N", 3)}.";
    }

    /// <summary>The version alone, without the build's own marks.</summary>
    internal static string ToolVersion() => typeof(AnswerReport).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];
}
