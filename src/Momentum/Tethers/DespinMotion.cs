using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>The motion of a planar, symmetric de-spin with inextensible cords, in closed form.</summary>
/// <remarks>
/// <para>Spins, tensions and speeds are closed expressions of the cord's position; time while hinging, and the hub's turn,
/// are quadratures of closed rates. Exact for massless cords. A cord with mass is taken as straight where it is free, which
/// neglects its bowing.</para>
/// <para>Made by <see cref="DespinDesign.Deploy"/>. Immutable, so safe to share between threads.</para>
/// </remarks>
public sealed class DespinMotion : PlanarMotion
{
    // Share of a cord below which what is unwound of it at the peak or at let-go is lost in the rounding of the whole.
    private const double LeastUnwound = 1e-8;

    private readonly PlanarCords _cords;
    private readonly CordClock _clock;
    private readonly double _initialSpin;
    private readonly double _letGo;
    private readonly DespinState _lastState;

    internal DespinMotion(DespinDesign design)
    {
        Design = design;
        _cords = design.Cords;
        _initialSpin = design.Hub.Spin.ToSi();
        _letGo = LetGoCoordinate(design);
        double peak = _cords.PeakTensionAt(_letGo);
        RefuseDeadWeight(_cords.FreeLength(peak));
        _clock = new CordClock(_cords, _letGo);
        _lastState = StateAt(_letGo, _clock.EndTime, _clock.EndTurn);
        Ledger = design.Close([.. Looks()], Momentum.Ledger.LargestDeparture);
        PeakTension = new PeakTension(
            0,
            Force.FromNewtons(_cords.Tension(peak, out _) * _initialSpin * _initialSpin / design.WeightCount),
            Duration.FromSeconds(_clock.Time(peak) / _initialSpin),
            PhaseAt(peak),
            Length.FromMeters(_cords.FreeLength(peak)),
            Angle.FromRadians(Math.Max(peak, 0)));
    }

    /// <inheritdoc/>
    public override DespinDesign Design { get; }

    /// <inheritdoc/>
    public override Duration UnwindTime => Duration.FromSeconds((Math.Min(_letGo, 0) - _cords.Start) / _initialSpin);

    /// <inheritdoc/>
    public override DespinState AtLetGo => _lastState;

    /// <inheritdoc/>
    public override PeakTension PeakTension { get; }

    /// <inheritdoc/>
    public override DeploymentLedger Ledger { get; }

    /// <inheritdoc/>
    public override DespinState At(Duration time) => AtSeconds(Checked(time));

    /// <inheritdoc/>
    public override IReadOnlyList<DespinState> History(IEnumerable<Duration> times)
    {
        ArgumentNullException.ThrowIfNull(times);
        return [.. times.Select(At)];
    }

    /// <summary>States at evenly spaced times from release of the weights.</summary>
    /// <param name="samples">How many, two or more; the first at zero, the last at <paramref name="until"/>.</param>
    /// <param name="until">Time of the last; a quarter past let-go if left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two samples, or a time that is negative or not finite.</exception>
    public IReadOnlyList<DespinState> History(int samples, Duration? until = null) => History(Times(samples, until));

    /// <summary>What becomes of it if one weight lets go later than the others.</summary>
    /// <param name="delay">How much later, zero or more.</param>
    /// <param name="hubMass">Mass of the hub, without weights and cords: it is pulled to the side of the weight that is left.</param>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ArgumentOutOfRangeException">The delay is negative, or the mass is not positive.</exception>
    /// <exception cref="ComputationRefusedException">The late cord would wrap the hub the other way, or the ledger does not close.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public LateDeparture WithOneWeightLate(Duration delay, Mass hubMass, CancellationToken cancellation = default)
    {
        double seconds = Allowed.ZeroOrPositive(
            delay.Seconds, delay, nameof(delay), "Give how much later than the others the last weight lets go.");
        double mass = Allowed.Positive(
            hubMass.ToSi(), hubMass, nameof(hubMass), "Give the mass of the hub without weights and cords.");
        var late = new LateCord(1e-13);
        if (!late.Run(_cords, Design.WeightCount, mass, _letGo, seconds * _initialSpin, cancellation))
        {
            throw new ComputationRefusedException(
                "The late cord swings all the way to the other tangent within the delay and would wrap the hub the other way, which is " +
                "beyond this model. Give a shorter delay, or use the three-dimensional deployment.");
        }

        if (!(late.Closure <= Momentum.Ledger.LargestDeparture))
        {
            throw new ComputationRefusedException(
                $"Energy does not close over the delay (relative departure {Quoted.Si(late.Closure, string.Empty)}); the proportions given are too extreme. Check their units.");
        }

        return new LateDeparture(
            delay,
            RotationalSpeed.FromRadiansPerSecond(late.Spin * _initialSpin),
            Angle.FromRadians(Math.Max(late.Coordinate, 0)),
            Speed.FromMetersPerSecond(double.Hypot(late.RadialDrift, late.TangentialDrift) * _initialSpin),
            late.Closure);
    }

    /// <summary>The coordinate at which a design lets go.</summary>
    internal static double LetGoCoordinate(DespinDesign design)
    {
        design.RefuseMetAtStart();
        PlanarCords cords = design.Cords;
        LetGoRule rule = design.LetGo.Si;
        double initial = design.Hub.Spin.ToSi();
        return PlanarLetGo.Find(cords, rule, initial, 0, out double coordinate) switch
        {
            PlanarLetGo.Outcome.Found => coordinate,
            PlanarLetGo.Outcome.SpinNotReached => throw new ComputationRefusedException(
                $"The cords are to let go at {Quoted.Spin(rule.Value)}, which is never reached: the spin is lowest when the cords are radial, and " +
                $"then {Quoted.Spin(cords.Spin(Math.PI / 2) * initial)}. Give longer cords, heavier weights, or a higher let-go spin."),
            _ => throw new ComputationRefusedException(
                $"The cords are to let go at {design.LetGo}, which is not reached before they wrap the hub the other way. Give a rule that is met " +
                "earlier, a shorter delay, or longer cords."),
        };
    }

    // The peak is never later than let-go.
    private void RefuseDeadWeight(double unwoundAtPeak)
    {
        if (unwoundAtPeak < LeastUnwound * _cords.Length)
        {
            throw new ComputationRefusedException(
                $"Of {Quoted.Si(_cords.Length, "m")} of cord only {Quoted.Si(unwoundAtPeak, "m")} are unwound when the pull is largest: the rest is so long, " +
                $"{Quoted.Si(_cords.Length / _cords.Radius, "hub radii")}, that the motion is lost in the rounding of its length. Check the units of the lengths, or shorten the cords.");
        }
    }

    private static CordPhase PhaseAt(double coordinate) => coordinate > 0 ? CordPhase.Hinging : CordPhase.Unwinding;

    private DespinState AtSeconds(double seconds)
    {
        double end = _clock.EndTime / _initialSpin;
        if (seconds > end)
        {
            double flight = seconds - end;
            double spin = _cords.Spin(_letGo) * _initialSpin;
            return new DespinState(
                Design,
                CordPhase.LetGo,
                seconds,
                flight,
                _letGo,
                _clock.EndTurn + (spin * flight),
                spin,
                _cords.Turning(_letGo) * _initialSpin);
        }

        double coordinate = _clock.Coordinate(seconds * _initialSpin);
        return StateAt(coordinate, seconds * _initialSpin, _clock.Turn(coordinate));
    }

    private DespinState StateAt(double coordinate, double time, double turn) => new(
        Design,
        PhaseAt(coordinate),
        time / _initialSpin,
        0,
        coordinate,
        turn,
        _cords.Spin(coordinate) * _initialSpin,
        _cords.Turning(coordinate) * _initialSpin);

    // Looks at the motion evenly in the cord's direction, in both phases.
    private IEnumerable<DespinState> Looks()
    {
        const int Count = 16;
        double unwound = Math.Min(_letGo, 0);
        for (int i = 0; i <= Count; i++)
        {
            yield return StateAt(i == Count ? unwound : _cords.Start + ((unwound - _cords.Start) * i / Count), 0, 0);
        }

        for (int i = 1; i <= Count && _letGo > 0; i++)
        {
            yield return StateAt(_letGo * i / Count, 0, 0);
        }
    }
}
