using Momentum.Tethers;

namespace Momentum.Dispersion;

/// <summary>A case on cords that do not stretch, in closed form. A let-go at a time, or with a delay, allocates; others do not.</summary>
internal sealed class InextensibleCordCase : DespinCase
{
    // A delay is short against the motion, so that this leaves the closed form's 1e-12 almost untouched.
    private const double LateTolerance = 1e-11;

    private readonly int _weights;
    private readonly LetGoRule _letGo;
    private readonly double _hubMass;
    private readonly LateCord? _late;

    internal InextensibleCordCase(DespinDesign design, double? hubMass)
    {
        _weights = design.WeightCount;
        _letGo = design.LetGo.Si;
        _hubMass = hubMass ?? 0;
        _late = hubMass is null ? null : new LateCord(LateTolerance);
    }

    private protected override DespinOutcome Move(
        in PlanarDraw draw, ref double finalSpin, ref double peakTension, CancellationToken cancellation)
    {
        double spin = draw.InitialSpin;
        var cords = new PlanarCords(
            draw.SpinInertia, draw.HubRadius, _weights * draw.WeightMass, _weights * draw.CordLineDensity, draw.CordLength);
        switch (PlanarLetGo.Find(cords, _letGo, spin, draw.LetGoMiss, out double letGo))
        {
            case PlanarLetGo.Outcome.SpinNotReached:
                return DespinOutcome.RateNotReached;
            case PlanarLetGo.Outcome.WrapsBack:
                return DespinOutcome.WrappedBack;
        }

        if (draw.LateBy == 0)
        {
            finalSpin = spin * cords.Spin(letGo);
        }
        else if (_late!.Run(cords, _weights, _hubMass, letGo, draw.LateBy * spin, cancellation))
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
