using Momentum.Cases.Sections;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Cords sized as springs, so that the final spin forgives an error of the spin-up; and how far it does.</summary>
/// <param name="Motion">The planar motion.</param>
/// <param name="Sensitivity">How its final spin answers to errors before release.</param>
/// <param name="WithoutStretch">The same of cords without stretch that leave the same final spin.</param>
internal sealed record SpringCords(SpringCordMotion Motion, SpinSensitivity Sensitivity, SpinSensitivity WithoutStretch)
{
    private const double RpmPerRadian = 30 / Math.PI;

    private const string Key = "despin.cord.forgive_spin_up = true";

    private const double OnePercent = 0.01;

    // What the sizing leaves of the slope is nothing to a reader.
    private const double NoSlope = 1e-6;

    /// <summary>Sizes them.</summary>
    /// <exception cref="ComputationRefusedException">The library finds no such design.</exception>
    public static SpringCords Size(DespinSection despin, DespinHub hub, LetGo letGo, CancellationToken cancellation)
    {
        double damping = despin.Cord?.Damping?.Value.DecimalFractions ?? 0;
        RotationalSpeed finalSpin = despin.FinalRate!.Value;
        SpringCordDesign design;
        try
        {
            design = despin.WeightMass is { } mass
                ? hub.SizeSpringCord(mass.Value, finalSpin, letGo, damping, despin.Weights, cancellation)
                : hub.SizeSpringCord(despin.CordLength!.Value, finalSpin, letGo, damping, despin.Weights, cancellation);
        }
        catch (ComputationRefusedException refusal)
        {
            throw new ComputationRefusedException($"{Key}: {BodyJudge.Clause(refusal.Message)}.", refusal);
        }

        try
        {
            return new SpringCords(design.Deploy(cancellation), design.Sensitivity(cancellation), design.WithoutStretch(cancellation).Sensitivity(cancellation));
        }
        catch (ComputationRefusedException refusal)
        {
            // The library says "stiffer", and the stiffness is not the case's to choose.
            throw new ComputationRefusedException(
                $"{Key}: the cords that do it are on the brink: a little more or less initial spin or inertia, and they do not come to let-go. " +
                "Ask for a lower despin.final_rate, let go earlier (despin.let_go), or give the cords damping (despin.cord.damping).",
                refusal);
        }
    }

    public SpringCordDesign Design => Motion.Design;

    /// <summary>Of an error of the spin inertia, the share that the springs take away; negative if they add to it, above one if they turn it round.</summary>
    public double InertiaForgiven => 1 - (Sensitivity.ToSpinInertia / WithoutStretch.ToSpinInertia);

    /// <summary>What there is to build.</summary>
    public IReadOnlyList<AnswerFigure> DesignFigures =>
    [
        AnswerFigure.Si("stiffness_n", "Cord stiffness E·A, each", Design.Stiffness.Newtons, "N", "spring rate times cord length, for a cord that stretches evenly", solved: true).Headline(),
        AnswerFigure.Si("spring_rate_n_m", "Spring rate of the whole cord, each", Design.SpringRate.NewtonsPerMeter, "N/m", "tension by stretch; of a spring next to the weight, or of the cord itself"),
    ];

    /// <summary>How far they stretch.</summary>
    public IReadOnlyList<AnswerFigure> StretchFigures =>
    [
        Stretch("peak_tension_stretch_m", "Stretch of the cord at peak tension", Motion.At(Motion.PeakTension.Time).Stretch).Headline(),
        Stretch("largest_stretch_m", "Largest stretch of the cord", Motion.LargestStretch),
        Stretch("let_go_stretch_m", "Stretch of the cord at let-go", Motion.AtLetGo.Stretch),
        AnswerFigure.Si("let_go_stretch_energy_j", "Energy in the stretch of each cord at let-go", LetGoEnergy.Joules, "J", "it snaps back with that"),
    ];

    /// <summary>What is in the stretch of one cord as it is let go.</summary>
    public Energy LetGoEnergy => Motion.AtLetGo.Energy.Elastic / Design.WeightCount;

    /// <summary>How the final spin answers to errors before release, with the springs and without stretch.</summary>
    public IReadOnlyList<ForgivenError> Forgiveness =>
    [
        Forgiven("1_percent_more_spin", "1 % more initial spin", s => s.ToInitialSpin),
        Forgiven("1_percent_more_inertia", "1 % more spin inertia", s => s.ToSpinInertia),
    ];

    /// <summary>The same in a sentence.</summary>
    public string Words => "To first order the springs take all of a spin-up error away. " + (InertiaForgiven is >= 0 and <= 1
        ? FormattableString.Invariant($"An error of the spin inertia they forgive only by a share: {100 * InertiaForgiven:F0} % of it is taken away here, {100 * (1 - InertiaForgiven):F0} % stays.")
        : FormattableString.Invariant($"An error of the spin inertia they do not forgive here: it does {1 - InertiaForgiven:G3} times what it does without stretch."));

    /// <summary>What they forgive.</summary>
    public AnswerGroup Figures => new(
        "spring_cords", "What the spring cords forgive",
        [
            .. Forgiveness.SelectMany(f => f.Figures),
            AnswerFigure.Si("inertia_error_forgiven_share", "Share of an inertia error that is taken away", InertiaForgiven, "", "negative if they add to it, above one if they turn it round"),
        ],
        Words);

    /// <summary>What is taken for granted of them, in sentences.</summary>
    public static IEnumerable<string> AssumptionsOf(Case given, bool isWhole)
    {
        yield return "Each cord pulls with its spring rate times its stretch, and with its damping; the wound cord is not stretched, and all of the spring comes off first, next to the weight.";
        if (given.Despin.SecondWeightDelay is not null)
        {
            yield return "In the plane spring cords let go together; "
                + (isWhole ? "the delay of one weight is counted over the cases of the whole motion only." : "the delay of one weight is counted nowhere, for want of a whole motion.");
        }
    }

    private AnswerFigure Stretch(string key, string name, Length stretch) =>
        AnswerFigure.Si(key, name, stretch.Meters, "m", FormattableString.Invariant($"{100 * (stretch / Design.CordLength):G3} % of its length"));

    private ForgivenError Forgiven(string key, string error, Func<SpinSensitivity, double> slope)
    {
        return new(
            error,
            Change($"final_spin_by_{key}_rad_s", $"{error}, spring cords", slope(Sensitivity)),
            Change($"final_spin_by_{key}_without_stretch_rad_s", $"{error}, without stretch", slope(WithoutStretch)));

        AnswerFigure Change(string figureKey, string name, double by)
        {
            double change = by * OnePercent * Design.Hub.Spin.RadiansPerSecond;
            return new(figureKey, name, change, Math.Abs(by) < NoSlope ? 0 : change * RpmPerRadian, "rpm", "change of the final spin rate, to first order");
        }
    }
}
