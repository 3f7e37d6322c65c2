using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>
/// Propagates a rigid body under forces and torques, with mass that may burn away and a damper inside that may take energy,
/// and keeps the account of what it did.
/// </summary>
/// <typeparam name="TBody">The body's frame.</typeparam>
/// <typeparam name="TLoads">The loads, a struct.</typeparam>
/// <remarks>
/// Newton's and Euler's equations with the momenta in inertial axes as state, integrated with
/// <see cref="OdeIntegrator{TSystem, TEvents, TMethod}"/> at a relative tolerance of 1e-13. Steps end exactly where a burn begins and
/// ends. Deterministic; allocates when it is made and not while it runs. Not thread-safe: one a thread.
/// </remarks>
public sealed class ForcedMotion<TBody, TLoads>
    where TBody : struct, IFrame
    where TLoads : struct, ILoads<TBody>
{
    private const double RelativeTolerance = 1e-13;

    private readonly Burn<TBody>? _burn;
    private readonly MassProperties<TBody> _massBefore;
    private readonly OdeIntegrator<ForcedBodySystem<TBody, TLoads>, NoEvents, DormandPrince853> _integrator;
    private readonly double _startEnergy;

    private ForcedMotion(MassProperties<TBody> mass, Burn<TBody>? burn, TLoads loads, ViscousSlug damper, Duration time, in BodyState<TBody> state)
    {
        if (!(mass.SiMass > 0.0))
        {
            throw new ArgumentException("mass is default: a body has mass.", nameof(mass));
        }

        _burn = burn;
        _massBefore = mass;
        ForcedBodySystem<TBody, TLoads> system = new() { Loads = loads, Damper = damper };
        double start = time.Seconds;
        SetMass(ref system, start);

        Vec rate = state.Rate.Si;
        Quaternion attitude = state.Attitude.Bare.Normalised();
        Vec slug = attitude.Turn(rate) * damper.SiInertia;
        Vec momentum = attitude.Turn(system.Inertia * rate) + slug;
        Span<double> y = stackalloc double[ForcedState.Size];
        y.Clear();
        state.CentreOfMass.FromOrigin.Si.Write(y[ForcedState.Place..]);
        state.Velocity.Si.Write(y[ForcedState.Velocity..]);
        momentum.Write(y[ForcedState.Momentum..]);
        attitude.Write(y[ForcedState.Attitude..]);
        slug.Write(y[ForcedState.Slug..]);

        // Absolute tolerances of the size of rounding in a motion of about a metre, a metre a second, and the body's own
        // momentum and energy at the start (or, at rest, at a radian a second).
        double inertia = system.Inertia.LargestElement;
        double momentumScale = momentum.Length > 0.0 ? momentum.Length : inertia;
        double energyScale = Math.Max(system.KineticEnergy(start, y), momentumScale * momentumScale / inertia);
        Span<double> absolute = stackalloc double[ForcedState.Size];
        absolute.Fill(RelativeTolerance);
        absolute.Slice(ForcedState.Momentum, 3).Fill(RelativeTolerance * momentumScale);
        absolute.Slice(ForcedState.Slug, 3).Fill(RelativeTolerance * momentumScale);
        absolute[ForcedState.Work..].Fill(RelativeTolerance * energyScale);
        _integrator = new(system, default, OdeTolerances.PerComponent(RelativeTolerance, absolute));
        _integrator.Start(start, y);
        _startEnergy = system.KineticEnergy(start, y);
    }

    /// <summary>The time that the motion has reached.</summary>
    public Duration Time => Duration.FromSeconds(_integrator.Time);

    /// <summary>The state at that time.</summary>
    public BodyState<TBody> State => ForcedBodySystem<TBody, TLoads>.Typed(_integrator.State, _integrator.System.At(_integrator.Time, _integrator.State));

    /// <summary>The account from the start to that time.</summary>
    public MotionLedger Ledger
    {
        get
        {
            ReadOnlySpan<double> y = _integrator.State;
            ref ForcedBodySystem<TBody, TLoads> system = ref _integrator.System;
            double energy = system.KineticEnergy(_integrator.Time, y);
            double work = y[ForcedState.Work];
            double dissipated = y[ForcedState.Dissipated];
            double carried = y[ForcedState.CarriedAway];
            double residual = energy - _startEnergy - work + dissipated + carried;
            double largest = Math.Max(Math.Max(energy, _startEnergy), Math.Max(Math.Abs(work), Math.Max(dissipated, Math.Abs(carried))));
            double mass = system.At(_integrator.Time, y).Mass;
            Vec momentum = Vec.Read(y[ForcedState.Momentum..]);
            Vec velocity = Vec.Read(y[ForcedState.Velocity..]);
            Quaternion q = Quaternion.Read(y[ForcedState.Attitude..]);
            return new MotionLedger
            {
                AngularMomentum = new(momentum),
                LinearMomentum = new(mass * velocity),
                KineticEnergy = Energy.FromJoules(energy),
                Work = Energy.FromJoules(work),
                Dissipated = Energy.FromJoules(dissipated),
                CarriedAway = Energy.FromJoules(carried),
                Residual = Energy.FromJoules(residual),
                RelativeResidual = largest > 0.0 ? residual / largest : 0.0,
                QuaternionDrift = Math.Sqrt(q.SquaredLength) - 1.0,
            };
        }
    }

    /// <summary>A motion of a body whose mass does not change.</summary>
    /// <param name="mass">Mass properties; the centre of mass is what the state's position is of.</param>
    /// <param name="loads">Forces and torques.</param>
    /// <param name="damper">The damper inside; <c>default</c> for none. It starts turning with the body.</param>
    /// <param name="time">The time of the initial state.</param>
    /// <param name="state">The initial state.</param>
    /// <exception cref="ArgumentException">The mass properties are default, or the time is not finite.</exception>
    /// <exception cref="IntegrationRefusedException">The equations give no finite numbers at the start.</exception>
    public static ForcedMotion<TBody, TLoads> Of(MassProperties<TBody> mass, TLoads loads, ViscousSlug damper, Duration time, in BodyState<TBody> state) =>
        new(mass, null, loads, damper, time, state);

    /// <summary>A motion of a body whose mass burns away.</summary>
    /// <param name="burn">Mass properties before, during and after.</param>
    /// <param name="loads">Forces and torques, the thrust among them.</param>
    /// <param name="damper">The damper inside; <c>default</c> for none. It starts turning with the body.</param>
    /// <param name="time">The time of the initial state.</param>
    /// <param name="state">The initial state.</param>
    /// <exception cref="ArgumentException">The time is not finite.</exception>
    /// <exception cref="IntegrationRefusedException">The equations give no finite numbers at the start.</exception>
    public static ForcedMotion<TBody, TLoads> Of(Burn<TBody> burn, TLoads loads, ViscousSlug damper, Duration time, in BodyState<TBody> state)
    {
        ArgumentNullException.ThrowIfNull(burn);
        return new(burn.Before, burn, loads, damper, time, state);
    }

    /// <summary>Carries the motion on to a later time.</summary>
    /// <param name="time">The time to reach; not before <see cref="Time"/>.</param>
    /// <param name="cancellation">Ends the computation early; the motion stays where it has come to.</param>
    /// <returns>The state then.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time lies before the one reached, or is not finite.</exception>
    /// <exception cref="IntegrationRefusedException">The motion cannot be integrated to the accuracy needed.</exception>
    /// <exception cref="ComputationRefusedException">The energy account does not close within <see cref="Momentum.Ledger.LargestDeparture"/>.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public BodyState<TBody> AdvanceTo(Duration time, CancellationToken cancellation = default)
    {
        double end = time.Seconds;
        if (!(end >= _integrator.Time && double.IsFinite(end)))
        {
            throw new ArgumentOutOfRangeException(nameof(time), end, FormattableString.Invariant($"The motion has reached {_integrator.Time:R} s; ask for that or a later, finite time."));
        }

        while (_burn is not null && NextBreak() <= end)
        {
            double at = NextBreak();
            _integrator.Run(at, cancellation);
            SetMass(ref _integrator.System, at);
            _integrator.Start(at, _integrator.State);
        }

        _integrator.Run(end, cancellation);
        MotionLedger ledger = Ledger;
        return Math.Abs(ledger.RelativeResidual) <= Momentum.Ledger.LargestDeparture
            ? State
            : throw new ComputationRefusedException(FormattableString.Invariant($"At {end:R} s the energy account of the motion fails to close by {ledger.Residual.Joules:G3} J, a share of {ledger.RelativeResidual:G3}; {Momentum.Ledger.LargestDeparture:G1} is allowed. Loads that jump or depend on more than time and state are the usual cause."));
    }

    private double NextBreak()
    {
        double now = _integrator.Time;
        return now < _burn!.Start ? _burn.Start : now < _burn.End ? _burn.End : double.PositiveInfinity;
    }

    private void SetMass(ref ForcedBodySystem<TBody, TLoads> system, double time)
    {
        system.Origin = _burn?.Start ?? time;
        system.Mass = _massBefore.SiMass;
        system.Inertia = _massBefore.Inertia.Si;
        system.MassRate = 0.0;
        system.InertiaRate = default;
        system.Exit = default;
        if (_burn is null || time < _burn.Start)
        {
            return;
        }

        if (time >= _burn.End)
        {
            system.Mass = _burn.After.SiMass;
            system.Inertia = _burn.After.Inertia.Si;
            return;
        }

        double duration = _burn.End - _burn.Start;
        system.MassRate = (_burn.After.SiMass - _burn.Before.SiMass) / duration;
        system.InertiaRate = (_burn.After.Inertia.Si - _burn.Before.Inertia.Si) * (1.0 / duration);
        system.Exit = _burn.Exit;
    }
}
