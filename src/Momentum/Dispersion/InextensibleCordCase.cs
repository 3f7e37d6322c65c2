using Momentum.Quantities;
using Momentum.Tethers;

namespace Momentum.Dispersion;

/// <summary>A case on cords that do not stretch, in closed form.</summary>
internal sealed class InextensibleCordCase : DespinCase
{
    // A delay is short against the motion, so that this leaves the closed form's 1e-12 almost untouched.
    private const double LateTolerance = 1e-11;

    private readonly int _weights;
    private readonly double _letGoAngle;
    private readonly double _letGoSpin;
    private readonly double _hubMass;
    private readonly LateCord? _late;

    internal InextensibleCordCase(DespinDesign design, double hubMass)
    {
        _weights = design.WeightCount;
        _letGoAngle = (design.LetGo as LetGo.CordAngleRule)?.CordAngle.Radians ?? double.NaN;
        _letGoSpin = (design.LetGo as LetGo.SpinRule)?.Spin.ToSi() ?? double.NaN;
        _hubMass = hubMass;
        _late = double.IsNaN(hubMass) ? null : new LateCord(LateTolerance);
    }

    private protected override DespinOutcome Move(
        ReadOnlySpan<double> input, ref double finalSpin, ref double peakTension, CancellationToken cancellation)
    {
        double spin = input[(int)UncertainInput.InitialSpin];
        var cords = new PlanarCords(
            input[(int)UncertainInput.SpinInertia],
            input[(int)UncertainInput.HubRadius],
            _weights * input[(int)UncertainInput.WeightMass],
            _weights * input[(int)UncertainInput.CordLineDensity],
            input[(int)UncertainInput.CordLength]);
        double letGo = double.IsNaN(_letGoAngle) ? cords.WhereSpinIs(_letGoSpin / spin) : _letGoAngle;
        if (double.IsNaN(letGo))
        {
            return DespinOutcome.RateNotReached;
        }

        letGo = Math.Max(letGo + input[(int)UncertainInput.LetGoAngle], cords.Start);
        if (letGo > Math.PI)
        {
            return DespinOutcome.WrappedBack;
        }

        double delay = Math.Abs(input[(int)UncertainInput.SecondWeightDelay]);
        if (delay == 0)
        {
            finalSpin = spin * cords.Spin(letGo);
        }
        else if (_late!.Run(cords, _weights, _hubMass, letGo, delay * spin, cancellation))
        {
            finalSpin = spin * _late.Spin;
        }
        else
        {
            return DespinOutcome.WrappedBack;
        }

        peakTension = cords.Tension(cords.PeakTensionAt(letGo), out _) * spin * spin / _weights;
        return DespinOutcome.LetGo;
    }
}
