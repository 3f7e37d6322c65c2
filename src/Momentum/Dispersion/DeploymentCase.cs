using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Deployment.Mechanics;

namespace Momentum.Dispersion;

/// <summary>
/// Computes one deployment after another up to the last let-go, with the same mechanism and integrator and without a
/// recording; not thread-safe.
/// </summary>
internal sealed class DeploymentCase
{
    // Figures of a case, in the order in which they are found.
    internal const int FinalSpin = 0;
    internal const int LargestSpin = 1;
    internal const int TransverseRate = 2;
    internal const int Nutation = 3;
    internal const int PeakTension = 4;
    internal const int MomentumTilt = 5;
    internal const int Figures = 6;

    // Of a step, relative: leaves the figures an error of 1e-7 of their size, which no scatter is known to, at a fraction of the
    // steps of a single run.
    private const double StepTolerance = 1e-6;

    // What the ledger of a case must close to, relative; and the steps that decide where the usual ones do not reach it.
    private const double AllowedClosure = 1e-6;
    private const double FinerTolerance = 1e-9;

    private readonly Mechanism _mechanism;
    private readonly Propagation _usual;
    private readonly Propagation _finer;

    /// <summary>Takes the memory that the cases need.</summary>
    /// <param name="like">A deployment that the cases are like: it sets their tolerances and surroundings, whatever their order.</param>
    internal DeploymentCase(CordDeployment like)
    {
        HubConstants hub = like.CheckedHub();
        double spin = like.Rates.Si.Dot(hub.Axis);
        _mechanism = new Mechanism(hub, like.CheckedCords(spin));
        _usual = Prepare(StepTolerance);
        _finer = Prepare(FinerTolerance);

        Propagation Prepare(double tolerance) => new(
            _mechanism, like.CheckedSurroundings(spin), (like with { Tolerance = tolerance }).Tolerances(_mechanism, spin));
    }

    /// <summary>Figures of one case; not a number where there are none.</summary>
    internal DeploymentOutcome Run(
        CordDeployment deployment, Span<double> figures, out bool slack, out bool deck, CancellationToken cancellation)
    {
        figures.Fill(double.NaN);
        slack = false;
        deck = false;
        HubConstants hub = deployment.CheckedHub();
        Vec rates = deployment.Rates.Si;
        double spin = rates.Dot(hub.Axis);
        CordConstants[] cords = deployment.CheckedCords(spin);
        if (!_mechanism.Fits(cords))
        {
            // A line density that scatters about zero: a cord with mass has joints, one without has none.
            return new DeploymentCase(deployment).Run(deployment, figures, out slack, out deck, cancellation);
        }

        _mechanism.Become(hub, cords);
        Survey survey = new(cords.Length);
        Propagation run = _usual;
        DeploymentOutcome outcome = Propagate(run, deployment, rates, survey, cancellation);
        if (outcome == DeploymentOutcome.LetGo && !(DeploymentLedger.Close(run, AllowedClosure).Closure <= AllowedClosure))
        {
            survey = new Survey(cords.Length);
            run = _finer;
            outcome = Propagate(run, deployment, rates, survey, cancellation);
            if (outcome == DeploymentOutcome.LetGo && !(DeploymentLedger.Close(run, AllowedClosure).Closure <= AllowedClosure))
            {
                outcome = DeploymentOutcome.Refused;
            }
        }

        if (outcome != DeploymentOutcome.LetGo)
        {
            return outcome;
        }

        slack = Happened(run, DeploymentEventKind.CordSlack);
        deck = Happened(run, DeploymentEventKind.CordTouchesDeckEdge);
        (_, _, Wobble after) = survey.Wobbles();
        figures[FinalSpin] = Vec.Read(run.State[Mechanism.Rates..]).Dot(hub.Axis);
        figures[LargestSpin] = after.LargestSpin.ToSi();
        figures[TransverseRate] = after.LargestTransverseRate.ToSi();
        figures[Nutation] = after.LargestNutation.Radians;
        figures[PeakTension] = survey.PeakTension;
        figures[MomentumTilt] = after.MomentumTilt.Radians;
        return outcome;
    }

    private static DeploymentOutcome Propagate(
        Propagation run, CordDeployment deployment, Vec rates, Survey survey, CancellationToken cancellation)
    {
        ReadOnlySpan<double> attitude = [deployment.Attitude.X, deployment.Attitude.Y, deployment.Attitude.Z, deployment.Attitude.W];
        bool refused = false;
        try
        {
            run.Run(attitude, rates, deployment.Until.Seconds, true, null, survey, cancellation);
        }
        catch (ComputationRefusedException)
        {
            refused = true;
        }

        if (Happened(run, DeploymentEventKind.CordWrapsBack))
        {
            return DeploymentOutcome.WrappedBack;
        }

        return refused ? DeploymentOutcome.Refused
            : run.AllLetGo() ? DeploymentOutcome.LetGo
            : Happened(run, DeploymentEventKind.WeightStrikesHub) || Happened(run, DeploymentEventKind.CordPieceWindsUp) ||
              Happened(run, DeploymentEventKind.CordRunsOffDrum) || Happened(run, DeploymentEventKind.WeightStrikesRoom)
                ? DeploymentOutcome.Struck
            : DeploymentOutcome.NotLetGo;
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
