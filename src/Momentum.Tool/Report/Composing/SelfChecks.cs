using Momentum.Tethers;
using Momentum.Tool.Cases;
using Momentum.Tool.Report.Model;

namespace Momentum.Tool.Report.Composing;

/// <summary>What the computation says about its own trustworthiness.</summary>
internal static class SelfChecks
{
    private const double Allowed = 1e-10;

    /// <summary>The checks.</summary>
    public static IReadOnlyList<CheckRow> Of(Case given, DespinMotion motion)
    {
        List<CheckRow> checks =
        [
            Share("Angular momentum of body, weights and cords, largest departure from the start", motion.Ledger.MomentumClosure),
            Share("Kinetic energy of body, weights and cords, largest departure from the start", motion.Ledger.EnergyClosure),
        ];
        if (given.Despin.FinalRate is { } wanted)
        {
            double initial = motion.Design.Hub.Spin.RadiansPerSecond;
            checks.Add(Share(
                "Sized design run forward: final spin rate against the one asked for, as a share of the initial one",
                Math.Abs(motion.FinalSpin.RadiansPerSecond - wanted.Value.RadiansPerSecond) / initial));
        }

        return checks;
    }

    private static CheckRow Share(string name, double departure) =>
        new(name, departure <= Allowed, new Figure(departure, "", 2).Number, new Figure(Allowed, "", 1).Number);
}
