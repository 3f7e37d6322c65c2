using Momentum.Dispersion;
using Momentum.Tethers;

namespace Momentum.Cases.Answers;

/// <summary>Says of every requirement whether it is met, and on what.</summary>
internal static class RequirementJudge
{
    private const string NoLoad = "no breaking load is stated (despin.cord.breaking_load)";

    /// <summary>The requirements that can be put to the cases of a model.</summary>
    public static IReadOnlyList<CaseTest> TestsFor(Case given, CaseModel model) =>
        [.. CaseTest.Of(given).Where(test => WhyNot(test, given, model.IsSpatial, "") is null)];

    /// <summary>Judges every requirement of the case.</summary>
    /// <param name="given">The case.</param>
    /// <param name="motion">The planar motion.</param>
    /// <param name="whole">The motion in three dimensions; null if there is none.</param>
    /// <param name="spread">The cases; null if nothing is uncertain, or if there is no model to compute them on.</param>
    /// <param name="tests">What was asked of the cases, in the order of their shares.</param>
    /// <param name="whyNotWhole">Why there is no motion in three dimensions.</param>
    /// <param name="whyNoCases">Why nothing that is uncertain could be judged; null if it could, or if nothing is.</param>
    public static IReadOnlyList<JudgedRequirement> Judge(
        Case given, PlanarMotion motion, WholeMotion? whole, Spread? spread, IReadOnlyList<CaseTest> tests, string whyNotWhole, string? whyNoCases)
    {
        DeployedCase nominal = Nominal(given, motion, whole);
        List<JudgedRequirement> judged = [];
        foreach (CaseTest test in CaseTest.Of(given))
        {
            int place = tests.Select(t => t.Key).ToList().IndexOf(test.Key);
            string? open = whyNoCases ?? WhyNot(test, given, whole is not null, whyNotWhole);
            double? value = open is null || whyNoCases is not null ? spread is null ? ValueOf(test, nominal) : BoundOf(test, spread) : null;
            (Verdict verdict, string note) = open is { } reason ? (Verdict.NotShown, $"{reason}; the requirement does not count as met")
                : spread is not null ? Of(spread, spread.Shares[place])
                : test.Holds(nominal) ? (Verdict.MetAtNominal, $"met at nominal, computed {Model(whole)}: the case states no tolerance, so that nothing is known of how far off it may be")
                : (Verdict.NotMet, $"not even at nominal, computed {Model(whole)}; the case states no tolerance");
            judged.Add(new JudgedRequirement(
                test.Key, test.Name, test.Limit, test.Bound, value, test.SiUnit,
                value is { } v ? Shown(test, v, motion) : null, test.Unit, verdict, note)
            { Share = open is null && spread is not null ? spread.Shares[place] : null });
        }

        return judged;
    }

    /// <summary>A share with its bounds, in words.</summary>
    public static string Words(JudgedShare share, RequiredShare required)
    {
        string cases = FormattableString.Invariant($"{share.Passed} of {share.Cases} cases{(share.Unknown > 0 ? $", {share.Unknown} unknown" : "")}");
        return share.Look == 0
            ? cases
            : FormattableString.Invariant($"{cases}: {Percent(share.Lower)} to {Percent(share.Upper)} of all, each end at {Percent(required.Confidence)} confidence");
    }

    private static (Verdict Verdict, string Note) Of(Spread spread, JudgedShare share)
    {
        string words = $"{Words(share, spread.Required)}; required {Percent(spread.Required.Share)}; computed {spread.Model.Name}";
        return share.Verdict switch
        {
            ShareVerdict.Met => (Verdict.Met, words),
            ShareVerdict.NotMet => (Verdict.NotMet, words),
            _ => (Verdict.NotShown, words + WouldShow(share, spread.Required)),
        };
    }

    private static string WouldShow(JudgedShare share, RequiredShare required)
    {
        string would = share.CasesThatWouldShow is { } cases
            ? FormattableString.Invariant($"{cases} cases would show it {(share.Estimate >= required.Share ? "met" : "not met")} if the share held (--cases {cases})")
            : share.Unknown > 0 ? "with so many cases unknown no number of cases would show it"
            : FormattableString.Invariant($"no number of cases up to {RequiredShare.MostCases} would show it if the share held: the design is too near to what is required");
        return "; " + would;
    }

    /// <summary>Why a requirement cannot be put to a model; null if it can.</summary>
    private static string? WhyNot(CaseTest test, Case given, bool inSpace, string whyNotWhole) =>
        test.NeedsSpace && !inSpace ? whyNotWhole.Length > 0 ? whyNotWhole : "only the plane is known"
        : test.Key == "cord_safety_factor" && given.Despin.Cord?.BreakingLoad is null ? NoLoad
        : null;

    private static string Model(WholeMotion? whole) => whole is null ? "in the plane" : "in three dimensions";

    /// <summary>The nominal motion as a case.</summary>
    private static DeployedCase Nominal(Case given, PlanarMotion motion, WholeMotion? whole)
    {
        double? load = given.Despin.Cord?.BreakingLoad?.Value.Newtons;
        if (whole?.Result is not { } result)
        {
            return new DeployedCase
            {
                FinalSpin = motion.FinalSpin,
                LargestSpin = UnitsNet.RotationalSpeed.FromRadiansPerSecond(Math.Abs(motion.FinalSpin.RadiansPerSecond)),
                PeakTension = motion.PeakTension.Tension,
                BreakingLoadRatio = load / motion.PeakTension.Tension.Newtons,
            };
        }

        UnitsNet.Force peak = result.PeakTensions.MaxBy(p => p.Tension.Newtons)!.Tension;
        return new DeployedCase
        {
            FinalSpin = result.FinalSpin,
            LargestSpin = result.After.LargestSpin,
            TransverseRate = result.After.LargestTransverseRate,
            Nutation = result.After.LargestNutation,
            PeakTension = peak,
            BreakingLoadRatio = load / peak.Newtons,
        };
    }

    private static double? ValueOf(CaseTest test, in DeployedCase one) => test.Key switch
    {
        "final_rate" => one.LargestSpin.RadiansPerSecond,
        "nutation" => one.Nutation.Radians,
        "transverse_rate" => one.TransverseRate.RadiansPerSecond,
        _ => one.BreakingLoadRatio,
    };

    private static double? BoundOf(CaseTest test, Spread spread) => test.Key switch
    {
        "final_rate" => spread.SpinBound?.RadiansPerSecond,
        "nutation" => spread.NutationBound?.Radians,
        "transverse_rate" => spread.TransverseRateBound?.RadiansPerSecond,
        _ => spread.SafetyFactorBound,
    };

    private static double Shown(CaseTest test, double value, PlanarMotion motion) =>
        (test.SiUnit == "rad/s" ? Solver.Rounded(value, motion.Design.Hub.Spin.RadiansPerSecond) : value) * test.ShownPerSi;

    private static string Percent(double share) => FormattableString.Invariant($"{100 * share:0.####} %");
}
