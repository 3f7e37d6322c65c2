using System.Globalization;

namespace Momentum.Tethers.Deployment;

/// <summary>How a cord passes from one phase to the next, and the impulses where a length is stopped.</summary>
internal sealed partial class Mechanism
{
    // What the faster of a starting node's two angles is given, in radians: the limit laws used there are exact to its square.
    private const double PeelAngle = 1e-8;

    // A winding that ends within this angle of a start, in radians, is ended before it: shortly after a start the numbers
    // of the starting node have few digits, which an end would pass on to the rest.
    private const double WaitAngle = 1e-6;

    // A wobbling hub may leave a cord a tension a little below zero at the very start. Down to this fraction of the
    // weight's centrifugal force the cord would be slack for the first milliradian only, by nanometres: it is held straight.
    private const double NegligibleSlack = 1e-3;

    private Vec[] _before = [];

    /// <summary>Back to the start: everything wound up and held.</summary>
    public void WindAll()
    {
        Array.Clear(_waiting);
        for (int i = 0; i < _cords.Length; i++)
        {
            Wind(i);
        }

        GatherHub();
    }

    /// <summary>All of a cord wound up, its weight held.</summary>
    private void Wind(int cord)
    {
        CordConstants c = _cords[cord];
        double segment = c.SegmentLength;
        for (int node = 0; node < c.Nodes; node++)
        {
            double hanging = node == 0 ? c.FreeAtStart : 0;
            double angle = node == 0 ? 0 : ((node * segment) - c.FreeAtStart) / c.Radius;
            double jam = (c.JamsAt - c.FreeAtStart) / c.Radius;
            int index = _firstLink[cord] + node;
            ref Link link = ref _links[index];
            link = default;
            link.Chart = LinkChart.Held;
            link.Cord = cord;
            link.Offset = FirstLink + (Slots * index);
            link.Mass = c.NodeMass(node);
            link.Parent = -1;
            link.Natural = c.Smooth ? Math.Min(segment, c.JamsAt) : segment;

            // The whole cord's stretch is in the outermost piece: the others then carry no waves along the cord, which
            // would need steps of microseconds and change nothing that is asked for.
            bool stretches = node == 0 && c.Stiffness > 0;
            link.Spring = stretches ? c.Stiffness / c.Length : 0;
            link.Damper = stretches ? 2 * c.DampingRatio * Math.Sqrt(c.Stiffness / c.Length * c.Weight) : 0;
            link.Pulls = stretches;
            link.Sense = c.Sense;
            link.BaseAngle = c.StartAngle + (c.Sense * angle);
            link.BaseLength = hanging;
            link.EndAngle = Math.Min((segment - hanging) / c.Radius, Math.Max(jam - angle, 0));
            Drum(ref link, c, 0);
            link.Position = (c.Height * _hub.Axis) + (c.Radius * link.Radial) + (hanging * link.Trailing);
        }
    }

    /// <summary>The hub with all that rides on it: held weights, wound cord.</summary>
    private void GatherHub()
    {
        double mass = _hub.Mass;
        Vec moment = mass * _hub.Centre;
        Tensor about = _hub.Inertia + Tensor.OfPoint(_hub.Mass, _hub.Centre);
        for (int i = 0; i < _links.Length; i++)
        {
            ref readonly Link link = ref _links[i];
            if (link.Chart == LinkChart.Held)
            {
                mass += link.Mass;
                moment += link.Mass * link.Position;
                about += Tensor.OfPoint(link.Mass, link.Position);
            }
        }

        for (int i = 0; i < _cords.Length; i++)
        {
            double end = _cords[i].EndMass;
            if (end > 0 && _links[_firstLink[i]].Chart != LinkChart.Released)
            {
                Vec at = EndPoint(i);
                mass += end;
                moment += end * at;
                about += Tensor.OfPoint(end, at);
            }
        }

        _mass = mass;
        _centre = (1 / mass) * moment;
        _aboutOrigin = about;
        _inertia = about + Tensor.OfPoint(-mass, _centre);
        _inverse = _inertia.Inverse();
        _axialInverse = _hub.OnBearing && _hub.CoulombFriction > 0 && BearingSign == 0 ? 0 : 1 / _hub.Axis.Dot(about * _hub.Axis);
    }

    /// <summary>Where the cord is fastened to the hub.</summary>
    private Vec EndPoint(int cord)
    {
        CordConstants c = _cords[cord];
        double angle = c.StartAngle + (c.Sense * (c.Length - c.FreeAtStart) / c.Radius);
        (double sin, double cos) = Math.SinCos(angle);
        return (c.Height * _hub.Axis) + (c.Radius * ((cos * _hub.First) + (sin * _hub.Second)));
    }

    /// <summary>Whether Coulomb friction of the bearing holds the hub, turns with it or against it.</summary>
    public void SetBearing(double sign)
    {
        BearingSign = sign;
        GatherHub();
    }

    /// <summary>Angle in radians between the hub's angular momentum at given rates and the nearer end of the axis.</summary>
    public double Nutation(Vec rates)
    {
        Vec momentum = _inertia * rates;
        return Math.Atan2(momentum.Cross(_hub.Axis).Length, Math.Abs(momentum.Dot(_hub.Axis)));
    }

    /// <summary>
    /// The rates with which the hub, with all that it holds, has a rate about the axis and an angular momentum at an angle to
    /// the axis; false if there are none, because a momentum there turns the hub the other way about the axis.
    /// </summary>
    /// <param name="spin">Rate about the axis, rad/s, of either sign.</param>
    /// <param name="nutation">Angle of the momentum to the nearer end of the axis, rad, 0 to π/2.</param>
    /// <param name="direction">Where its part across the axis points, rad from the first axis across towards the second.</param>
    /// <param name="rates">Receives the rates, body axes.</param>
    public bool Wobble(double spin, double nutation, double direction, out Vec rates)
    {
        (double sin, double cos) = Math.SinCos(direction);
        Vec across = (cos * _hub.First) + (sin * _hub.Second);
        rates = _inverse * ((Math.Sign(spin) * Math.Cos(nutation) * _hub.Axis) + (Math.Sin(nutation) * across));
        double size = spin / rates.Dot(_hub.Axis);
        rates = size * rates;
        return size > 0 && double.IsFinite(size);
    }

    /// <summary>Place and velocity of the body origin so that the whole has its centre of mass at rest at the inertial origin.</summary>
    public void StartAtRest(Span<double> state)
    {
        if (_hub.OnBearing)
        {
            state.Slice(Place, 3).Clear();
            state.Slice(Speed, 3).Clear();
            return;
        }

        Turn turn = new(state.Slice(Attitude, 4));
        Vec omega = Vec.Read(state[Rates..]);
        (-turn.ToInertial(_centre)).Write(state[Place..]);
        (-turn.ToInertial(omega.Cross(_centre))).Write(state[Speed..]);
    }

    /// <summary>Sets a weight free whose cord hangs free by some length; the others, at zero length, are peeled off.</summary>
    public void Free(int cord, Span<double> state)
    {
        int index = _firstLink[cord];
        ref Link link = ref _links[index];
        Span<double> c = state.Slice(link.Offset, Slots);
        c.Clear();
        link.Chart = link.Spring > 0 ? LinkChart.WoundFree : LinkChart.Wound;
        if (link.Chart == LinkChart.WoundFree)
        {
            c[1] = link.BaseLength;
        }

        GatherHub();
    }

    /// <summary>
    /// Whether a link is about to leave the drum at zero length, where the unwound angle's equation is 0/0; then
    /// <see cref="Peel"/> must be called before it is integrated.
    /// </summary>
    public bool MustPeel(int index, ReadOnlySpan<double> state)
    {
        ref readonly Link link = ref _links[index];
        return link.IsOnDrum && link.BaseLength == 0 && state[link.Offset] == 0;
    }

    /// <summary>
    /// Takes the limit of vanishing free length. There the node is free to leave along the drum's radius and along the
    /// axis; with the accelerations a_r and a_a relative to the hub, its involute needs R φ'² = a_r, and its angle out of
    /// the plane grows as β = a_a t/(2 R φ'). Every node that starts now is given 1e-8 rad of the angle that grows faster,
    /// everything else the short time that this takes; both are exact to the square of that angle.
    /// </summary>
    /// <param name="state">The state, moved on.</param>
    /// <param name="derivatives">Room to work in, as long as the state.</param>
    /// <param name="slack">Receives for each link whether it starts without tension.</param>
    /// <param name="ending">
    /// The link, or −1, that reaches its end within about that time. Then the nodes wait on the drum until just there: end
    /// its winding and call again, and they are given for what they waited.
    /// </param>
    /// <returns>The time that passed; zero if no node starts.</returns>
    /// <exception cref="DeploymentRefusedException">A node is not thrown outward.</exception>
    public double Peel(Span<double> state, Span<double> derivatives, Span<bool> slack, out int ending)
    {
        ending = -1;
        slack.Clear();
        double fastest = 0;
        bool loosened = true;
        while (loosened)
        {
            Evaluate(state);
            loosened = false;
            fastest = 0;
            for (int i = 0; i < _links.Length; i++)
            {
                if (!MustPeel(i, state))
                {
                    continue;
                }

                ref Link link = ref _links[i];
                double outward = link.Acceleration.Dot(link.Radial);
                if (!(outward > 0))
                {
                    throw new DeploymentRefusedException(string.Create(
                        CultureInfo.InvariantCulture,
                        $"The weight of cord {link.Cord + 1} is not thrown outward when it is set free: its acceleration away from the drum is {outward:G4} m/s². Spin the hub, or place the weight further from the spin axis."));
                }

                if (link.Chart == LinkChart.Wound && link.Tension < -NegligibleSlack * link.Mass * outward)
                {
                    link.Chart = LinkChart.WoundFree;
                    link.Pulls = false;
                    slack[i] = true;
                    loosened = true;
                }

                fastest = Math.Max(fastest, StartingRate(link, outward));
            }
        }

        if (fastest == 0)
        {
            return 0;
        }

        double time = WaitAngle / fastest;
        for (int i = 0; i < _links.Length; i++)
        {
            ref readonly Link link = ref _links[i];
            if (link.IsOnDrum && link.Unwinding > 0 && state[link.Offset] + (link.Unwinding * time) >= link.EndAngle && !MustPeel(i, state))
            {
                time = Math.Max(0, (link.EndAngle - state[link.Offset]) / link.Unwinding);
                ending = i;
            }
        }

        if (ending >= 0)
        {
            Wait(time, state, derivatives);
            state[_links[ending].Offset] = _links[ending].EndAngle;
            return time;
        }

        time = PeelAngle / fastest;
        Derivatives(state, derivatives);
        for (int i = 0; i < _links.Length; i++)
        {
            if (MustPeel(i, state))
            {
                StartingRates(i, derivatives.Slice(_links[i].Offset, Slots));
            }
        }

        for (int i = 0; i < state.Length; i++)
        {
            state[i] += _waiting[i] + (time * derivatives[i]);
        }

        Array.Clear(_waiting);
        return time;
    }

    /// <summary>
    /// How fast the angles of a node that starts grow, rad/s. A light lump under a cord that pulls out of the drum's plane goes
    /// out of it hundreds of times faster than along it.
    /// </summary>
    private double StartingRate(in Link link, double outward)
    {
        CordConstants cord = _cords[link.Cord];
        double unwinding = Math.Sqrt(outward / cord.Radius);
        bool swings = link.Chart == LinkChart.Wound && !cord.Smooth;
        return swings ? Math.Max(unwinding, Math.Abs(link.Acceleration.Dot(_hub.Axis)) / (2 * cord.Radius * unwinding)) : unwinding;
    }

    /// <summary>What of a node that starts grows with time, and how fast.</summary>
    private void StartingRates(int index, Span<double> rate)
    {
        ref readonly Link link = ref _links[index];
        double radius = _cords[link.Cord].Radius;
        double unwinding = Math.Sqrt(link.Acceleration.Dot(link.Radial) / radius);
        double axial = link.Acceleration.Dot(_hub.Axis);
        rate.Clear();
        rate[0] = unwinding;
        rate[3] = radius * unwinding * unwinding;
        if (link.Chart == LinkChart.Wound)
        {
            rate[1] = _cords[link.Cord].Smooth ? 0 : axial / (2 * radius * unwinding);
            rate[4] = axial;
        }
        else
        {
            rate[1] = radius * unwinding;
            rate[4] = link.Acceleration.Dot(link.Trailing);
            rate[5] = axial;
        }
    }

    /// <summary>A midpoint step of everything but the nodes about to start, whose share is kept until they do.</summary>
    private void Wait(double time, Span<double> state, Span<double> derivatives)
    {
        Derivatives(state, derivatives);
        ClearStarting(state, derivatives);
        for (int i = 0; i < state.Length; i++)
        {
            _midpoint[i] = state[i] + (0.5 * time * derivatives[i]);
        }

        Derivatives(_midpoint, derivatives);
        for (int i = 0; i < _links.Length; i++)
        {
            if (!MustPeel(i, state))
            {
                continue;
            }

            Span<double> share = derivatives.Slice(_links[i].Offset, Slots);
            StartingRates(i, share);
            for (int k = 0; k < Slots; k++)
            {
                _waiting[_links[i].Offset + k] += time * share[k];
            }
        }

        ClearStarting(state, derivatives);
        for (int i = 0; i < state.Length; i++)
        {
            state[i] += time * derivatives[i];
        }
    }

    private void ClearStarting(ReadOnlySpan<double> state, Span<double> derivatives)
    {
        for (int i = 0; i < _links.Length; i++)
        {
            if (MustPeel(i, state))
            {
                derivatives.Slice(_links[i].Offset, Slots).Clear();
            }
        }
    }

    /// <summary>The tangent point has reached the next lump of a heavy cord, the cord's end, or a jam.</summary>
    /// <returns>True if the cord is now hinged to the hub, false if the next lump has left the drum.</returns>
    public bool EndWinding(int index, Span<double> state)
    {
        Evaluate(state);
        RememberVelocities();
        ref Link link = ref _links[index];
        CordConstants cord = _cords[link.Cord];
        int next = index + 1;
        bool nextLeaves = next < _firstLink[link.Cord + 1] &&
            link.EndAngle * cord.Radius >= (cord.SegmentLength - link.BaseLength) * (1 - 1e-12);
        link.Anchor = (cord.Height * _hub.Axis) + (cord.Radius * link.Radial);
        link.AnchorRadial = link.Radial;
        link.AnchorTrailing = link.Trailing;
        if (!nextLeaves)
        {
            link.Natural = link.BaseLength + (cord.Radius * link.EndAngle);
        }

        (link.Position - link.Anchor).Write(state[link.Offset..]);
        link.Velocity.Write(state[(link.Offset + 3)..]);
        link.Chart = link.Chart == LinkChart.Wound ? LinkChart.Hinged : LinkChart.HingedFree;
        Stop(state);
        if (nextLeaves)
        {
            link.Parent = next;
            ref Link leaving = ref _links[next];
            leaving.Chart = leaving.Spring > 0 ? LinkChart.WoundFree : LinkChart.Wound;
            state.Slice(leaving.Offset, Slots).Clear();
            GatherHub();
        }

        return !nextLeaves;
    }

    /// <summary>The tension has fallen to zero.</summary>
    public void Slacken(int index, Span<double> state)
    {
        Evaluate(state);
        ref Link link = ref _links[index];
        Span<double> c = state.Slice(link.Offset, Slots);
        switch (link.Chart)
        {
            case LinkChart.Wound:
                {
                    Vec velocity = link.Velocity;
                    bool smooth = _cords[link.Cord].Smooth;
                    c[1] = smooth ? link.Free : link.Free * link.Cos;
                    c[2] = (smooth ? link.Natural : link.Free) * link.Sin;
                    link.Chart = LinkChart.WoundFree;
                    WriteVelocity(ref link, velocity, default, c);
                    break;
                }

            case LinkChart.Hinged:
                link.Chart = LinkChart.HingedFree;
                break;
        }

        link.Pulls = false;
    }

    /// <summary>A slack cord is at its full length again: an elastic one pulls, an inextensible one is stopped along its length.</summary>
    public void Tighten(int index, Span<double> state)
    {
        ref Link link = ref _links[index];
        if (link.Spring > 0)
        {
            link.Pulls = true;
            return;
        }

        Evaluate(state);
        RememberVelocities();
        Span<double> c = state.Slice(link.Offset, Slots);
        if (link.Chart == LinkChart.WoundFree)
        {
            c[1] = Math.Atan2(link.Sin, link.Cos);
            c[2] = 0;
            c[5] = 0;
            link.Chart = LinkChart.Wound;
        }
        else
        {
            link.Chart = LinkChart.Hinged;
        }

        Stop(state);
    }

    /// <summary>A hinged cord has come back onto the drum, from the side it left by or from the other.</summary>
    public void WrapAgain(int index, Span<double> state)
    {
        Evaluate(state);
        RememberVelocities();
        ref Link link = ref _links[index];
        CordConstants cord = _cords[link.Cord];
        Vec radial = link.AnchorRadial;
        if (link.Along.Dot(link.AnchorTrailing) < 0)
        {
            link.Sense = -link.Sense;
        }

        link.WrappedBack = true;
        link.EndAngle = link.Natural / cord.Radius;
        link.BaseLength = 0;
        link.BaseAngle = Math.Atan2(radial.Dot(_hub.Second), radial.Dot(_hub.First)) - (link.Sense * link.EndAngle);
        Drum(ref link, cord, link.EndAngle);
        Vec from = link.Position - link.Anchor;
        Span<double> c = state.Slice(link.Offset, Slots);
        c.Clear();
        c[0] = link.EndAngle;
        if (link.Chart == LinkChart.Hinged)
        {
            c[1] = Math.Atan2(from.Dot(_hub.Axis), from.Dot(link.Trailing));
            link.Chart = LinkChart.Wound;
        }
        else
        {
            c[1] = from.Dot(link.Trailing);
            c[2] = from.Dot(_hub.Axis);
            link.Chart = LinkChart.WoundFree;
        }

        Stop(state);
    }

    /// <summary>Takes a cord with all its nodes out of the motion, and returns what it carries away.</summary>
    public Balance Release(int cord, Span<double> state)
    {
        Evaluate(state);
        Balance carried = default;
        for (int i = _firstLink[cord]; i < _firstLink[cord + 1]; i++)
        {
            ref Link link = ref _links[i];
            Count(link, state, ref carried);
            link.Chart = LinkChart.Released;
            link.Tension = 0;
        }

        CountEnd(cord, state, ref carried);
        GatherHub();
        return carried;
    }

    /// <summary>Inertial position and velocity of a node.</summary>
    public (Vec Position, Vec Velocity) Track(int index, ReadOnlySpan<double> state)
    {
        ref readonly Link link = ref _links[index];
        return Track(link.Position, link.Chart == LinkChart.Held ? default : link.Velocity, state);
    }

    private static (Vec Position, Vec Velocity) Track(Vec position, Vec velocity, ReadOnlySpan<double> state)
    {
        Turn turn = new(state.Slice(Attitude, 4));
        Vec omega = Vec.Read(state[Rates..]);
        return (
            Vec.Read(state[Place..]) + turn.ToInertial(position),
            Vec.Read(state[Speed..]) + turn.ToInertial(omega.Cross(position) + velocity));
    }

    /// <summary>Angular momentum of the hub, with what rides on it, about its own centre of mass, inertial axes.</summary>
    public Vec HubMomentum(ReadOnlySpan<double> state) =>
        new Turn(state.Slice(Attitude, 4)).ToInertial(_inertia * Vec.Read(state[Rates..]));

    /// <summary>Momentum and energy of all that is not released; call after <see cref="Evaluate"/> of the same state.</summary>
    public Balance Weigh(ReadOnlySpan<double> state)
    {
        Balance balance = default;
        Turn turn = new(state.Slice(Attitude, 4));
        Vec omega = Vec.Read(state[Rates..]);
        (Vec place, Vec speed) = Track(_hub.Centre, default, state);
        Vec spin = _hub.Inertia * omega;
        balance.Linear = _hub.Mass * speed;
        balance.Angular = turn.ToInertial(spin) + place.Cross(_hub.Mass * speed);
        balance.HubRotation = 0.5 * omega.Dot(spin);
        balance.HubTranslation = 0.5 * _hub.Mass * speed.Square;
        balance.Gravity = -_hub.Mass * _hub.Gravity.Dot(place);
        for (int i = 0; i < _links.Length; i++)
        {
            ref readonly Link link = ref _links[i];
            if (link.Chart != LinkChart.Released)
            {
                Count(link, state, ref balance);
            }
        }

        for (int i = 0; i < _cords.Length; i++)
        {
            if (_links[_firstLink[i]].Chart != LinkChart.Released)
            {
                CountEnd(i, state, ref balance);
            }
        }

        return balance;
    }

    private void Count(in Link link, ReadOnlySpan<double> state, ref Balance balance)
    {
        (Vec position, Vec velocity) = Track(link.Position, link.Chart == LinkChart.Held ? default : link.Velocity, state);
        double kinetic = 0.5 * link.Mass * velocity.Square;
        balance.Linear += link.Mass * velocity;
        balance.Angular += position.Cross(link.Mass * velocity);
        balance.Gravity -= link.Mass * _hub.Gravity.Dot(position);
        double own = OwnShare(link);
        balance.Weights += own * kinetic;
        balance.Cords += (1 - own) * kinetic;
        if (link.Pulls && link.IsMoving)
        {
            balance.Elastic += 0.5 * link.Spring * link.Stretch * link.Stretch;
        }
    }

    private static int IndexOf(in Link link) => (link.Offset - FirstLink) / Slots;

    /// <summary>Fraction of a node's mass that is the weight.</summary>
    private double OwnShare(in Link link) =>
        IndexOf(link) == _firstLink[link.Cord] ? _cords[link.Cord].Weight / link.Mass : 0;

    private void CountEnd(int cord, ReadOnlySpan<double> state, ref Balance balance)
    {
        double mass = _cords[cord].EndMass;
        if (mass == 0)
        {
            return;
        }

        (Vec position, Vec velocity) = Track(EndPoint(cord), default, state);
        balance.Linear += mass * velocity;
        balance.Angular += position.Cross(mass * velocity);
        balance.Gravity -= mass * _hub.Gravity.Dot(position);
        balance.Cords += 0.5 * mass * velocity.Square;
    }

    private void RememberVelocities()
    {
        if (_before.Length == 0)
        {
            _before = new Vec[_links.Length];
        }

        for (int i = 0; i < _links.Length; i++)
        {
            _before[i] = _links[i].IsMoving ? _links[i].Velocity : default;
        }
    }

    /// <summary>
    /// The impulse that stops every inextensible link along its length, from the remembered velocities; writes hub and
    /// chart velocities after it. Momentum stays; the energy that goes is the ledger's to name.
    /// </summary>
    private void Stop(Span<double> state)
    {
        _turn = new Turn(state.Slice(Attitude, 4));
        _constrainedCount = 0;
        for (int i = _links.Length - 1; i >= 0; i--)
        {
            ref Link link = ref _links[i];
            if (link.IsMoving)
            {
                Locate(ref link, state.Slice(link.Offset, Slots));
                if (link.IsConstrained)
                {
                    _constrained[_constrainedCount++] = i;
                }
            }
        }

        int n = _constrainedCount;
        if (n > 0)
        {
            FillMatrix(false);
            for (int row = 0; row < n; row++)
            {
                int i = _constrained[row];
                ref readonly Link link = ref _links[i];
                Vec velocity = link.Parent < 0 ? _before[i] : _before[i] - _before[link.Parent];
                _system[(row * (n + 1)) + n] = link.Gradient.Dot(velocity);
            }

            SolveSystem(n);
            Vec hub = default;
            Vec turning = default;
            for (int row = 0; row < n; row++)
            {
                int i = _constrained[row];
                ref readonly Link link = ref _links[i];
                Vec pull = _tensions[row] * link.Gradient;
                _before[i] -= (1 / link.Mass) * pull;
                if (link.Parent < 0)
                {
                    hub += _tensions[row] * link.HubAcceleration;
                    turning += _tensions[row] * link.HubTurning;
                }
                else
                {
                    _before[link.Parent] += (1 / _links[link.Parent].Mass) * pull;
                }
            }

            (Vec.Read(state[Speed..]) + _turn.ToInertial(hub)).Write(state[Speed..]);
            (Vec.Read(state[Rates..]) + turning).Write(state[Rates..]);
            for (int i = 0; i < _links.Length; i++)
            {
                if (_links[i].IsMoving)
                {
                    _before[i] -= hub + turning.Cross(_links[i].Position);
                }
            }
        }

        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            if (link.IsMoving)
            {
                WriteVelocity(ref link, _before[i], link.Parent < 0 ? default : _before[link.Parent], state.Slice(link.Offset, Slots));
            }
        }
    }

    private void WriteVelocity(ref Link link, Vec velocity, Vec parent, Span<double> c)
    {
        switch (link.Chart)
        {
            case LinkChart.Wound:
                c[3] = velocity.Dot(link.Radial);
                c[4] = velocity.Dot(link.Across);
                break;
            case LinkChart.WoundFree:
                c[3] = velocity.Dot(link.Radial);
                c[4] = velocity.Dot(link.Trailing);
                c[5] = velocity.Dot(_hub.Axis);
                break;
            default:
                (velocity - parent).Write(c[3..]);
                break;
        }
    }
}
