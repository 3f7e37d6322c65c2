using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>
/// Computes one deployment after another up to the last let-go, with the same mechanism and integrator and without a
/// recording; not thread-safe.
/// </summary>
internal sealed class DeploymentCase
{
    // Of a step, relative: leaves the figures an error of 1e-7 of their size, which no scatter is known to, at a fraction of the
    // steps of a single run.
    private const double StepTolerance = 1e-6;

    // What the ledger of a case must close to, relative; and the steps that decide where the usual ones do not reach it.
    private const double AllowedClosure = 1e-6;
    private const double FinerTolerance = 1e-9;

    private static readonly (DeploymentEventKind Kind, string Words)[] _strikes =
    [
        (DeploymentEventKind.WeightStrikesHub, "a weight strikes the hub"),
        (DeploymentEventKind.CordPieceWindsUp, "a piece of a cord winds up on the hub"),
        (DeploymentEventKind.CordRunsOffDrum, "a cord runs off its drum"),
        (DeploymentEventKind.WeightStrikesRoom, "a weight strikes the room"),
    ];

    private readonly CordDeployment _like;
    private readonly Mechanism _mechanism;
    private readonly Propagation _usual;
    private readonly Propagation _finer;

    /// <summary>Takes the memory that the cases need.</summary>
    /// <param name="like">A deployment that the cases are like: it sets their tolerances and surroundings, whatever their order.</param>
    internal DeploymentCase(CordDeployment like)
    {
        _like = like;
        HubConstants hub = like.CheckedHub();
        double spin = like.Rates.Si.Dot(hub.Axis);
        _mechanism = new Mechanism(hub, like.CheckedCords(spin));
        _usual = Prepare(StepTolerance);
        _finer = Prepare(FinerTolerance);

        Propagation Prepare(double tolerance) => new(
            _mechanism, like.CheckedSurroundings(spin), (like with { Tolerance = tolerance }).Tolerances(_mechanism, spin));
    }

    /// <summary>One case.</summary>
    internal DeployedCase Run(long number, CordDeployment deployment, CancellationToken cancellation)
    {
        HubConstants hub = deployment.CheckedHub();
        Vec rates = deployment.Rates.Si;
        double spin = rates.Dot(hub.Axis);
        CordConstants[] cords = deployment.CheckedCords(spin);
        if (!_mechanism.Fits(cords) || deployment.Deck != _like.Deck || deployment.Rig != _like.Rig)
        {
            // A line density that scatters about zero: a cord with mass has joints, one without has none. Or surroundings that scatter.
            return new DeploymentCase(deployment).Run(number, deployment, cancellation);
        }

        _mechanism.Become(hub, cords);
        Survey survey = new(cords.Length);
        Propagation run = _usual;
        DeploymentOutcome outcome = Propagate(run, deployment, rates, survey, out string reason, cancellation);
        if (outcome == DeploymentOutcome.LetGo && !(DeploymentLedger.Close(run, AllowedClosure).Closure <= AllowedClosure))
        {
            survey = new Survey(cords.Length);
            run = _finer;
            outcome = Propagate(run, deployment, rates, survey, out reason, cancellation);
            if (outcome == DeploymentOutcome.LetGo && !(DeploymentLedger.Close(run, AllowedClosure).Closure <= AllowedClosure))
            {
                outcome = DeploymentOutcome.Refused;
                reason = "the ledger of momenta and energy does not close";
            }
        }

        if (outcome != DeploymentOutcome.LetGo)
        {
            return new DeployedCase { Number = number, Outcome = outcome, Reason = reason };
        }

        (_, _, Wobble after) = survey.Wobbles();
        var final = Vec.Read(run.State[Mechanism.Rates..]);
        double finalSpin = final.Dot(hub.Axis);
        double? ratio = null;
        for (int cord = 0; cord < cords.Length; cord++)
        {
            // A cord that carried nothing does not break.
            double peak = survey.PeakTensionOf(cord);
            if (deployment.Cords[cord].BreakingLoad is { } load && peak > 0)
            {
                ratio = Math.Min(ratio ?? double.PositiveInfinity, load.Newtons / peak);
            }
        }

        return new DeployedCase(
            number,
            outcome,
            Vector<RotationalSpeed, Body>.FromSi(final - (finalSpin * hub.Axis)),
            RotationalSpeed.FromRadiansPerSecond(finalSpin),
            after.LargestSpin,
            after.LargestTransverseRate,
            after.LargestNutation,
            after.MomentumTilt,
            Force.FromNewtons(survey.PeakTension),
            ratio,
            Happened(run, DeploymentEventKind.CordSlack),
            Happened(run, DeploymentEventKind.CordTouchesDeckEdge),
            "");
    }

    private static DeploymentOutcome Propagate(
        Propagation run, CordDeployment deployment, Vec rates, Survey survey, out string reason, CancellationToken cancellation)
    {
        ReadOnlySpan<double> attitude = [deployment.Attitude.X, deployment.Attitude.Y, deployment.Attitude.Z, deployment.Attitude.W];
        bool refused = false;
        reason = "";
        try
        {
            run.Run(attitude, rates, deployment.Until.Seconds, true, null, survey, cancellation);
        }
        catch (ComputationRefusedException refusal)
        {
            refused = true;
            reason = refusal.Message;
        }

        if (Happened(run, DeploymentEventKind.CordWrapsBack))
        {
            reason = "a cord wraps back onto the hub";
            return DeploymentOutcome.WrappedBack;
        }

        if (refused)
        {
            return DeploymentOutcome.Refused;
        }

        if (run.AllLetGo())
        {
            return DeploymentOutcome.LetGo;
        }

        foreach ((DeploymentEventKind kind, string words) in _strikes)
        {
            if (Happened(run, kind))
            {
                reason = words;
                return DeploymentOutcome.Struck;
            }
        }

        reason = "a cord is still on the hub at the end";
        return DeploymentOutcome.NotLetGo;
    }

    private static bool Happened(Propagation run, DeploymentEventKind kind)
    {
        for (int i = 0; i < run.Incidents.Count; i++)
        {
            if (run.Incidents[i].Kind == kind)
            {
                return true;
            }
        }

        return false;
    }
}
