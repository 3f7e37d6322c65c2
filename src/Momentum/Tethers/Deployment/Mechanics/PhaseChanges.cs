namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>How a cord passes from one phase to the next, and what of the state changes with it.</summary>
internal sealed class PhaseChanges(Mechanism mechanism)
{
    private readonly Impulse _impulse = new(mechanism);

    /// <summary>Sets a weight free: its cord, of whatever length hangs, begins to unwind.</summary>
    public void Release(int cord, Span<double> state)
    {
        ref Link link = ref mechanism.Links[mechanism.OuterLink(cord)];
        Unwind(ref link, state);
        if (link.Phase.Chart == Chart.FreeDrum)
        {
            state[link.Offset + 1] = link.Phase.Winding.Length;
        }
    }

    /// <summary>The tangent point has reached the next lump of a heavy cord, the cord's end, or a jam.</summary>
    /// <returns>True if the cord is now hinged to the hub, false if the next lump has left the drum.</returns>
    public bool EndWinding(int index, Span<double> state)
    {
        mechanism.Evaluate(state);
        _impulse.Remember();
        ref Link link = ref mechanism.Links[index];
        CordConstants cord = mechanism.CordOf(link.Cord);
        ref readonly DrumWinding winding = ref link.Phase.Winding;
        int next = index + 1;
        bool nextLeaves = next < mechanism.OuterLink(link.Cord) + cord.Nodes &&
            winding.End * cord.Radius >= (cord.SegmentLength - winding.Length) * (1 - 1e-12);
        link.Phase.Hinge = new HubHinge
        {
            Place = (cord.Height * mechanism.Hub.Axis) + (cord.Radius * link.Motion.Radial),
            Radial = link.Motion.Radial,
            Trailing = link.Motion.Trailing,
        };
        if (!nextLeaves)
        {
            link.Phase.Natural = winding.Length + (cord.Radius * winding.End);
        }

        (link.Motion.Position - link.Phase.Hinge.Place).Write(state[link.Offset..]);
        link.Motion.Velocity.Write(state[(link.Offset + 3)..]);
        link.Phase.Chart = link.IsConstrained ? Chart.Hinge : Chart.FreeHinge;
        _impulse.Stop(state);
        if (nextLeaves)
        {
            link.Phase.Parent = next;
            Unwind(ref mechanism.Links[next], state);
        }

        return !nextLeaves;
    }

    /// <summary>The tension has fallen to zero.</summary>
    public void Slacken(int index, Span<double> state)
    {
        mechanism.Evaluate(state);
        ref Link link = ref mechanism.Links[index];
        Span<double> c = state.Slice(link.Offset, Mechanism.Slots);
        ref readonly LinkMotion motion = ref link.Motion;
        switch (link.Phase.Chart)
        {
            case Chart.Groove:
                c[1] = motion.Free * motion.Cos;
                c[2] = motion.Free * motion.Sin;
                Loosen(ref link, c);
                break;
            case Chart.SmoothDrum:
                c[1] = motion.Free;
                c[2] = link.Phase.Natural * motion.Sin;
                Loosen(ref link, c);
                break;
            case Chart.Hinge:
                link.Phase.Chart = Chart.FreeHinge;
                break;
        }

        link.Phase.Pulls = false;
    }

    /// <summary>A slack cord is at its full length again: an elastic one pulls, an inextensible one is stopped along its length.</summary>
    public void Tighten(int index, Span<double> state)
    {
        ref Link link = ref mechanism.Links[index];
        if (link.Spring > 0)
        {
            link.Phase.Pulls = true;
            return;
        }

        mechanism.Evaluate(state);
        _impulse.Remember();
        Span<double> c = state.Slice(link.Offset, Mechanism.Slots);
        if (link.Phase.Chart == Chart.FreeDrum)
        {
            c[1] = Math.Atan2(link.Motion.Sin, link.Motion.Cos);
            c[2] = 0;
            c[5] = 0;
            link.Phase.Chart = Drum.TautChart(mechanism.CordOf(link.Cord));
        }
        else
        {
            link.Phase.Chart = Chart.Hinge;
        }

        _impulse.Stop(state);
    }

    /// <summary>A hinged cord has come back onto the drum, from the side it left by or from the other.</summary>
    public void WrapAgain(int index, Span<double> state)
    {
        mechanism.Evaluate(state);
        _impulse.Remember();
        ref Link link = ref mechanism.Links[index];
        HubConstants hub = mechanism.Hub;
        CordConstants cord = mechanism.CordOf(link.Cord);
        ref readonly HubHinge hinge = ref link.Phase.Hinge;
        double sense = link.Motion.Along.Dot(hinge.Trailing) < 0 ? -link.Phase.Winding.Sense : link.Phase.Winding.Sense;
        double end = link.Phase.Natural / cord.Radius;
        link.Phase.Winding = new DrumWinding
        {
            Sense = sense,
            Angle = Math.Atan2(hinge.Radial.Dot(hub.Second), hinge.Radial.Dot(hub.First)) - (sense * end),
            Length = 0,
            End = end,
            IsBack = true,
        };
        Drum.Face(ref link, hub, end);
        Vec from = link.Motion.Position - hinge.Place;
        Span<double> c = state.Slice(link.Offset, Mechanism.Slots);
        c.Clear();
        c[0] = end;
        double trailing = from.Dot(link.Motion.Trailing);
        double height = from.Dot(hub.Axis);
        if (link.Phase.Chart == Chart.Hinge)
        {
            c[1] = Math.Atan2(height, trailing);
            link.Phase.Chart = Drum.TautChart(cord);
        }
        else
        {
            c[1] = trailing;
            c[2] = height;
            link.Phase.Chart = Chart.FreeDrum;
        }

        _impulse.Stop(state);
    }

    /// <summary>
    /// A lump that has left the drum is thrown back onto it: it comes to rest there, and is about to start again. Stopping it
    /// first, and then the links of fixed length, is stopping them at once: the second leaves the state within reach of the first.
    /// </summary>
    public void Land(int index, Span<double> state)
    {
        mechanism.Evaluate(state);
        _impulse.Remember();
        ref Link lump = ref mechanism.Links[index];
        ref Link outer = ref mechanism.Links[index - 1];
        lump.Phase.Chart = Chart.Held;
        lump.Motion.Position = lump.HeldAt;
        outer.Phase.Parent = -1;
        mechanism.GatherRiding();
        _impulse.Catch(index, state);
        _impulse.Stop(state);
        outer.Phase.Parent = index;
        Unwind(ref lump, state);
    }

    /// <summary>Takes a cord with all its nodes out of the motion, and returns what it carries away.</summary>
    public Balance LetGo(int cord, Span<double> state)
    {
        mechanism.Evaluate(state);
        Balance carried = Weighing.OfCord(mechanism, cord, state);
        foreach (ref Link link in mechanism.LinksOf(cord))
        {
            link.Phase.Chart = Chart.Gone;
            link.Motion.Tension = 0;
        }

        mechanism.GatherRiding();
        return carried;
    }

    /// <summary>A node that the hub held begins to leave the drum.</summary>
    private void Unwind(ref Link link, Span<double> state)
    {
        link.Phase.Chart = link.Spring > 0 ? Chart.FreeDrum : Drum.TautChart(mechanism.CordOf(link.Cord));
        state.Slice(link.Offset, Mechanism.Slots).Clear();
        mechanism.GatherRiding();
    }

    /// <summary>Gives a taut link on the drum its free length, with the velocity that it has.</summary>
    private void Loosen(ref Link link, Span<double> c)
    {
        link.Phase.Chart = Chart.FreeDrum;
        mechanism.SetVelocity(link, link.Motion.Velocity, default, c);
    }
}
