using Momentum.Dispersion;
using Momentum.Tethers;
using Momentum.Tool.Cases;

namespace Momentum.Tool.Answers;

/// <summary>Holds what was computed against what the case requires.</summary>
internal static class RequirementJudge
{
    private const string Nominal = "judged on the nominal design: the case states no tolerance";

    public static IReadOnlyList<JudgedRequirement> Judge(Case given, DespinMotion motion, Spread? spread, WholeMotion? whole, string whyNotWhole)
    {
        List<JudgedRequirement> judged = [];
        if (given.Require?.FinalRate is { } rate)
        {
            double value = spread?.FinalSpinBound.RadiansPerSecond ?? Math.Abs(motion.FinalSpin.RadiansPerSecond);
            judged.Add(new JudgedRequirement(
                "final_rate", "Final spin rate, magnitude", rate.Text, rate.Bound.RadiansPerSecond, value, "rad/s", Solver.Rounded(value, motion.Design.Hub.Spin.RadiansPerSecond) * 30 / Math.PI, "rpm",
                Compare(rate.IsUpper, rate.IncludesBound, value, rate.Bound.RadiansPerSecond),
                spread is null ? Nominal : Dispersed(spread.Ensemble.ProbabilityThatFinalSpinIsWithin(rate.Bound), spread)));
        }

        if (given.Require?.Wobble is { } wobble)
        {
            double? value = whole?.Result.After.LargestNutation.Radians;
            judged.Add(new JudgedRequirement(
                "wobble", "Nutation half-angle after release", wobble.Text, wobble.Bound.Radians, value, "rad", value * 180 / Math.PI, "deg",
                value is { } angle ? Compare(wobble.IsUpper, wobble.IncludesBound, angle, wobble.Bound.Radians) : Verdict.NotJudged, whole is null ? $"{whyNotWhole}; the requirement does not count as met" : Nominal));
        }

        if (given.Require?.TransverseRate is { } transverse)
        {
            double? value = whole?.Result.After.LargestTransverseRate.RadiansPerSecond;
            judged.Add(new JudgedRequirement(
                "transverse_rate", "Transverse rate after release", transverse.Text, transverse.Bound.RadiansPerSecond, value, "rad/s", value * 30 / Math.PI, "rpm",
                value is { } across ? Compare(transverse.IsUpper, transverse.IncludesBound, across, transverse.Bound.RadiansPerSecond) : Verdict.NotJudged, whole is null ? $"{whyNotWhole}; the requirement does not count as met" : Nominal));
        }

        if (given.Require?.CordMargin is { } required)
        {
            double? load = given.Despin.Cord?.BreakingLoad?.Value.Newtons;
            double? margin = load / (spread?.PeakTensionBound.Newtons ?? motion.PeakTension.Tension.Newtons);
            string basis = spread is null || load is null || required.Bound.DecimalFractions == 0
                ? Nominal
                : Dispersed(spread.Ensemble.ProbabilityThatPeakTensionIsBelow(UnitsNet.Force.FromNewtons(load.Value / required.Bound.DecimalFractions)), spread);
            judged.Add(new JudgedRequirement(
                "cord_margin", "Cord margin", required.Text, required.Bound.DecimalFractions, margin, "", margin, "",
                margin is { } value ? Compare(required.IsUpper, required.IncludesBound, value, required.Bound.DecimalFractions) : Verdict.NotJudged,
                margin is null ? "no breaking load is stated (despin.cord.breaking_load); the requirement does not count as met" : basis));
        }

        return judged;
    }

    private static string Dispersed(Probability met, Spread spread) => FormattableString.Invariant(
        $"judged at 99.7 % of {spread.Ensemble.Cases} cases; {100 * met.Estimate:0.0###} % meet it ({100 * met.Lower:0.0###} % to {100 * met.Upper:0.0###} % at {100 * met.Confidence:0.#} % confidence)");

    private static Verdict Compare(bool isUpper, bool includesBound, double value, double bound)
    {
        // A design sized onto the bound meets an inclusive limit whichever way its last digit was rounded.
        double slack = includesBound ? 1e-9 * bound : 0;
        bool met = (isUpper, includesBound) switch
        {
            (true, false) => value < bound,
            (true, true) => value <= bound + slack,
            (false, false) => value > bound,
            (false, true) => value >= bound - slack,
        };
        return met ? Verdict.Met : Verdict.NotMet;
    }
}
