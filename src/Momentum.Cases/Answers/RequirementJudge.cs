using Momentum.Cases.Quantities;
using Momentum.Dispersion;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>Holds what was computed against what the case requires.</summary>
internal static class RequirementJudge
{
    private const string NotCounted = "the requirement does not count as met";

    /// <summary>Judges every requirement of the case.</summary>
    /// <param name="given">The case.</param>
    /// <param name="motion">The planar motion.</param>
    /// <param name="spread">Its spread; null if nothing scatters.</param>
    /// <param name="whole">The whole motion; null if there is none.</param>
    /// <param name="wholeSpread">Its spread; null if nothing scatters.</param>
    /// <param name="whyNotWhole">Why there is no whole motion.</param>
    public static IReadOnlyList<JudgedRequirement> Judge(
        Case given, PlanarMotion motion, Spread? spread, WholeMotion? whole, WholeSpread? wholeSpread, string whyNotWhole)
    {
        List<JudgedRequirement> judged = [];
        if (given.Require?.FinalRate is { } rate)
        {
            Basis plane = spread is null
                ? Basis.Nominal(Math.Abs(motion.FinalSpin.RadiansPerSecond))
                : Basis.OfPlane(spread.FinalSpinBound?.RadiansPerSecond, spread.Ensemble.Cases, spread.Ensemble.ProbabilityThatFinalSpinIsWithin(rate.Bound));
            Basis worst = plane.OrWorse(InSpace(
                whole, r => r.After.LargestSpin.RadiansPerSecond, wholeSpread, s => s.SpinBound?.RadiansPerSecond, e => e.ProbabilityThatSpinIsWithin(rate.Bound)));
            judged.Add(new JudgedRequirement(
                "final_rate", "Final spin rate, magnitude", rate.Text, rate.Bound.RadiansPerSecond, worst.Known, "rad/s",
                worst.Known is { } spin ? Solver.Rounded(spin, motion.Design.Hub.Spin.RadiansPerSecond) * 30 / Math.PI : null, "rpm",
                Compare(rate.IsUpper, rate.IncludesBound, worst.Value, rate.Bound.RadiansPerSecond), worst.Note));
        }

        if (given.Require?.Nutation is { } wobble)
        {
            judged.Add(InSpaceOnly(
                "nutation", "Nutation half-angle after let-go", wobble.Text, wobble.IsUpper, wobble.IncludesBound, wobble.Bound.Radians, "rad", 180 / Math.PI, "deg",
                InSpace(whole, r => r.After.LargestNutation.Radians, wholeSpread, s => s.NutationBound?.Radians, e => e.ProbabilityThatNutationIsBelow(wobble.Bound)), whyNotWhole));
        }

        if (given.Require?.TransverseRate is { } transverse)
        {
            judged.Add(InSpaceOnly(
                "transverse_rate", "Transverse rate after let-go", transverse.Text, transverse.IsUpper, transverse.IncludesBound, transverse.Bound.RadiansPerSecond, "rad/s", 30 / Math.PI, "rpm",
                InSpace(whole, r => r.After.LargestTransverseRate.RadiansPerSecond, wholeSpread, s => s.TransverseRateBound?.RadiansPerSecond, e => e.ProbabilityThatTransverseRateIsBelow(transverse.Bound)), whyNotWhole));
        }

        if (given.Require?.CordSafetyFactor is { } required)
        {
            judged.Add(Margin(required, given.Despin.Cord?.BreakingLoad?.Value, motion, spread, whole, wholeSpread));
        }

        return judged;
    }

    private static JudgedRequirement Margin(
        Limit<Ratio> required, Force? breaking, PlanarMotion motion, Spread? spread, WholeMotion? whole, WholeSpread? wholeSpread)
    {
        double bound = required.Bound.DecimalFractions;
        if (breaking is not { } load)
        {
            return new JudgedRequirement(
                "cord_safety_factor", "Cord safety factor", required.Text, bound, null, "", null, "", Verdict.NotJudged,
                $"no breaking load is stated (despin.cord.breaking_load); {NotCounted}");
        }

        // A margin of zero limits no tension, so that there is no share of cases to count.
        Force? limit = bound > 0 ? load / bound : null;
        Basis plane = spread is null
            ? Basis.Nominal(motion.PeakTension.Tension.Newtons)
            : Basis.OfPlane(spread.PeakTensionBound?.Newtons, spread.Ensemble.Cases, limit is { } l ? spread.Ensemble.ProbabilityThatPeakTensionIsBelow(l) : null);
        Basis worst = plane.OrWorse(InSpace(
            whole, r => r.PeakTensions.Max(p => p.Tension.Newtons), wholeSpread, s => s.PeakTensionBound?.Newtons, e => limit is { } m ? e.ProbabilityThatPeakTensionIsBelow(m) : null));
        double margin = load.Newtons / worst.Value;
        return new JudgedRequirement(
            "cord_safety_factor", "Cord safety factor", required.Text, bound, worst.Known is null ? null : margin, "", worst.Known is null ? null : margin, "", Compare(required.IsUpper, required.IncludesBound, margin, bound), worst.Note);
    }

    /// <summary>The basis that the whole motion gives: its cases if there are any, else itself; null if there is none.</summary>
    private static Basis? InSpace(
        WholeMotion? whole, Func<DeploymentResult, double> nominal, WholeSpread? spread, Func<WholeSpread, double?> bound, Func<DeploymentEnsemble, Probability?> met) =>
        spread is not null ? Basis.OfSpace(bound(spread), spread.Ensemble.Cases, met(spread.Ensemble))
        : whole is not null ? Basis.NominalInSpace(nominal(whole.Result))
        : null;

    /// <summary>A requirement of which the plane knows nothing.</summary>
    private static JudgedRequirement InSpaceOnly(
        string key, string name, string limit, bool isUpper, bool includesBound, double bound, string siUnit, double shownPerSi, string unit, Basis? basis, string whyNotWhole) => new(
        key, name, limit, bound, basis?.Known, siUnit, basis?.Known * shownPerSi, unit,
        basis is { } found ? Compare(isUpper, includesBound, found.Value, bound) : Verdict.NotJudged,
        basis?.Note ?? $"{whyNotWhole}; {NotCounted}");

    /// <summary>On what a requirement is judged.</summary>
    /// <param name="Value">The value, larger being worse, SI; infinite if too few cases have one.</param>
    /// <param name="Note">Of what it is.</param>
    private readonly record struct Basis(double Value, string Note)
    {
        public static Basis Nominal(double value) => new(value, "judged on the nominal design: the case states no tolerance");

        public static Basis NominalInSpace(double value) => new(value, "judged on the nominal whole motion: the case states no tolerance");

        public static Basis OfPlane(double? value, int cases, Probability? met) =>
            new(value ?? double.PositiveInfinity, FormattableString.Invariant($"judged at 99.7 % of {cases} cases{Share(met)}"));

        public static Basis OfSpace(double? value, int cases, Probability? met) =>
            new(value ?? double.PositiveInfinity, FormattableString.Invariant($"judged on the whole motion at 99.7 % of {cases} cases{Share(met)}"));

        /// <summary>The value if there is one.</summary>
        public double? Known => double.IsFinite(Value) ? Value : null;

        /// <summary>The worse of the two: a requirement is met only if it is in the plane and in three dimensions.</summary>
        public Basis OrWorse(Basis? other) => other is { } space && space.Value > Value ? space : this;

        private static string Share(Probability? met) => met is { } p
            ? FormattableString.Invariant($"; {100 * p.Estimate:0.0###} % meet it ({100 * p.Lower:0.0###} % to {100 * p.Upper:0.0###} % at {100 * p.Confidence:0.#} % confidence)")
            : "";
    }

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
