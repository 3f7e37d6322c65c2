using Momentum.Tethers;

namespace Momentum.Cases.Answers;

/// <summary>What the computation says about its own trustworthiness.</summary>
internal static class SelfChecks
{
    // Rounding leaves 1e-14; the numerical integration runs at 1e-13 a step. A defect leaves far more than either limit.
    private const double Sized = 1e-10;
    private const double Agreement = 1e-9;

    // Over an error of one per cent a millionth of that: far below what any tolerance leaves.
    private const double Slope = 1e-6;

    /// <summary>The checks.</summary>
    public static IReadOnlyList<SelfCheck> Of(Answer answer)
    {
        PlanarMotion motion = answer.Motion;
        SpringCords? springs = answer.Springs;
        double initial = motion.Design.Hub.Spin.RadiansPerSecond;
        List<SelfCheck> checks =
        [
            new SelfCheck("Angular momentum of body, weights and cords, largest departure from the start", motion.Ledger.AngularMomentumClosure, motion.Ledger.AllowedClosure),
            new SelfCheck("Energy of body, weights and cords, largest departure from the start", motion.Ledger.EnergyClosure, motion.Ledger.AllowedClosure),
            .. motion is DespinMotion inextensible ? AgainstIntegration(inextensible) : [],
        ];
        if (springs is not null)
        {
            checks.Add(new SelfCheck("Spring cords: slope of the final spin rate over the initial one, none being wanted", Math.Abs(springs.Sensitivity.ToInitialSpin), Slope));
        }

        if (answer.Reading.Case!.Despin.FinalRate is { } wanted)
        {
            checks.Add(new SelfCheck(
                "Sized design run forward: final spin rate against the one asked for, as a share of the initial one",
                Math.Abs(motion.FinalSpin.RadiansPerSecond - wanted.Value.RadiansPerSecond) / initial, springs is null ? Sized : Agreement));
        }

        if (answer.Whole?.Result is { } result)
        {
            double allowed = result.Ledger.AllowedClosure;
            checks.Add(new SelfCheck("Whole motion: angular momentum, departure from its sum as a share of that at the start", result.Ledger.AngularMomentumClosure, allowed));
            checks.Add(new SelfCheck("Whole motion: energy, departure from its sum as a share of that at the start", result.Ledger.EnergyClosure, allowed));
            if (result.Deployment.Rig is null)
            {
                checks.Add(new SelfCheck("Whole motion: linear momentum, departure from its sum as a share of what the weights have if they carry off all the energy", result.Ledger.LinearMomentumClosure, allowed));
            }
        }

        return checks;
    }

    private static SelfCheck[] AgainstIntegration(DespinMotion motion)
    {
        const string Name = "Closed form against numerical integration";
        try
        {
            IntegratedDespin integrated = motion.Design.Integrate();
            return
            [
                new SelfCheck($"{Name}: final spin rate, as a share of the initial one", Math.Abs((motion.FinalSpin - integrated.FinalSpin) / motion.Design.Hub.Spin), Agreement),
                new SelfCheck($"{Name}: let-go time", Math.Abs((motion.LetGoTime / integrated.LetGoTime) - 1), Agreement),
            ];
        }
        catch (ComputationRefusedException refusal)
        {
            return [SelfCheck.NotMade(Name, BodyJudge.Clause(refusal.Message))];
        }
    }
}
