namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>What weighs, and what it carries: momentum and energy of a mechanism, inertial axes and origin.</summary>
/// <remarks>The mechanism must be evaluated at the state that is given.</remarks>
internal static class Weighing
{
    /// <summary>Momentum and energy of all that has not been let go of.</summary>
    public static Balance Of(Mechanism mechanism, ReadOnlySpan<double> state)
    {
        HubConstants hub = mechanism.Hub;
        Balance balance = default;
        Turn turn = new(state.Slice(Mechanism.Attitude, 4));
        Vec omega = Vec.Read(state[Mechanism.Rates..]);
        (Vec place, Vec speed) = Track(hub.Centre, default, state);
        Vec spin = hub.Inertia * omega;
        balance.Linear = hub.Mass * speed;
        balance.Angular = turn.ToInertial(spin) + place.Cross(hub.Mass * speed);
        balance.HubRotation = 0.5 * omega.Dot(spin);
        balance.HubTranslation = 0.5 * hub.Mass * speed.Square;
        balance.Gravity = -hub.Mass * hub.Gravity.Dot(place);
        foreach (ref readonly Link link in mechanism.Links)
        {
            if (link.Phase.Chart != Chart.Gone)
            {
                Add(mechanism, link, state, ref balance);
            }
        }

        for (int cord = 0; cord < mechanism.CordCount; cord++)
        {
            if (!mechanism.HasLetGo(cord))
            {
                AddEnd(mechanism, cord, state, ref balance);
            }
        }

        return balance;
    }

    /// <summary>Momentum and energy of a cord with its weight.</summary>
    public static Balance OfCord(Mechanism mechanism, int cord, ReadOnlySpan<double> state)
    {
        Balance balance = default;
        foreach (ref readonly Link link in mechanism.LinksOf(cord))
        {
            Add(mechanism, link, state, ref balance);
        }

        AddEnd(mechanism, cord, state, ref balance);
        return balance;
    }

    /// <summary>Position and velocity of a node.</summary>
    public static (Vec Position, Vec Velocity) Track(in Link link, ReadOnlySpan<double> state) =>
        Track(link.Motion.Position, link.Phase.Chart == Chart.Held ? default : link.Motion.Velocity, state);

    /// <summary>Angular momentum of the hub, with what rides on it, about its own centre of mass.</summary>
    public static Vec HubMomentum(Mechanism mechanism, ReadOnlySpan<double> state) =>
        new Turn(state.Slice(Mechanism.Attitude, 4)).ToInertial(mechanism.Riding.Momentum(Vec.Read(state[Mechanism.Rates..])));

    private static (Vec Position, Vec Velocity) Track(Vec position, Vec velocity, ReadOnlySpan<double> state)
    {
        Turn turn = new(state.Slice(Mechanism.Attitude, 4));
        Vec omega = Vec.Read(state[Mechanism.Rates..]);
        return (
            Vec.Read(state[Mechanism.Place..]) + turn.ToInertial(position),
            Vec.Read(state[Mechanism.Speed..]) + turn.ToInertial(omega.Cross(position) + velocity));
    }

    private static void Add(Mechanism mechanism, in Link link, ReadOnlySpan<double> state, ref Balance balance)
    {
        (Vec position, Vec velocity) = Track(link, state);
        double kinetic = 0.5 * link.Mass * velocity.Square;
        balance.Linear += link.Mass * velocity;
        balance.Angular += position.Cross(link.Mass * velocity);
        balance.Gravity -= link.Mass * mechanism.Hub.Gravity.Dot(position);
        balance.Weights += link.WeightShare * kinetic;
        balance.Cords += (1 - link.WeightShare) * kinetic;
        if (link.Phase.Pulls && link.IsMoving)
        {
            balance.Elastic += 0.5 * link.Spring * link.Motion.Stretch * link.Motion.Stretch;
        }
    }

    /// <summary>What of a cord lies at its end on the hub.</summary>
    private static void AddEnd(Mechanism mechanism, int cord, ReadOnlySpan<double> state, ref Balance balance)
    {
        double mass = mechanism.CordOf(cord).EndMass;
        if (mass == 0)
        {
            return;
        }

        (Vec position, Vec velocity) = Track(mechanism.Riding.EndPlace(mechanism.CordOf(cord)), default, state);
        balance.Linear += mass * velocity;
        balance.Angular += position.Cross(mass * velocity);
        balance.Gravity -= mass * mechanism.Hub.Gravity.Dot(position);
        balance.Cords += 0.5 * mass * velocity.Square;
    }
}
