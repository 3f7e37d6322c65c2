using System.Globalization;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>What in a result deserves a second look, in plain words.</summary>
internal static class DeploymentWarnings
{
    // Past this angle the axis of least inertia is not the spin axis any more.
    private const double SameAxis = 0.35;

    // An impulse smaller than this part of the energy is of no consequence.
    private const double NoticeableLoss = 1e-4;

    public static IReadOnlyList<DeploymentWarning> Of(DeploymentResult result)
    {
        List<DeploymentWarning> warnings = [];
        CordDeployment deployment = result.Deployment;
        AddAxis(deployment, warnings);
        AddNutation(result, warnings);
        AddEvents(result, warnings);
        foreach (PeakTension peak in result.PeakTensions)
        {
            if (deployment.Cords[peak.Cord].BreakingLoad is { } breaking && peak.Tension > breaking)
            {
                warnings.Add(new(DeploymentWarningKind.CordBreaks, peak.Cord, Invariant($"Cord {peak.Cord + 1} would break: its tension reaches {peak.Tension.Newtons:G4} N at {peak.Time.Seconds:G4} s, its breaking load is {breaking.Newtons:G4} N.")));
            }
        }

        return warnings;
    }

    private static void AddAxis(CordDeployment deployment, List<DeploymentWarning> warnings)
    {
        PrincipalAxes<Body> axes = deployment.Hub.Inertia.PrincipalAxes();
        double across = axes.SmallestAxis.AngleTo(deployment.SpinAxis).Radians;
        double toLeast = Math.Min(across, Math.PI - across);
        bool distinct = axes.Smallest.ToSi() < 0.99 * axes.Intermediate.ToSi();
        if (distinct && toLeast < SameAxis)
        {
            warnings.Add(new(DeploymentWarningKind.SpinAboutLeastInertia, null, "The hub spins about its axis of least inertia: with any loss of energy inside it the spin turns into tumbling, and the rates across the axis stay when the spin is taken out."));
        }
    }

    private static void AddNutation(DeploymentResult result, List<DeploymentWarning> warnings)
    {
        Angle after = result.After.LargestNutation;
        if (result.Deployment.LargestNutation is { } allowed && after > allowed)
        {
            warnings.Add(new(DeploymentWarningKind.NutationBeyondRequirement, null, Invariant($"After the last let-go the nutation angle reaches {after.Degrees:F1} deg, more than the {allowed.Degrees:G4} deg required: the spin is gone but the rates across it are not ({result.After.LargestTransverseRate.ToSi() * 30 / Math.PI:G3} rpm).")));
        }
    }

    private static void AddEvents(DeploymentResult result, List<DeploymentWarning> warnings)
    {
        HashSet<int> departed = [];
        HashSet<(DeploymentEventKind, int)> said = [];
        double lost = 0;
        foreach (DeploymentEvent happened in result.Events)
        {
            lost += happened.EnergyLost.Joules;
            int cord = happened.Cord ?? -1;
            if (happened.Kind == DeploymentEventKind.LetGo)
            {
                departed.Add(cord);
            }

            if (Words(happened) is var (kind, words) && said.Add((happened.Kind, cord)))
            {
                warnings.Add(new(kind, happened.Cord, words));
            }
        }

        if (lost > NoticeableLoss * result.Ledger.EnergyAtStart.Total.Joules)
        {
            string how = result.Deployment.Cords.Any(c => c.Stiffness is null)
                ? "cords without stretch that were stopped at full length. Give the cords their stiffness to see the tension of it."
                : "cords that went slack, came taut or were stopped at full length.";
            warnings.Add(new(DeploymentWarningKind.EnergyLostInImpulses, null, Invariant($"Impulses took {lost:G3} J: {how}")));
        }

        for (int cord = 0; cord < result.Deployment.Cords.Count; cord++)
        {
            if (!departed.Contains(cord))
            {
                warnings.Add(new(DeploymentWarningKind.CordStaysOn, cord, Invariant($"Cord {cord + 1} is still on the hub at the end ({result.End.Seconds:G4} s).")));
            }
        }
    }

    private static (DeploymentWarningKind Kind, string Text)? Words(DeploymentEvent happened)
    {
        string cord = Invariant($"{happened.Cord + 1}");
        string time = Invariant($"{happened.Time.Seconds:G4} s");
        return happened.Kind switch
        {
            DeploymentEventKind.Jammed => (DeploymentWarningKind.CordJams, $"Cord {cord} jams on the drum at {time} and does not let go."),
            DeploymentEventKind.CordSlack => (DeploymentWarningKind.CordSlack, $"Cord {cord} goes slack at {time}."),
            DeploymentEventKind.CordWrapsBack => (DeploymentWarningKind.CordWrapsBack, $"Cord {cord} wraps back onto the hub at {time}: it was not let go in time."),
            DeploymentEventKind.UnwindingReversed => (DeploymentWarningKind.UnwindingReversed, $"Cord {cord} stops unwinding at {time} and winds up again."),
            DeploymentEventKind.CordRunsOffDrum => (DeploymentWarningKind.CordRunsOffDrum, $"Cord {cord} would run off its drum at {time}, swinging far out of its plane; the computation ends there."),
            DeploymentEventKind.CordPieceWindsUp => (DeploymentWarningKind.CordPieceWindsUp, $"Cord {cord} winds up on the hub at {time}; the computation ends there, because a cord with mass is followed only while it unwinds."),
            DeploymentEventKind.WeightStrikesHub => (DeploymentWarningKind.WeightStrikesHub, $"The weight of cord {cord} strikes the hub at {time}; the computation ends there."),
            DeploymentEventKind.CordTouchesDeckEdge => (DeploymentWarningKind.CordTouchesDeckEdge, $"Cord {cord} touches the deck's edge at {time}; what the edge does to it is not computed."),
            DeploymentEventKind.WeightStrikesRoom => (DeploymentWarningKind.WeightStrikesRoom, $"The weight of cord {cord}, still on its cord, strikes the floor or a wall at {time}; the computation ends there."),
            _ => null,
        };
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
