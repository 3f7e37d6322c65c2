namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The impulse that stops every link of fixed length along its length as phases change. Momentum stays; the energy that goes is the
/// ledger's to name. Holds its memory.
/// </summary>
internal sealed class Impulse(Mechanism mechanism)
{
    private readonly Vec[] _velocities = new Vec[mechanism.Links.Length];

    /// <summary>Keeps the velocities of the nodes, of the last evaluation, from before a phase changes.</summary>
    public void Remember()
    {
        ReadOnlySpan<Link> links = mechanism.Links;
        for (int i = 0; i < links.Length; i++)
        {
            _velocities[i] = links[i].IsMoving ? links[i].Motion.Velocity : default;
        }
    }

    /// <summary>A node strikes the hub and stays with it: the hub, with the node riding on it already, takes its momentum.</summary>
    public void Catch(int index, Span<double> state)
    {
        ref readonly Link link = ref mechanism.Links[index];
        Vec momentum = link.Mass * _velocities[index];
        mechanism.Riding.Respond(momentum, link.Motion.Position.Cross(momentum), out Vec hub, out Vec turning);
        Move(state, hub, turning);
        _velocities[index] = default;
    }

    /// <summary>Stops the links of fixed length in their new phases, and writes the velocities after it.</summary>
    public void Stop(Span<double> state)
    {
        mechanism.LocateAll(state);
        if (mechanism.Tensions.Count > 0)
        {
            SolveImpulses();
            Apply(state);
        }

        ReadOnlySpan<Link> links = mechanism.Links;
        for (int i = 0; i < links.Length; i++)
        {
            ref readonly Link link = ref links[i];
            if (link.IsMoving)
            {
                int parent = link.Phase.Parent;
                mechanism.SetVelocity(
                    link, _velocities[i], parent < 0 ? default : _velocities[parent], state.Slice(link.Offset, Mechanism.Slots));
            }
        }
    }

    private void SolveImpulses()
    {
        TensionSystem system = mechanism.Tensions;
        ReadOnlySpan<Link> links = mechanism.Links;
        system.Fill(links, mechanism.Riding, false);
        for (int row = 0; row < system.Count; row++)
        {
            int i = system.Links[row];
            int parent = links[i].Phase.Parent;
            Vec velocity = parent < 0 ? _velocities[i] : _velocities[i] - _velocities[parent];
            system.SetRight(row, links[i].Motion.Gradient.Dot(velocity));
        }

        system.Solve();
    }

    private void Apply(Span<double> state)
    {
        TensionSystem system = mechanism.Tensions;
        ReadOnlySpan<Link> links = mechanism.Links;
        Vec hub = default;
        Vec turning = default;
        for (int row = 0; row < system.Count; row++)
        {
            int i = system.Links[row];
            ref readonly Link link = ref links[i];
            double impulse = system.Tensions[row];
            Vec pull = impulse * link.Motion.Gradient;
            _velocities[i] -= (1 / link.Mass) * pull;
            if (link.Phase.Parent < 0)
            {
                hub += impulse * system.HubAccelerations[row];
                turning += impulse * system.HubTurnings[row];
            }
            else
            {
                _velocities[link.Phase.Parent] += (1 / links[link.Phase.Parent].Mass) * pull;
            }
        }

        Move(state, hub, turning);
    }

    /// <summary>Changes velocity and rates of the hub, and with them the velocities of the nodes relative to it.</summary>
    private void Move(Span<double> state, Vec hub, Vec turning)
    {
        Turn turn = new(state.Slice(Mechanism.Attitude, 4));
        (Vec.Read(state[Mechanism.Speed..]) + turn.ToInertial(hub)).Write(state[Mechanism.Speed..]);
        (Vec.Read(state[Mechanism.Rates..]) + turning).Write(state[Mechanism.Rates..]);
        ReadOnlySpan<Link> links = mechanism.Links;
        for (int i = 0; i < links.Length; i++)
        {
            if (links[i].IsMoving)
            {
                _velocities[i] -= hub + turning.Cross(links[i].Motion.Position);
            }
        }
    }
}
