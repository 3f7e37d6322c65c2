using Momentum.Numerics;
using Momentum.Tethers;
using Momentum.Tethers.Springs;

namespace Momentum.Dispersion;

/// <summary>A case on spring cords, by integration. The cord's stiffness E·A stays: a longer one is softer.</summary>
internal sealed class SpringCordCase : DespinCase
{
    // The final spin errs by about as much; no scatter of interest is so small.
    private const double Tolerance = 1e-10;

    private readonly SpringCordRun _run = new(watching: true, Tolerance);
    private readonly SpringCordDesign _design;

    internal SpringCordCase(SpringCordDesign design) => _design = design;

    private protected override DespinOutcome Move(
        in PlanarDraw draw, ref double finalSpin, ref double peakTension, CancellationToken cancellation)
    {
        double spin = draw.InitialSpin;
        double radius = draw.HubRadius;
        double mass = draw.WeightMass;
        double length = draw.CordLength;
        LetGoRule rule = _design.LetGo.Si.In(spin);
        if (rule.Kind == LetGoKind.CordAngle)
        {
            rule = rule with { Value = rule.Value + draw.LetGoMiss };
            if (rule.Value > Math.PI)
            {
                return DespinOutcome.WrappedBack;
            }
        }

        if (rule.Condition(0, 1, -length / radius) >= 0)
        {
            if (rule.Kind == LetGoKind.SpinRate)
            {
                return DespinOutcome.RateNotReached;
            }

            // Let go before anything has moved.
            finalSpin = spin;
            peakTension = 0;
            return DespinOutcome.LetGo;
        }

        var proportions = new SpringCordProportions(
            draw.SpinInertia / (_design.WeightCount * mass * radius * radius),
            length / radius,
            _design.Stiffness.Newtons / length / (mass * spin * spin),
            _design.DampingRatio);
        SpringCordRun.Outcome outcome;
        try
        {
            outcome = _run.Run(proportions, rule, cancellation: cancellation);
        }
        catch (IntegrationRefusedException)
        {
            return DespinOutcome.CordsFailed;
        }

        if (outcome != SpringCordRun.Outcome.LetGo)
        {
            return outcome != SpringCordRun.Outcome.WrapsBack ? DespinOutcome.CordsFailed
                : rule.Kind == LetGoKind.SpinRate ? DespinOutcome.RateNotReached
                : DespinOutcome.WrappedBack;
        }

        finalSpin = spin * _run.State[SpringCordEquations.Spin];
        peakTension = _run.PeakTension * mass * radius * spin * spin;
        return DespinOutcome.LetGo;
    }
}
