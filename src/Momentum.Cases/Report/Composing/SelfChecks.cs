using Momentum.Cases.Answers;
using Momentum.Cases.Report.Model;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;

namespace Momentum.Cases.Report.Composing;

/// <summary>What the computation says about its own trustworthiness.</summary>
internal static class SelfChecks
{
    // Rounding leaves 1e-14; the numerical integration runs at 1e-13 a step. A defect leaves far more than either limit.
    private const double Closure = 1e-10;
    private const double Agreement = 1e-9;
    private const double WholeClosure = 1e-11;

    // Over an error of one per cent a millionth of that: far below what any tolerance leaves.
    private const double Slope = 1e-6;

    /// <summary>The checks.</summary>
    public static IReadOnlyList<CheckRow> Of(Case given, PlanarMotion motion, SpringCords? springs, DeploymentResult? whole)
    {
        double initial = motion.Design.Hub.Spin.RadiansPerSecond;
        List<CheckRow> checks =
        [
            Share("Angular momentum of body, weights and cords, largest departure from the start", motion.Ledger.MomentumClosure, Closure),
            Share("Energy of body, weights and cords, largest departure from the start", motion.Ledger.EnergyClosure, Closure),
            .. motion is DespinMotion inextensible ? AgainstIntegration(inextensible) : [],
        ];
        if (springs is not null)
        {
            checks.Add(Share("Spring cords: slope of the final spin rate over the initial one, none being wanted", Math.Abs(springs.Sensitivity.ToInitialSpin), Slope));
        }

        if (given.Despin.FinalRate is { } wanted)
        {
            checks.Add(Share(
                "Sized design run forward: final spin rate against the one asked for, as a share of the initial one",
                Math.Abs(motion.FinalSpin.RadiansPerSecond - wanted.Value.RadiansPerSecond) / initial, springs is null ? Closure : Agreement));
        }

        if (whole is { } result)
        {
            // What the library itself allows, or it would have refused the result.
            double allowed = Math.Max(WholeClosure, 10 * result.Deployment.Tolerance);
            checks.Add(Share("Whole motion: angular momentum, departure from its sum as a share of that at the start", result.Ledger.AngularMomentumClosure, allowed));
            checks.Add(Share("Whole motion: energy, departure from its sum as a share of that at the start", result.Ledger.EnergyClosure, allowed));
            if (result.Deployment.Rig is null)
            {
                checks.Add(Share("Whole motion: linear momentum, departure from its sum as a share of what the weights have if they carry off all the energy", result.Ledger.LinearMomentumClosure, allowed));
            }
        }

        return checks;
    }

    private static IEnumerable<CheckRow> AgainstIntegration(DespinMotion motion)
    {
        IntegratedDespin integrated = motion.Design.Integrate();
        yield return Share(
            "Closed form against numerical integration: final spin rate, as a share of the initial one",
            Math.Abs((motion.FinalSpin - integrated.FinalSpin) / motion.Design.Hub.Spin), Agreement);
        yield return Share(
            "Closed form against numerical integration: let-go time",
            Math.Abs((motion.LetGoTime / integrated.LetGoTime) - 1), Agreement);
    }

    private static CheckRow Share(string name, double departure, double allowed) =>
        new(name, departure <= allowed, new Figure(departure, "", 2).Number, new Figure(allowed, "", 1).Number);
}
