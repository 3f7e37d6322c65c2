using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>The motion of a planar, symmetric de-spin, whatever its cords.</summary>
/// <remarks>
/// Either a <see cref="DespinMotion"/>, in closed form, or a <see cref="Springs.SpringCordMotion"/>, by integration. Immutable,
/// so safe to share between threads.
/// </remarks>
public abstract class PlanarMotion : IDespinMotion
{
    private protected PlanarMotion()
    {
    }

    /// <summary>The design that moves.</summary>
    public abstract PlanarDesign Design { get; }

    /// <summary>How long the cords unwind: until fully unwound, or until let go before that.</summary>
    public abstract Duration UnwindTime { get; }

    /// <summary>Time from release of the weights to let-go of the cords.</summary>
    public Duration LetGoTime => AtLetGo.Time;

    /// <summary>The phase in which the cords let go: unwinding (up to and with fully unwound) or hinging.</summary>
    public CordPhase LetGoPhase => AtLetGo.Phase;

    /// <summary>Spin of the hub after let-go; negative if reversed.</summary>
    public RotationalSpeed FinalSpin => AtLetGo.Spin;

    /// <summary>How far the hub turns from release of the weights to let-go.</summary>
    public Angle HubTurn => AtLetGo.HubAngle;

    /// <summary>The state at let-go, the cords still loaded.</summary>
    public abstract PlanarState AtLetGo { get; }

    /// <summary>The largest tension of each cord, when and in which phase; the unwound length is that with stretch.</summary>
    public abstract PeakTension PeakTension { get; }

    /// <inheritdoc/>
    public IReadOnlyList<WeightDeparture> Departures
    {
        get
        {
            PlanarState last = AtLetGo;
            double speed = last.WeightSpeed.MetersPerSecond;
            var energy = Energy.FromJoules(0.5 * Design.WeightMass.ToSi() * speed * speed);
            return [.. Enumerable.Range(0, Design.WeightCount).Select(i => new WeightDeparture(
                i, last.Time, last.WeightPosition(i), last.WeightVelocity(i), last.WeightVelocityInBodyAxes(i), energy))];
        }
    }

    /// <summary>How well angular momentum and energy close.</summary>
    public abstract DeploymentLedger Ledger { get; }

    /// <summary>Force that holds each stowed weight on the hub at the initial spin, without its cord: mass times radius times spin squared.</summary>
    public Force StowedHoldingForce => Force.FromNewtons(
        Design.WeightMass.ToSi() * Design.Hub.Radius.Meters * Design.Hub.Spin.ToSi() * Design.Hub.Spin.ToSi());

    /// <summary>The state at a time.</summary>
    /// <param name="time">Time since release of the weights, zero or later; may lie after let-go.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or not finite.</exception>
    public abstract PlanarState At(Duration time);

    /// <summary>States at given times.</summary>
    /// <param name="times">Times since release of the weights, zero or later.</param>
    /// <exception cref="ArgumentOutOfRangeException">A time is negative or not finite.</exception>
    public abstract IReadOnlyList<PlanarState> History(IEnumerable<Duration> times);

    IDespinState IDespinMotion.At(Duration time) => At(time);

    IReadOnlyList<IDespinState> IDespinMotion.History(IEnumerable<Duration> times) => History(times);

    private protected static double Checked(Duration time) => time.Seconds >= 0 && double.IsFinite(time.Seconds)
        ? time.Seconds
        : throw new ArgumentOutOfRangeException(
            nameof(time), Quoted.Text(time), "The time counts from release of the weights and must be zero or positive, and finite.");

    /// <summary>Evenly spaced times, the first zero.</summary>
    private protected IEnumerable<Duration> Times(int samples, Duration? until)
    {
        if (samples < 2)
        {
            throw new ArgumentOutOfRangeException(nameof(samples), samples, "A history needs 2 samples or more.");
        }

        double last = Checked(until ?? (LetGoTime * 1.25));
        return Enumerable.Range(0, samples).Select(i => Duration.FromSeconds(last * i / (samples - 1)));
    }
}
