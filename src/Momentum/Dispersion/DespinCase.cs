using Momentum.Quantities;
using Momentum.Tethers;

namespace Momentum.Dispersion;

/// <summary>Computes one case after another without allocating; not thread-safe.</summary>
internal sealed class DespinCase
{
    /// <summary>Number of uncertain inputs.</summary>
    internal const int Inputs = 8;

    // A delay is short against the motion, so that this leaves the closed form's 1e-12 almost untouched.
    private const double LateTolerance = 1e-11;

    private readonly int _weights;
    private readonly double _letGoAngle;
    private readonly double _letGoSpin;
    private readonly double _hubMass;
    private readonly LateCord? _late;

    internal DespinCase(DespinDesign design, double hubMass)
    {
        _weights = design.Weights;
        _letGoAngle = design.LetGo.CordAngle?.Radians ?? double.NaN;
        _letGoSpin = design.LetGo.Spin?.ToSi() ?? double.NaN;
        _hubMass = hubMass;
        _late = double.IsNaN(hubMass) ? null : new LateCord(LateTolerance);
    }

    /// <summary>The nominal inputs, SI, in the order of <see cref="UncertainInput"/>.</summary>
    internal static double[] Nominal(DespinDesign design) =>
    [
        design.Hub.SpinInertia.ToSi(),
        design.Hub.Spin.ToSi(),
        design.Hub.Radius.Meters,
        design.WeightMass.ToSi(),
        design.CordLength.Meters,
        design.CordLineDensity.ToSi(),
        0,
        0,
    ];

    /// <summary>Final spin (rad/s) and peak tension of each cord up to the first let-go (N) for given inputs.</summary>
    internal CaseOutcome Run(ReadOnlySpan<double> input, out double finalSpin, out double peakTension)
    {
        finalSpin = double.NaN;
        peakTension = double.NaN;
        double spin = input[(int)UncertainInput.InitialSpin];
        double density = input[(int)UncertainInput.CordLineDensity];
        if (!(input[(int)UncertainInput.SpinInertia] > 0 && spin > 0 && input[(int)UncertainInput.HubRadius] > 0 &&
            input[(int)UncertainInput.WeightMass] > 0 && input[(int)UncertainInput.CordLength] > 0 && density >= 0))
        {
            return CaseOutcome.NotPhysical;
        }

        var cords = new PlanarCords(
            input[(int)UncertainInput.SpinInertia],
            input[(int)UncertainInput.HubRadius],
            _weights * input[(int)UncertainInput.WeightMass],
            _weights * density,
            input[(int)UncertainInput.CordLength]);
        double letGo = double.IsNaN(_letGoAngle) ? cords.WhereSpinIs(_letGoSpin / spin) : _letGoAngle;
        if (double.IsNaN(letGo))
        {
            return CaseOutcome.RateNotReached;
        }

        letGo = Math.Max(letGo + input[(int)UncertainInput.LetGoAngle], cords.Start);
        if (letGo > Math.PI)
        {
            return CaseOutcome.WrappedBack;
        }

        double delay = Math.Abs(input[(int)UncertainInput.SecondWeightDelay]);
        if (delay == 0)
        {
            finalSpin = spin * cords.Spin(letGo);
        }
        else if (_late!.Run(cords, _weights, _hubMass, letGo, delay * spin))
        {
            finalSpin = spin * _late.Spin;
        }
        else
        {
            return CaseOutcome.WrappedBack;
        }

        peakTension = cords.Tension(cords.PeakTensionAt(letGo), out _) * spin * spin / _weights;
        return CaseOutcome.Released;
    }
}
