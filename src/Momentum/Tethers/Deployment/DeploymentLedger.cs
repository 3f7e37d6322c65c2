using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>
/// Momentum and energy at the start and at the end of a deployment, what went where between, and how well the sums close.
/// Equality is by all members.
/// </summary>
/// <remarks>
/// Energy: start + drum friction + cord damping + bearing friction − impulses = end + carried away, where the works are
/// negative when they take energy. Angular momentum: about the inertial origin, as vectors; on a rig, where the bearing's
/// reaction is not known, the part along the bearing's axis about that axis, with the angular impulse of bearing friction
/// and gravity. Linear momentum: not on a rig.
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

    /// <summary>The largest of the three departures.</summary>
    public double Closure => Math.Max(LinearMomentumClosure, Math.Max(AngularMomentumClosure, EnergyClosure));

    internal static DeploymentLedger Close(Propagation run)
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
        };
    }

    /// <summary>How far momenta and energy fail to close, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"linear momentum {LinearMomentumClosure}, angular momentum {AngularMomentumClosure}, energy {EnergyClosure}");
}
