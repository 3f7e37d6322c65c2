using System.Globalization;
using MathNet.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// A computed deployment: one trajectory from before the first weight is free to after the last cord has let go, with its
/// events and its ledger.
/// </summary>
/// <remarks>Made by <see cref="CordDeployment.Deploy"/>. Immutable, so safe to share between threads.</remarks>
public sealed class DeploymentResult
{
    private const double LargestClosure = 1e-11;
    private const double ClosureInTolerances = 10;
    private const double FinestTolerance = 1e-13;

    private readonly HubConstants _hub;
    private readonly CordConstants[] _cords;
    private readonly Surroundings _surroundings;
    private readonly Recording _recording;
    private readonly (Vec Position, Vec Velocity, double Time)[] _departures;
    private readonly int[] _outer;
    private readonly double _spin;

    internal DeploymentResult(CordDeployment deployment)
    {
        Deployment = deployment;
        _hub = deployment.CheckedHub();
        Vec rates = deployment.Rates.Si;
        _spin = rates.Dot(_hub.Axis);
        _cords = deployment.CheckedCords(_spin);
        _surroundings = deployment.CheckedSurroundings(_spin);
        Mechanism mechanism = new(_hub, _cords);
        double allowed = Math.Max(LargestClosure, ClosureInTolerances * deployment.Tolerance);
        Propagation run = Propagate(deployment, mechanism, out _recording, out Survey survey);
        Ledger = DeploymentLedger.Close(run);
        if (!(Ledger.Closure <= allowed) && deployment.Tolerance > FinestTolerance)
        {
            // The tolerance bounds the error of a step, not of the run: now and then steps add up one way. Finer ones decide.
            run = Propagate(deployment with { Tolerance = FinestTolerance }, mechanism, out _recording, out survey);
            Ledger = DeploymentLedger.Close(run);
        }

        if (!(Ledger.Closure <= allowed))
        {
            throw new DeploymentRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"The ledger does not close, not with steps of the finest tolerance either: linear momentum {Ledger.LinearMomentumClosure:G3}, angular momentum {Ledger.AngularMomentumClosure:G3}, energy {Ledger.EnergyClosure:G3}, allowed {allowed:G3}. Check the units of masses and lengths."));
        }

        _departures = run.Departures.ToArray();
        _outer = [.. Enumerable.Range(0, _cords.Length).Select(mechanism.OuterLink)];
        Events = [.. run.Incidents.Select(i => new DeploymentEvent(
            i.Kind, Duration.FromSeconds(i.Time), i.Cord < 0 ? null : i.Cord, Energy.FromJoules(i.EnergyLost)))];
        StepTimes = [.. Enumerable.Range(0, _recording.Count).Select(i => Duration.FromSeconds(_recording.Time(i))).Distinct()];
        End = Duration.FromSeconds(run.Time);

        Replay replay = NewReplay();
        (Before, During, After) = survey.Wobbles();
        PeakTensions = [.. survey.Peaks.Select((peak, cord) => Refine(replay, cord, peak))];
        FinalState = Describe(replay, run.Time);
        LetGos = [.. Events.Where(e => e.Kind == DeploymentEventKind.Released).Select(e => LetGo(e.Cord!.Value)).OrderBy(l => l.Cord)];
        Landings = [.. Enumerable.Range(0, _cords.Length).Select(Land).OfType<Landing>()];
        Warnings = DeploymentWarnings.Of(this);
    }

    private Propagation Propagate(CordDeployment deployment, Mechanism mechanism, out Recording recording, out Survey survey)
    {
        Propagation run = new(mechanism, _surroundings, deployment.Tolerances(mechanism, _spin));
        recording = new Recording(mechanism.Dimension);
        survey = new Survey(_cords.Length);
        Rotation<Body, Inertial> attitude = deployment.Attitude;
        run.Run(
            [attitude.X, attitude.Y, attitude.Z, attitude.W], deployment.Rates.Si, deployment.CheckedEnd(), false, recording, survey);
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

    /// <summary>The wobble from then until the last release, or the end.</summary>
    public Wobble During { get; }

    /// <summary>
    /// The wobble after the last release: over all time, for a hub that is left alone goes on turning freely and shows its
    /// largest angle and rates only in the end; the same as <see cref="During"/> if a cord is still on, and up to the end of
    /// the computation on a rig.
    /// </summary>
    public Wobble After { get; }

    /// <summary>The largest tension of each cord, in the order of the cords.</summary>
    public IReadOnlyList<TensionPeak> PeakTensions { get; }

    /// <summary>How each weight leaves, in the order of the cords; without those whose cord does not let go.</summary>
    public IReadOnlyList<WeightLetGo> LetGos { get; }

    /// <summary>Where released weights meet the rig's floor or walls; empty without a rig.</summary>
    public IReadOnlyList<Landing> Landings { get; }

    /// <summary>What someone should look at before trusting the design, in plain words.</summary>
    public IReadOnlyList<DeploymentWarning> Warnings { get; }

    /// <summary>The state at a time.</summary>
    /// <param name="time">From zero to <see cref="End"/>; at an event, the state after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside this range.</exception>
    public DeploymentState At(Duration time) => Describe(NewReplay(), Within(time));

    /// <summary>The states at many times; faster than one by one.</summary>
    /// <param name="times">Each from zero to <see cref="End"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A time is outside this range.</exception>
    public IReadOnlyList<DeploymentState> History(IEnumerable<Duration> times)
    {
        ArgumentNullException.ThrowIfNull(times);
        Replay replay = NewReplay();
        return [.. times.Select(t => Describe(replay, Within(t)))];
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

    private Replay NewReplay() => new(_recording, _hub, _cords, m => Deployment.Tolerances(m, _spin));

    private DeploymentState Describe(Replay replay, double time)
    {
        replay.GoTo(time);
        Mechanism mechanism = replay.Mechanism;
        ReadOnlySpan<double> state = replay.State;
        ReadOnlySpan<double> q = state.Slice(Mechanism.Attitude, 4);
        double length = Math.Sqrt((q[0] * q[0]) + (q[1] * q[1]) + (q[2] * q[2]) + (q[3] * q[3]));
        Vec omega = Vec.Read(state[Mechanism.Rates..]);
        Turn turn = new(q);
        Vec momentum = mechanism.HubMomentum(state);
        Rotation<Body, Inertial> start = Deployment.Attitude;
        Vec axisThen = new Turn([start.X, start.Y, start.Z, start.W]).ToInertial(_hub.Axis);
        CordState[] cords = new CordState[_cords.Length];
        for (int i = 0; i < cords.Length; i++)
        {
            cords[i] = DescribeCord(mechanism, state, turn, i, time);
        }

        return new DeploymentState
        {
            Time = Duration.FromSeconds(time),
            Spin = RotationalSpeed.FromRadiansPerSecond(omega.Dot(_hub.Axis)),
            TransverseRate = RotationalSpeed.FromRadiansPerSecond(omega.Cross(_hub.Axis).Length),
            Rates = Vector<RotationalSpeed, Body>.FromSi(omega),
            Attitude = Rotation<Body, Inertial>.FromQuaternion(q[0] / length, q[1] / length, q[2] / length, q[3] / length),
            Origin = At(Vec.Read(state)),
            OriginVelocity = Vector<Speed, Inertial>.FromSi(Vec.Read(state[Mechanism.Speed..])),
            HubAngularMomentum = Vector<AngularMomentum, Inertial>.FromSi(momentum),
            NutationAngle = Angle.FromRadians(Survey.Nutation(mechanism, state)),
            AxisTilt = Angle.FromRadians(turn.ToInertial(_hub.Axis).AngleTo(axisThen)),
            Energy = DeploymentEnergy.Of(mechanism.Weigh(state)),
            Cords = cords,
        };
    }

    private CordState DescribeCord(Mechanism mechanism, ReadOnlySpan<double> state, Turn turn, int cord, double time)
    {
        int outer = _outer[cord];
        int inner = mechanism.InnerLink(cord);
        ref readonly Link weight = ref mechanism.Links[outer];
        Vec origin = Vec.Read(state);
        if (inner < 0)
        {
            bool released = weight.Chart == LinkChart.Released;
            (Vec place, Vec velocity) = mechanism.Track(outer, state);
            if (released)
            {
                (Vec from, Vec then, double left) = _departures[outer];
                double since = time - left;
                place = from + (since * then) + (0.5 * since * since * _hub.Gravity);
                velocity = then + (since * _hub.Gravity);
            }

            return new CordState
            {
                Phase = released ? CordPhase.Released : CordPhase.Held,
                IsSlack = false,
                Tension = Force.Zero,
                FreeLength = released ? Deployment.Cords[cord].Length : Deployment.Cords[cord].Hanging,
                CordAngle = Angle.Zero,
                OutOfPlane = Angle.Zero,
                Root = At(place),
                Joints = [],
                Weight = At(place),
                WeightVelocity = Vector<Speed, Inertial>.FromSi(velocity),
            };
        }

        ref readonly Link link = ref mechanism.Links[inner];
        bool onDrum = link.IsOnDrum;
        Vec root = onDrum ? link.Position - (link.Free * (_cords[cord].Smooth ? link.Trailing + (link.Sin / link.Cos * _hub.Axis) : link.Along)) : link.Anchor;
        if (link.Chart == LinkChart.WoundFree)
        {
            root = (_cords[cord].Height * _hub.Axis) + (_cords[cord].Radius * link.Radial);
        }

        double free = (link.Position - root).Length;
        Position<Inertial>[] joints = inner == outer ? [] : new Position<Inertial>[inner - outer];
        for (int i = inner; i > outer; i--)
        {
            Vec joint = mechanism.Links[i].Position;
            joints[inner - i] = At(origin + turn.ToInertial(joint));
            free += (mechanism.Links[i - 1].Position - joint).Length;
        }

        (Vec weightPlace, Vec weightVelocity) = mechanism.Track(outer, state);
        return new CordState
        {
            Phase = onDrum ? CordPhase.Unwinding : CordPhase.Swinging,
            IsSlack = !link.IsConstrained && !link.Pulls,
            Tension = Force.FromNewtons(Math.Max(link.Tension, 0)),
            FreeLength = Length.FromMeters(free),
            CordAngle = Angle.FromRadians(onDrum ? 0 : Math.Atan2(link.Along.Dot(link.AnchorRadial), link.Along.Dot(link.AnchorTrailing))),
            OutOfPlane = Angle.FromRadians(Math.Asin(Math.Clamp(link.Along.Dot(_hub.Axis), -1, 1))),
            Root = At(origin + turn.ToInertial(root)),
            Joints = joints,
            Weight = At(weightPlace),
            WeightVelocity = Vector<Speed, Inertial>.FromSi(weightVelocity),
        };
    }

    private TensionPeak Refine(Replay replay, int cord, Survey.Peak peak)
    {
        // Golden section on whatever the tension does there: a peak may also be a jump at an event, where it then stays.
        const double Golden = 0.6180339887498949;
        const int Iterations = 40;
        double from = peak.From;
        double until = Math.Min(peak.Until, End.Seconds);
        double time = peak.Time;
        double tension = peak.Tension;
        for (int i = 0; i < Iterations && until > from; i++)
        {
            double left = until - (Golden * (until - from));
            double right = from + (Golden * (until - from));
            double atLeft = TensionAt(replay, cord, left);
            double atRight = TensionAt(replay, cord, right);
            (from, until) = atLeft > atRight ? (from, right) : (left, until);
            if (Math.Max(atLeft, atRight) > tension)
            {
                (tension, time) = atLeft > atRight ? (atLeft, left) : (atRight, right);
            }
        }

        return new TensionPeak(cord, Force.FromNewtons(tension), Duration.FromSeconds(time));
    }

    private static double TensionAt(Replay replay, int cord, double time)
    {
        replay.GoTo(time);
        int inner = replay.Mechanism.InnerLink(cord);
        return inner < 0 ? 0 : replay.Mechanism.Links[inner].Tension;
    }

    private WeightLetGo LetGo(int cord)
    {
        (Vec place, Vec velocity, double time) = _departures[_outer[cord]];
        return new WeightLetGo(
            cord,
            Duration.FromSeconds(time),
            At(place),
            Vector<Speed, Inertial>.FromSi(velocity),
            Energy.FromJoules(0.5 * _cords[cord].Weight * velocity.Square));
    }

    private Landing? Land(int cord)
    {
        (Vec from, Vec velocity, double left) = _departures[_outer[cord]];
        bool released = LetGos.Any(l => l.Cord == cord);
        if (!released || !_surroundings.HasRoom)
        {
            return null;
        }

        double fall = double.PositiveInfinity;
        if (!double.IsNegativeInfinity(_surroundings.Floor))
        {
            fall = FirstPositive(0.5 * _hub.Gravity.Z, velocity.Z, from.Z - _surroundings.Floor);
        }

        double wall = double.PositiveInfinity;
        if (!double.IsPositiveInfinity(_surroundings.Walls))
        {
            double square = (velocity.X * velocity.X) + (velocity.Y * velocity.Y);
            double along = (from.X * velocity.X) + (from.Y * velocity.Y);
            wall = FirstPositive(
                square, 2 * along, (from.X * from.X) + (from.Y * from.Y) - (_surroundings.Walls * _surroundings.Walls));
        }

        double time = Math.Min(fall, wall);
        if (double.IsPositiveInfinity(time))
        {
            return null;
        }

        Vec place = from + (time * velocity) + (0.5 * time * time * _hub.Gravity);
        Vec speed = velocity + (time * _hub.Gravity);
        return new Landing(
            cord,
            Duration.FromSeconds(left + time),
            At(place),
            Speed.FromMetersPerSecond(speed.Length),
            Energy.FromJoules(0.5 * _cords[cord].Weight * speed.Square),
            fall <= wall);
    }

    /// <summary>First zero after now of a t² + b t + c; infinite if there is none.</summary>
    private static double FirstPositive(double a, double b, double c)
    {
        if (a == 0)
        {
            return b == 0 || -c / b < 0 ? double.PositiveInfinity : -c / b;
        }

        (System.Numerics.Complex one, System.Numerics.Complex other) = FindRoots.Quadratic(c, b, a);
        double first = double.PositiveInfinity;
        foreach (System.Numerics.Complex root in (ReadOnlySpan<System.Numerics.Complex>)[one, other])
        {
            if (root.Imaginary == 0 && root.Real >= 0)
            {
                first = Math.Min(first, root.Real);
            }
        }

        return first;
    }

    private static Position<Inertial> At(Vec place) => Position<Inertial>.Origin + Vector<Length, Inertial>.FromSi(place);
}
