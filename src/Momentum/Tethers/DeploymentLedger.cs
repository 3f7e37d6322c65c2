using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>
/// Momentum and energy at the start and at the end of a de-spin, in the plane or in space: what went where between, and how
/// well the sums close.
/// Equality is by all members.
/// </summary>
/// <remarks>
/// Energy: start + drum friction + cord damping + bearing friction − impulses = end + carried away, where the works are
/// negative when they take energy. Angular momentum: about the inertial origin, as vectors; on a rig, where the bearing's
/// reaction is not known, the part along the bearing's axis about that axis, with the angular impulse of bearing friction
/// and gravity. Linear momentum: not on a rig. In the plane the closures are the largest departures over the whole motion, in
/// space those at its end.
/// </remarks>
public sealed record DeploymentLedger
{
    /// <summary>Linear momentum at the start; zero unless on a rig.</summary>
    public required Vector<LinearMomentum, Inertial> LinearMomentumAtStart { get; init; }

    /// <summary>Linear momentum at the end of all that is still together.</summary>
    public required Vector<LinearMomentum, Inertial> LinearMomentumAtEnd { get; init; }

    /// <summary>Linear momentum that the departed weights and cords took along.</summary>
    public required Vector<LinearMomentum, Inertial> LinearMomentumCarriedAway { get; init; }

    /// <summary>Angular momentum about the inertial origin at the start.</summary>
    public required Vector<AngularMomentum, Inertial> AngularMomentumAtStart { get; init; }

    /// <summary>Angular momentum about the inertial origin, at the end, of all that is still together.</summary>
    public required Vector<AngularMomentum, Inertial> AngularMomentumAtEnd { get; init; }

    /// <summary>Angular momentum about the inertial origin that the departed weights and cords took along.</summary>
    public required Vector<AngularMomentum, Inertial> AngularMomentumCarriedAway { get; init; }

    /// <summary>Energy at the start.</summary>
    public required DeploymentEnergy EnergyAtStart { get; init; }

    /// <summary>Energy at the end of all that is still together.</summary>
    public required DeploymentEnergy EnergyAtEnd { get; init; }

    /// <summary>Kinetic, elastic and potential energy that the departed weights and cords took along.</summary>
    public required Energy EnergyCarriedAway { get; init; }

    /// <summary>Work of drum friction, zero or negative.</summary>
    public required Energy DrumFrictionWork { get; init; }

    /// <summary>Work of the cords' damping, zero or negative.</summary>
    public required Energy CordDampingWork { get; init; }

    /// <summary>Work of the bearing's friction, zero or negative.</summary>
    public required Energy BearingWork { get; init; }

    /// <summary>Energy lost in impulses: the end of winding on a grooved drum, and cords that come taut without stretch.</summary>
    public required Energy ImpulseLoss { get; init; }

    /// <summary>
    /// Departure of linear momentum from its sum, relative to √(2 m E): what weights of mass m together have if they carry
    /// off all the energy E; zero on a rig.
    /// </summary>
    public required double LinearMomentumClosure { get; init; }

    /// <summary>Departure of angular momentum from its sum, relative to its size at the start.</summary>
    public required double AngularMomentumClosure { get; init; }

    /// <summary>Departure of energy from its sum, relative to the kinetic energy at the start.</summary>
    public required double EnergyClosure { get; init; }

    /// <summary>What each of the departures may be at most; with more the motion is refused.</summary>
    public required double AllowedClosure { get; init; }

    /// <summary>The largest of the three departures.</summary>
    public double Closure => Math.Max(LinearMomentumClosure, Math.Max(AngularMomentumClosure, EnergyClosure));

    /// <summary>The ledger of a planar motion, whose linear momentum vanishes by symmetry.</summary>
    /// <param name="hub">Spin inertia of the hub alone, kg·m².</param>
    /// <param name="weights">Spin inertia of the stowed weights, kg·m².</param>
    /// <param name="cords">Spin inertia of the wound cords, kg·m².</param>
    /// <param name="spin">Initial spin, rad/s.</param>
    /// <param name="looks">Angular momentum and energy, damped energy and all, at several instants; the last is let-go.</param>
    /// <param name="finalSpin">Spin at let-go, rad/s.</param>
    /// <param name="damped">What the damping of the cords has taken by then, J.</param>
    /// <param name="allowed">The largest relative departure allowed.</param>
    /// <exception cref="ComputationRefusedException">Momentum or energy departs by more.</exception>
    internal static DeploymentLedger InPlane(
        double hub,
        double weights,
        double cords,
        double spin,
        IReadOnlyList<(double Momentum, double Energy)> looks,
        double finalSpin,
        double damped,
        double allowed)
    {
        double momentum = (hub + weights + cords) * spin;
        double energy = 0.5 * momentum * spin;
        double momentumClosure = 0;
        double energyClosure = 0;
        foreach ((double nowMomentum, double nowEnergy) in looks)
        {
            momentumClosure = Math.Max(momentumClosure, Math.Abs((nowMomentum / momentum) - 1));
            energyClosure = Math.Max(energyClosure, Math.Abs((nowEnergy / energy) - 1));
        }

        if (!(momentumClosure <= allowed && energyClosure <= allowed))
        {
            throw new ComputationRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"Angular momentum and energy of the computed motion do not close (relative departure {momentumClosure:g3} and {energyClosure:g3}, allowed {allowed:g3}). The inertia, masses and lengths given are too far apart for the arithmetic; check their units."));
        }

        (double lastMomentum, double lastEnergy) = looks[^1];
        double hubEnergy = 0.5 * hub * finalSpin * finalSpin;
        return new DeploymentLedger
        {
            LinearMomentumAtStart = default,
            LinearMomentumAtEnd = default,
            LinearMomentumCarriedAway = default,
            AngularMomentumAtStart = Vector<AngularMomentum, Inertial>.FromSi(0, 0, momentum),
            AngularMomentumAtEnd = Vector<AngularMomentum, Inertial>.FromSi(0, 0, hub * finalSpin),
            AngularMomentumCarriedAway = Vector<AngularMomentum, Inertial>.FromSi(0, 0, lastMomentum - (hub * finalSpin)),
            EnergyAtStart = new DeploymentEnergy(
                Joules(0.5 * hub * spin * spin), Energy.Zero, Joules(0.5 * weights * spin * spin), Joules(0.5 * cords * spin * spin), Energy.Zero, Energy.Zero),
            EnergyAtEnd = new DeploymentEnergy(Joules(hubEnergy), Energy.Zero, Energy.Zero, Energy.Zero, Energy.Zero, Energy.Zero),
            EnergyCarriedAway = Joules(lastEnergy - damped - hubEnergy),
            DrumFrictionWork = Energy.Zero,
            CordDampingWork = Joules(-damped),
            BearingWork = Energy.Zero,
            ImpulseLoss = Energy.Zero,
            LinearMomentumClosure = 0,
            AngularMomentumClosure = momentumClosure,
            EnergyClosure = energyClosure,
            AllowedClosure = allowed,
        };

        static Energy Joules(double value) => Energy.FromJoules(value);
    }

    /// <summary>The ledger of a run in space; whether it closes is for the caller to judge.</summary>
    internal static DeploymentLedger Close(Propagation run, double allowed)
    {
        Mechanism mechanism = run.Mechanism;
        Balance first = run.First;
        Balance last = run.Balance();
        Balance carried = run.Carried;
        ReadOnlySpan<double> state = run.State;
        double friction = state[mechanism.FrictionWork];
        double damping = state[mechanism.DampingWork];
        double bearing = state[mechanism.BearingWork];
        double weights = 0;
        for (int i = 0; i < mechanism.CordCount; i++)
        {
            weights += mechanism.CordOf(i).Weight;
        }

        double kinetic = first.Energy - first.Gravity;
        double energy = (last.Energy + carried.Energy + run.ImpactLoss - friction - damping - bearing - first.Energy) / kinetic;
        double linear = 0;
        double angular;
        if (mechanism.Hub.OnBearing)
        {
            Vec axis = new Turn(state.Slice(Mechanism.Attitude, 4)).ToInertial(mechanism.Hub.Axis);
            double sum = axis.Dot(last.Angular + carried.Angular - first.Angular) - state[mechanism.AxialImpulse];
            angular = Math.Abs(sum / axis.Dot(first.Angular));
        }
        else
        {
            linear = (last.Linear + carried.Linear - first.Linear).Length / Math.Sqrt(2 * weights * kinetic);
            angular = (last.Angular + carried.Angular - first.Angular).Length / first.Angular.Length;
        }

        return new DeploymentLedger
        {
            LinearMomentumAtStart = Vector<LinearMomentum, Inertial>.FromSi(first.Linear),
            LinearMomentumAtEnd = Vector<LinearMomentum, Inertial>.FromSi(last.Linear),
            LinearMomentumCarriedAway = Vector<LinearMomentum, Inertial>.FromSi(carried.Linear),
            AngularMomentumAtStart = Vector<AngularMomentum, Inertial>.FromSi(first.Angular),
            AngularMomentumAtEnd = Vector<AngularMomentum, Inertial>.FromSi(last.Angular),
            AngularMomentumCarriedAway = Vector<AngularMomentum, Inertial>.FromSi(carried.Angular),
            EnergyAtStart = DeploymentEnergy.Of(first),
            EnergyAtEnd = DeploymentEnergy.Of(last),
            EnergyCarriedAway = Energy.FromJoules(carried.Energy),
            DrumFrictionWork = Energy.FromJoules(friction),
            CordDampingWork = Energy.FromJoules(damping),
            BearingWork = Energy.FromJoules(bearing),
            ImpulseLoss = Energy.FromJoules(run.ImpactLoss),
            LinearMomentumClosure = linear,
            AngularMomentumClosure = angular,
            EnergyClosure = Math.Abs(energy),
            AllowedClosure = allowed,
        };
    }

    /// <summary>How far momenta and energy fail to close, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"linear momentum {LinearMomentumClosure}, angular momentum {AngularMomentumClosure}, energy {EnergyClosure}");
}
