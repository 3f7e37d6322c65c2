using Momentum.Cases.Quantities;
using Momentum.Dispersion;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>A requirement as a question to one case.</summary>
/// <param name="Key">Its key under [require].</param>
/// <param name="Name">What it limits.</param>
/// <param name="Limit">The limit as written.</param>
/// <param name="Bound">The bound, SI.</param>
/// <param name="SiUnit">Its SI unit; empty for a ratio.</param>
/// <param name="ShownPerSi">What a number is multiplied by for a reader.</param>
/// <param name="Unit">The reader's unit.</param>
/// <param name="NeedsSpace">Whether the plane knows nothing of it.</param>
/// <param name="Holds">Whether a case with figures meets it.</param>
internal sealed record CaseTest(
    string Key, string Name, string Limit, double Bound, string SiUnit, double ShownPerSi, string Unit, bool NeedsSpace, Func<DeployedCase, bool> Holds)
{
    /// <summary>Whether a case meets it; null if nobody knows, because the computation refused it or what was drawn does not exist.</summary>
    public bool? Judge(in DeployedCase one) => one.Outcome switch
    {
        DeploymentOutcome.LetGo => Holds(one),
        DeploymentOutcome.Refused or DeploymentOutcome.NotPhysical => null,
        _ => false,
    };

    /// <summary>The questions that a case asks, without those that nothing stated can answer.</summary>
    public static IReadOnlyList<CaseTest> Of(Case given)
    {
        List<CaseTest> tests = [];
        if (given.Require?.FinalRate is { } rate)
        {
            tests.Add(new(
                "final_rate", "Final spin rate, magnitude", rate.Text, rate.Bound.RadiansPerSecond, "rad/s", 30 / Math.PI, "rpm", false,
                one => Within(rate, one.LargestSpin.RadiansPerSecond, rate.Bound.RadiansPerSecond) &&
                    (rate.Least is not { } least || Math.Abs(one.FinalSpin.RadiansPerSecond) >= least.RadiansPerSecond * (1 - Slack))));
        }

        if (given.Require?.Nutation is { } nutation)
        {
            tests.Add(new(
                "nutation", "Nutation half-angle after let-go", nutation.Text, nutation.Bound.Radians, "rad", 180 / Math.PI, "deg", true,
                one => Within(nutation, one.Nutation.Radians, nutation.Bound.Radians)));
        }

        if (given.Require?.TransverseRate is { } transverse)
        {
            tests.Add(new(
                "transverse_rate", "Transverse rate after let-go", transverse.Text, transverse.Bound.RadiansPerSecond, "rad/s", 30 / Math.PI, "rpm", true,
                one => Within(transverse, one.TransverseRate.RadiansPerSecond, transverse.Bound.RadiansPerSecond)));
        }

        if (given.Require?.CordSafetyFactor is { } factor)
        {
            tests.Add(new(
                "cord_safety_factor", "Cord safety factor", factor.Text, factor.Bound.DecimalFractions, "", 1, "", false,
                one => one.BreakingLoadRatio is { } ratio && Within(factor, ratio, factor.Bound.DecimalFractions)));
        }

        return tests;
    }

    /// <summary>A design sized onto the bound meets an inclusive limit whichever way its last digit was rounded.</summary>
    public const double Slack = 1e-9;

    /// <summary>Whether a value keeps to a limit.</summary>
    public static bool Within<TQuantity>(Limit<TQuantity> limit, double value, double bound)
        where TQuantity : struct, IQuantity => (limit.IsUpper, limit.IncludesBound) switch
        {
            (true, false) => value < bound,
            (true, true) => value <= bound * (1 + Slack),
            (false, false) => value > bound,
            (false, true) => value >= bound * (1 - Slack),
        };
}
