using Momentum.Frames;
using Momentum.Numerics;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>The equations of <see cref="ForcedMotion{TBody, TLoads}"/> in SI numbers.</summary>
/// <remarks>
/// The state is laid out as <see cref="ForcedState"/> says. The body's rate comes from the momentum, so no derivative of the
/// inertia enters the motion, only the energy account.
/// </remarks>
internal struct ForcedBodySystem<TBody, TLoads> : IOdeSystem
    where TBody : struct, IFrame
    where TLoads : struct, ILoads<TBody>
{
    public TLoads Loads;
    public ViscousSlug Damper;

    // Mass and inertia at the time Origin, and their rates; no rates outside a burn.
    public double Origin;
    public double Mass;
    public double MassRate;
    public Tensor Inertia;
    public Tensor InertiaRate;
    public Vec Exit;

    public readonly int Dimension
    {
        get { return ForcedState.Size; }
    }

    public readonly void Derivatives(double time, ReadOnlySpan<double> state, Span<double> derivatives)
    {
        Snapshot now = At(time, state);
        Quaternion q = now.Attitude;
        Vec velocity = Vec.Read(state[ForcedState.Velocity..]);
        Vec rate = now.Rate;

        BodyState<TBody> typed = Typed(state, now);
        BodyLoads<TBody> loads = Loads.At(Duration.FromSeconds(time), typed);
        Vec force = q.Turn(loads.BodyForce.Si) + loads.SpaceForce.Si;
        Vec torque = q.Turn(loads.BodyTorque.Si) + loads.SpaceTorque.Si;

        // Mass leaves with the velocity of the body at the nozzle.
        double flow = -MassRate;
        Vec exitVelocity = rate.Cross(Exit);
        Vec flowTorque = q.Turn(Exit.Cross(exitVelocity)) * -flow;
        double flowEnergy = (flow * ((0.5 * velocity.Square) + exitVelocity.Square))
            + (0.5 * rate.Dot(InertiaRate * rate));

        Vec slugTorque = default;
        double dissipation = 0.0;
        if (Damper.SiInertia > 0.0)
        {
            Vec slip = q.Turn(rate) - (Vec.Read(state[ForcedState.Slug..]) * (1.0 / Damper.SiInertia));
            double coefficient = Damper.SiInertia / Damper.SiRelaxation;
            slugTorque = slip * coefficient;
            dissipation = coefficient * slip.Square;
        }

        velocity.Write(derivatives);
        (force * (1.0 / now.Mass)).Write(derivatives[ForcedState.Velocity..]);
        (torque + flowTorque).Write(derivatives[ForcedState.Momentum..]);
        slugTorque.Write(derivatives[ForcedState.Slug..]);

        // The raw quaternion, not the one of unit length: its drift is watched.
        Quaternion raw = Quaternion.Read(state[ForcedState.Attitude..]);
        raw.Rate(rate).Write(derivatives[ForcedState.Attitude..]);
        derivatives[ForcedState.Work] = force.Dot(velocity) + torque.Dot(q.Turn(rate));
        derivatives[ForcedState.Dissipated] = dissipation;
        derivatives[ForcedState.CarriedAway] = flowEnergy;
    }

    public readonly Snapshot At(double time, ReadOnlySpan<double> state)
    {
        double elapsed = time - Origin;
        double mass = Mass + (MassRate * elapsed);
        Tensor inertia = Inertia + (InertiaRate * elapsed);
        Quaternion attitude = Quaternion.Read(state[ForcedState.Attitude..]).Normalised();
        Vec bodyMomentum = attitude.Conjugate().Turn(Vec.Read(state[ForcedState.Momentum..]) - Vec.Read(state[ForcedState.Slug..]));
        return new Snapshot(mass, inertia, attitude, new TensorFactors(inertia).Solve(bodyMomentum));
    }

    public readonly double KineticEnergy(double time, ReadOnlySpan<double> state)
    {
        Snapshot now = At(time, state);
        double slug = Damper.SiInertia > 0.0 ? Vec.Read(state[ForcedState.Slug..]).Square / Damper.SiInertia : 0.0;
        return 0.5 * ((now.Mass * Vec.Read(state[ForcedState.Velocity..]).Square) + now.Rate.Dot(now.Inertia * now.Rate) + slug);
    }

    public static BodyState<TBody> Typed(ReadOnlySpan<double> state, in Snapshot now)
    {
        return new BodyState<TBody>(
            Position<Inertial>.Origin + new Vector<Length, Inertial>(Vec.Read(state[ForcedState.Place..])),
            new Vector<Speed, Inertial>(Vec.Read(state[ForcedState.Velocity..])),
            new Vector<RotationalSpeed, TBody>(now.Rate),
            Rotation<TBody, Inertial>.Unchecked(now.Attitude));
    }

    internal readonly record struct Snapshot(double Mass, Tensor Inertia, Quaternion Attitude, Vec Rate);
}
