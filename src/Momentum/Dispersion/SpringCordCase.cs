using Momentum.Numerics;
using Momentum.Quantities;
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
    private readonly double? _letGoAngle;
    private readonly double _letGoSpin;

    internal SpringCordCase(SpringCordDesign design)
    {
        _design = design;
        _letGoAngle = (design.LetGo as LetGo.CordAngleRule)?.CordAngle.Radians;
        _letGoSpin = (design.LetGo as LetGo.SpinRule)?.Spin.ToSi() ?? double.NegativeInfinity;
    }

    private protected override DespinOutcome Move(
        ReadOnlySpan<double> input, ref double finalSpin, ref double peakTension, CancellationToken cancellation)
    {
        double spin = input[(int)UncertainInput.InitialSpin];
        double radius = input[(int)UncertainInput.HubRadius];
        double mass = input[(int)UncertainInput.WeightMass];
        double length = input[(int)UncertainInput.CordLength];
        double? letGo = _letGoAngle + input[(int)UncertainInput.LetGoAngle];
        if (letGo > Math.PI)
        {
            return DespinOutcome.WrappedBack;
        }

        if (letGo <= -length / radius)
        {
            // Let go before anything has moved.
            finalSpin = spin;
            peakTension = 0;
            return DespinOutcome.LetGo;
        }

        if (_letGoSpin >= spin)
        {
            return DespinOutcome.RateNotReached;
        }

        var proportions = new SpringCordProportions(
            input[(int)UncertainInput.SpinInertia] / (_design.WeightCount * mass * radius * radius),
            length / radius,
            _design.Stiffness.Newtons / length / (mass * spin * spin),
            _design.DampingRatio);
        SpringCordRun.Outcome outcome;
        try
        {
            outcome = _run.Run(proportions, letGo, _letGoSpin / spin, cancellation: cancellation);
        }
        catch (IntegrationRefusedException)
        {
            return DespinOutcome.CordsFailed;
        }

        if (outcome != SpringCordRun.Outcome.LetGo)
        {
            return outcome == SpringCordRun.Outcome.SpinNotReached ? DespinOutcome.RateNotReached : DespinOutcome.CordsFailed;
        }

        finalSpin = spin * _run.State[SpringCordEquations.Spin];
        peakTension = _run.PeakTension * mass * radius * spin * spin;
        return DespinOutcome.LetGo;
    }
}
