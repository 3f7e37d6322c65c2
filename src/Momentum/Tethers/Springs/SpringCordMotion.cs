using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Springs;

/// <summary>The motion of a planar, symmetric de-spin with spring cords, by numerical integration.</summary>
/// <remarks>
/// Made by <see cref="SpringCordDesign.Deploy"/>. States between the steps are integrated anew from the step before, so that
/// they are as accurate as the steps. Immutable, so safe to share between threads.
/// </remarks>
public sealed class SpringCordMotion : PlanarMotion
{
    // Radians of a spring's swing to one of the initial spin; faster, and the pull of a stretch is that of its rounding.
    private const double FastestSwing = 1e5;

    private readonly List<SpringCordRun.Moment> _moments = [];
    private readonly double _initialSpin;
    private readonly SpringCordState _last;

    internal SpringCordMotion(SpringCordDesign design, CancellationToken cancellation)
    {
        Design = design;
        _initialSpin = design.Hub.Spin.ToSi();
        design.RefuseMetAtStart();
        var run = new SpringCordRun(watching: true);
        if (!(design.Proportions.Spring * (1 + (1 / design.Proportions.Inertia)) <= FastestSwing * FastestSwing))
        {
            throw TooStiff(null);
        }

        SpringCordRun.Outcome outcome;
        try
        {
            outcome = run.Run(design.Proportions, design.LetGo.Si.In(_initialSpin), _moments, cancellation);
        }
        catch (IntegrationRefusedException refused)
        {
            throw TooStiff(refused);
        }

        _last = StateAt(_moments[^1]);
        if (outcome != SpringCordRun.Outcome.LetGo)
        {
            throw new ComputationRefusedException(Refusal(outcome));
        }

        if (!(run.PeakTension > 0))
        {
            throw new ComputationRefusedException(
                $"The cords let go {Quoted.Si(_last.Time.Seconds, "s")} after release, before their springs have stretched by anything that the arithmetic can hold: " +
                "there is no pull to state. Check the units of the cord length and of the let-go spin.");
        }

        UnwindTime = Seconds(run.UnwindTime);
        LargestStretch = Length.FromMeters(run.LargestStretch * design.Hub.Radius.Meters);
        SpringCordState peak = StateAt(run.Peak);
        PeakTension = new PeakTension(0, peak.CordTension, peak.Time, peak.Phase, peak.FreeLength, peak.CordAngle);
        double mass = design.WeightCount * design.WeightMass.ToSi();
        double radius = design.Hub.Radius.Meters;
        Ledger = DeploymentLedger.InPlane(
            design.Hub.SpinInertia.ToSi(),
            mass * radius * radius,
            0,
            _initialSpin,
            [.. _moments.Select(StateAt).Select(state => (state.AngularMomentum.KilogramSquareMetersPerSecond, (state.Energy.Total + state.DampedEnergy).Joules))],
            _last.Spin.ToSi(),
            _last.DampedEnergy.Joules,
            Momentum.Ledger.LargestDeparture);
    }

    /// <inheritdoc/>
    public override SpringCordDesign Design { get; }

    /// <inheritdoc/>
    public override Duration UnwindTime { get; }

    /// <inheritdoc/>
    public override SpringCordState AtLetGo => _last;

    /// <inheritdoc/>
    public override PeakTension PeakTension { get; }

    /// <summary>The largest stretch of each cord.</summary>
    public Length LargestStretch { get; }

    /// <inheritdoc/>
    public override DeploymentLedger Ledger { get; }

    /// <inheritdoc/>
    public override SpringCordState At(Duration time) => History([time])[0];

    /// <inheritdoc/>
    public override IReadOnlyList<SpringCordState> History(IEnumerable<Duration> times)
    {
        ArgumentNullException.ThrowIfNull(times);
        var integrator = new OdeIntegrator<SpringCordEquations, NoEvents, DormandPrince853>(
            new SpringCordEquations(Design.Proportions), default, SpringCordRun.Tolerances);
        return [.. times.Select(time => AtTime(Checked(time), integrator))];
    }

    /// <summary>States at evenly spaced times from release of the weights.</summary>
    /// <param name="samples">How many, two or more; the first at zero, the last at <paramref name="until"/>.</param>
    /// <param name="until">Time of the last; a quarter past let-go if left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two samples, or a time that is negative or not finite.</exception>
    public IReadOnlyList<SpringCordState> History(int samples, Duration? until = null) => History(Times(samples, until));

    private static ComputationRefusedException TooStiff(Exception? cause) => new(
        "The motion of these cords cannot be integrated: they are so stiff, or the weights so light or heavy, that their springs swing " +
        "too fast. Check the units; cords that hardly stretch are computed without stretch (Carrying).",
        cause);

    private SpringCordState AtTime(double seconds, OdeIntegrator<SpringCordEquations, NoEvents, DormandPrince853> integrator)
    {
        double end = _last.Time.Seconds;
        if (seconds >= end)
        {
            return seconds > end ? new SpringCordState(Design, _moments[^1], (seconds - end) * _initialSpin) : _last;
        }

        double time = Math.Min(seconds * _initialSpin, _moments[^1].Time);

        // The last moment at or before the time; of the two at the end of winding, the later.
        int low = 0;
        int high = _moments.Count - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = _moments[middle].Time <= time ? (middle, high) : (low, middle);
        }

        SpringCordRun.Moment from = _moments[low];
        integrator.System.Hinging = from.Hinging;
        integrator.Start(from.Time, from.State);
        integrator.Run(time);
        return StateAt(new SpringCordRun.Moment(time, from.Hinging, integrator.State.ToArray()));
    }

    private SpringCordState StateAt(SpringCordRun.Moment moment) => new(Design, moment, 0);

    private Duration Seconds(double time) => Duration.FromSeconds(time / _initialSpin);

    private string Refusal(SpringCordRun.Outcome outcome) => outcome switch
    {
        SpringCordRun.Outcome.Slack =>
            $"The cords slacken {Quoted.Si(_last.Time.Seconds, "s")} after release, with {Quoted.Si(_last.FreeLength.Meters, "m")} free: from there on this model does not hold. Take stiffer " +
            "cords, give them damping, let go earlier, or use the three-dimensional deployment, which follows slack cords.",
        SpringCordRun.Outcome.Rewound =>
            $"The cords wind back on the hub {Quoted.Si(_last.Time.Seconds, "s")} after release instead of coming to let-go. Take stiffer or shorter cords.",
        SpringCordRun.Outcome.WrapsBack =>
            $"The cords are to let go at {Design.LetGo}, which is not reached before they wrap the hub the other way. Give longer cords, " +
            "heavier weights, softer springs, or a rule that is met earlier.",
        _ =>
            "The cords do not come to let-go in twenty times what cords without stretch take: they are too soft for the weights. Take stiffer cords.",
    };
}
