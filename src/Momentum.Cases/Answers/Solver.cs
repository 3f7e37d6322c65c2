using Momentum.Cases.Keys;
using Momentum.Cases.Sections;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Maps a case to the library's calls and the library's results to an answer.</summary>
public static class Solver
{
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
        PlanarMotion motion = Sized(given, body, out SpringCords? springs, cancellation);
        DesignJudge.Judge(given, motion, findings);
        WholeMotion? whole = WholeMotion.Of(given, body, motion, findings, cancellation, out string whyNotWhole);

        // The best model that the case allows: three dimensions wherever the tensor is known. Where the nominal motion is refused
        // there, the plane does not stand in for it.
        var inputs = new CaseInputs(given);
        CaseModel? model = whole is not null ? new SpaceModel(whole.Result.Deployment, motion, body.Meshes, inputs)
            : body.Inertia is null ? new PlaneModel(motion, body, inputs)
            : null;
        IReadOnlyList<CaseTest> tests = model is null ? [] : RequirementJudge.TestsFor(given, model);
        Spread? spread = model is null ? null : SpreadRun.Of(given, model, tests, run);
        return new Answer(reading, body, motion)
        {
            Springs = springs,
            Whole = whole,
            WhyNotWhole = whyNotWhole,
            SolvedFor = solvedFor,
            Figures = FiguresOf(given, body, motion, springs, spread, whole, solvedFor),
            Spread = spread,
            Requirements = RequirementJudge.Judge(given, motion, whole, spread, tests, whyNotWhole, model is null && inputs.Any ? whyNotWhole : null),
            Warnings = [.. judgement.Problems, .. findings.Problems],
            Assumptions = AssumptionsOf(given, springs, whole, inputs),
        };
    }

    /// <summary>The planar motion of the sized design.</summary>
    /// <exception cref="ComputationRefusedException">There is no such design.</exception>
    internal static PlanarMotion Sized(Case given, SpinningBody body, out SpringCords? springs, CancellationToken cancellation = default)
    {
        var hub = new DespinHub(body.SpinInertia, given.Despin.HubRadius.Value, given.Spin.Rate.Value);
        LetGo letGo = LetGoOf(given.Despin.LetGo);
        springs = given.Despin.OnSprings ? SpringCords.Size(given.Despin, hub, letGo, cancellation) : null;
        return springs is null ? Size(given.Despin, hub, letGo).Deploy(cancellation) : springs.Motion;
    }

    /// <summary>The cord angle of a rule that has one.</summary>
    internal static Angle LetGoAngleOf(LetGoSection letGo) =>
        letGo.Angle?.Value ?? Angle.FromRadians(letGo.Rule == Sections.LetGoRule.Radial ? Math.PI / 2 : 0);

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

    private static AnswerGroup FiguresOf(
        Case given, SpinningBody body, PlanarMotion motion, SpringCords? springs, Spread? spread, WholeMotion? whole, string solvedFor) => new("", "",
    [
        .. PlanarFigures.Of(given, body, motion, springs, spread, solvedFor),
        .. springs is null ? [] : (AnswerGroup[])[springs.Figures],
        .. spread is null ? [] : (AnswerGroup[])[SpreadFigures.Of(spread)],
        .. whole is null ? [] : (AnswerGroup[])[WholeMotionFigures.Of(whole)],
    ]);

    /// <summary>What rounding leaves of nothing is shown as the zero that it is; the machine's key keeps the number.</summary>
    internal static double Rounded(double value, double scale) => Math.Abs(value) < 1e-9 * scale ? 0 : value;

    private static List<string> AssumptionsOf(Case given, SpringCords? springs, WholeMotion? whole, CaseInputs inputs)
    {
        List<string> assumptions =
        [
            "The design is planar and symmetric: the body spins about a principal axis through its centre of mass, and the weights are equal, evenly spaced and let go together.",
            "The spin inertia is taken about the spin axis through the centre of mass, without weights and cords; the weights ride at the hub radius until their release.",
            "In the design the cords " + (springs is null ? "do not stretch, " : "") + "leave the hub along its tangent, and are wound against the spin so that they trail as they unwind.",
            .. springs is null ? [] : SpringCords.AssumptionsOf(given, whole is not null),
        ];
        assumptions.Add(given.Despin.Cord?.LineDensity is null
            ? "The cords have no mass: none is stated."
            : "The cords' mass is counted, each taken as straight where it is free.");
        if (whole is not null)
        {
            assumptions.AddRange(WholeMotion.AssumptionsOf(given, whole));
        }

        if (inputs.Exact.Count > 0)
        {
            assumptions.Add($"Taken as exact, since no tolerance is stated: {string.Join(", ", inputs.Exact)}.");
        }

        return assumptions;
    }
}
