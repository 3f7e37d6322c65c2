using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// A computed deployment: one trajectory from before the first weight is free to after the last cord has let go, with its
/// events and its ledger.
/// </summary>
/// <remarks>Made by <see cref="CordDeployment.Deploy"/>. Immutable, so safe to share between threads.</remarks>
public sealed class DeploymentResult : IDespinMotion
{
    private const double FinestTolerance = 1e-13;

    private readonly HubConstants _hub;
    private readonly CordConstants[] _cords;
    private readonly Surroundings _surroundings;
    private readonly Recording _recording;
    private readonly Flight[] _flights;
    private readonly double _spin;

    internal DeploymentResult(CordDeployment deployment, CancellationToken cancellation)
    {
        Deployment = deployment;
        _hub = deployment.CheckedHub();
        Vec rates = deployment.Rates.Si;
        _spin = rates.Dot(_hub.Axis);
        _cords = deployment.CheckedCords(_spin);
        _surroundings = deployment.CheckedSurroundings(_spin);
        Mechanism mechanism = new(_hub, _cords);
        double allowed = Momentum.Ledger.Allowed(deployment.Tolerance);
        Propagation run = Propagate(deployment, mechanism, cancellation, out _recording, out Survey survey);
        Ledger = DeploymentLedger.Close(run, allowed);
        if (!(Ledger.Closure <= allowed) && deployment.Tolerance > FinestTolerance)
        {
            // The tolerance bounds the error of a step, not of the run: now and then steps add up one way. Finer ones decide.
            run = Propagate(deployment with { Tolerance = FinestTolerance }, mechanism, cancellation, out _recording, out survey);
            Ledger = DeploymentLedger.Close(run, allowed);
        }

        if (!(Ledger.Closure <= allowed))
        {
            throw new DeploymentRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"The ledger does not close, not with steps of the finest tolerance either: linear momentum {Ledger.LinearMomentumClosure:G3}, angular momentum {Ledger.AngularMomentumClosure:G3}, energy {Ledger.EnergyClosure:G3}, allowed {allowed:G3}. Check the units of masses and lengths."));
        }

        _flights = new Flight[_cords.Length];
        for (int i = 0; i < _flights.Length; i++)
        {
            (Vec place, Vec velocity, double time) = run.Departures[i];
            _flights[i] = new Flight(place, velocity, time, _hub.Gravity);
        }

        Events = [.. run.Incidents.Select(i => new DeploymentEvent(
            i.Kind, Duration.FromSeconds(i.Time), i.Cord < 0 ? null : i.Cord, Energy.FromJoules(i.EnergyLost)))];
        StepTimes = [.. Enumerable.Range(0, _recording.Count).Select(i => Duration.FromSeconds(_recording.Time(i))).Distinct()];
        End = Duration.FromSeconds(run.Time);

        Replay replay = NewReplay();
        (Before, During, After) = survey.Wobbles();
        PeakTensions = [.. survey.Peaks.Select((peak, cord) => replay.Highest(cord, peak, run.Time))];
        FinalState = replay.StateAt(run.Time);
        Departures = [.. Events.Where(e => e.Kind == DeploymentEventKind.LetGo).Select(e => DepartureOf(replay, e.Cord!.Value)).OrderBy(l => l.Cord)];
        Landings = [.. Enumerable.Range(0, _cords.Length).Select(Land).OfType<Landing>()];
        Warnings = DeploymentWarnings.Of(this);
    }

    private Propagation Propagate(
        CordDeployment deployment, Mechanism mechanism, CancellationToken cancellation, out Recording recording, out Survey survey)
    {
        Propagation run = new(mechanism, _surroundings, deployment.Tolerances(mechanism, _spin));
        recording = new Recording(mechanism.Dimension);
        survey = new Survey(_cords.Length);
        Rotation<Body, Inertial> attitude = deployment.Attitude;
        run.Run(
            [attitude.X, attitude.Y, attitude.Z, attitude.W], deployment.Rates.Si, deployment.CheckedEnd(), false, recording, survey, cancellation);
        return run;
    }

    /// <summary>What was deployed.</summary>
    public CordDeployment Deployment { get; }

    /// <summary>What happened, in the order of time.</summary>
    public IReadOnlyList<DeploymentEvent> Events { get; }

    /// <summary>The ledger; a result exists only if it closes.</summary>
    public DeploymentLedger Ledger { get; }

    /// <summary>When the computation ended.</summary>
    public Duration End { get; }

    /// <summary>The times of the integration's steps and of the events: dense where much happens.</summary>
    public IReadOnlyList<Duration> StepTimes { get; }

    /// <summary>The state at the end.</summary>
    public DeploymentState FinalState { get; }

    /// <summary>The rate about the spin axis at the end.</summary>
    public RotationalSpeed FinalSpin => FinalState.Spin;

    /// <summary>The wobble until the first weight is free.</summary>
    public Wobble Before { get; }

    /// <summary>The wobble from then until the last let-go, or the end.</summary>
    public Wobble During { get; }

    /// <summary>
    /// The wobble after the last let-go: over all time, for a hub that is left alone goes on turning freely and shows its
    /// largest angle and rates only in the end; the same as <see cref="During"/> if a cord is still on, and up to the end of
    /// the computation on a rig.
    /// </summary>
    public Wobble After { get; }

    /// <summary>The largest tension of each cord, in the order of the cords.</summary>
    public IReadOnlyList<PeakTension> PeakTensions { get; }

    /// <inheritdoc/>
    public PeakTension PeakTension => PeakTensions.MaxBy(p => p.Tension);

    /// <summary>How each weight leaves, in the order of the cords; without those whose cord does not let go.</summary>
    public IReadOnlyList<WeightDeparture> Departures { get; }

    /// <summary>Where departed weights meet the rig's floor or walls; empty without a rig.</summary>
    public IReadOnlyList<Landing> Landings { get; }

    /// <summary>What someone should look at before trusting the design, in plain words.</summary>
    public IReadOnlyList<DeploymentWarning> Warnings { get; }

    /// <summary>The state at a time.</summary>
    /// <param name="time">From zero to <see cref="End"/>; at an event, the state after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside this range.</exception>
    public DeploymentState At(Duration time) => NewReplay().StateAt(Within(time));

    /// <summary>The states at many times; faster than one by one.</summary>
    /// <param name="times">Each from zero to <see cref="End"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A time is outside this range.</exception>
    public IReadOnlyList<DeploymentState> History(IEnumerable<Duration> times)
    {
        ArgumentNullException.ThrowIfNull(times);
        Replay replay = NewReplay();
        return [.. times.Select(t => replay.StateAt(Within(t)))];
    }

    /// <summary>The states at evenly spaced times from zero to the end.</summary>
    /// <param name="samples">How many, at least 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 2.</exception>
    public IReadOnlyList<DeploymentState> History(int samples)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samples, 2);
        double end = End.Seconds;
        return History(Enumerable.Range(0, samples).Select(i => Duration.FromSeconds(i == samples - 1 ? end : end * i / (samples - 1))));
    }

    private double Within(Duration time) => time.Seconds >= 0 && time.Seconds <= End.Seconds
        ? time.Seconds
        : throw new ArgumentOutOfRangeException(nameof(time), Quoted.Text(time), $"The deployment was computed from 0 to {Quoted.Text(End)}.");

    private Replay NewReplay() => new(Deployment, _recording, _hub, _cords, _flights, m => Deployment.Tolerances(m, _spin));

    IDespinState IDespinMotion.At(Duration time) => At(time);

    IReadOnlyList<IDespinState> IDespinMotion.History(IEnumerable<Duration> times) => History(times);

    private WeightDeparture DepartureOf(Replay replay, int cord)
    {
        Flight flight = _flights[cord];
        Vector<Speed, Inertial> velocity = Vector<Speed, Inertial>.FromSi(flight.Velocity);
        return new WeightDeparture(
            cord,
            Duration.FromSeconds(flight.Start),
            Position<Inertial>.Origin + Vector<Length, Inertial>.FromSi(flight.Place),
            velocity,
            replay.StateAt(flight.Start).Attitude.Inverse().Apply(velocity),
            Energy.FromJoules(0.5 * _cords[cord].Weight * flight.Velocity.Square));
    }

    private Landing? Land(int cord)
    {
        Flight flight = _flights[cord];
        if (!Departures.Any(l => l.Cord == cord) || flight.Meets(_surroundings, out bool onFloor) is not { } since)
        {
            return null;
        }

        (Vec place, Vec velocity) = flight.After(since);
        return new Landing(
            cord,
            Duration.FromSeconds(flight.Start + since),
            Position<Inertial>.Origin + Vector<Length, Inertial>.FromSi(place),
            Speed.FromMetersPerSecond(velocity.Length),
            Energy.FromJoules(0.5 * _cords[cord].Weight * velocity.Square),
            onFloor);
    }
}
