using System.Runtime.CompilerServices;
using Momentum.Frames;

namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The equations of motion of a hub and its cords. One object is one deployment under way: it knows the phase of every
/// cord, and computes the derivatives of the state for these phases.
/// </summary>
/// <remarks>
/// <para><b>Frames and reference point.</b> Everything inside is in body axes and measured from the body origin O, which
/// lies on the drums' axis a; only the hub's place, velocity and attitude are inertial. Own derivation throughout.</para>
/// <para><b>State.</b> Place X and velocity V of O (inertial), attitude quaternion (normalised where it is used), body
/// rates ω, then six numbers a node: coordinates and their rates in the chart of its phase, then four running sums: the
/// work of drum friction, cord damping and bearing, and the angular impulse about a bearing's axis.</para>
/// <para><b>Charts.</b> e is the drum's radial direction at the tangent point, t the trailing tangent (along which the cord
/// leaves), a the axis; the tangent point runs at the rate φ' = dφ/dt, so that e' = φ' t × (−1), t' = φ' e in body axes. What
/// places a node in each phase, and what is integrated there, the <see cref="IChart"/> of the phase tells.</para>
/// <para><b>Dynamics.</b> A link's length constraint g(W) = 0 has the gradient G and the velocity-dependent second
/// derivative B. The node feels −T P, the hub the wrench (T P, W × T P), with P = G, or with drum friction P = G +
/// μ R l/(R² + l²) e (l the tangent length): the cord resists being peeled off with a moment about the tangent point that
/// is μ T R once it is long, against its motion and going smoothly to zero where that is slow. T is the tension where G is the cord's
/// direction, and the tension but for the force of the groove's lips where it is not. Accelerations follow from one symmetric linear
/// system in the tensions, (G · mobility · P) T = B + G · (accelerations without tension): the <see cref="TensionSystem"/>.
/// The limit of vanishing free length is taken in <see cref="WindingStart"/>.</para>
/// </remarks>
internal sealed class Mechanism
{
    public const int Place = 0;
    public const int Attitude = 3;
    public const int Speed = 7;
    public const int Rates = 10;
    public const int FirstLink = 13;
    public const int Slots = 6;

    private readonly CordConstants[] _cords;
    private readonly Link[] _links;
    private readonly int[] _firstLink;

    private HubConstants _hub;
    private Vec _hubAcceleration;
    private Vec _hubTurning;
    private double _axialLoad;
    private Vec _omega;
    private Turn _turn;

    public Mechanism(HubConstants hub, CordConstants[] cords)
    {
        _hub = hub;
        _cords = [.. cords];
        _firstLink = new int[cords.Length + 1];
        int count = 0;
        for (int i = 0; i < cords.Length; i++)
        {
            _firstLink[i] = count;
            count += cords[i].Nodes;
        }

        _firstLink[cords.Length] = count;
        _links = new Link[count];
        Tensions = new TensionSystem(count);
        Riding = new RidingMass(hub);
        Dimension = FirstLink + (Slots * count) + 4;
        WindAll();
    }

    public int Dimension { get; }

    public int CordCount => _cords.Length;

    public int FrictionWork => Dimension - 4;

    public int DampingWork => Dimension - 3;

    public int BearingWork => Dimension - 2;

    public int AxialImpulse => Dimension - 1;

    /// <summary>Sign of the turning that Coulomb friction in the bearing works against; 0 while it holds the hub.</summary>
    public double BearingSign { get; private set; }

    public HubConstants Hub => _hub;

    public CordConstants CordOf(int cord) => _cords[cord];

    /// <summary>The links, cord by cord and each from the weight inward; only the changes of phase write to them.</summary>
    public Span<Link> Links => _links;

    /// <summary>The hub with all that rides on it.</summary>
    public RidingMass Riding { get; }

    /// <summary>The links of fixed length and their tensions, of the last evaluation.</summary>
    public TensionSystem Tensions { get; }

    /// <summary>Moment about a bearing's axis of all but the bearing itself, of the last evaluation.</summary>
    public double AxialLoad => _axialLoad;

    /// <summary>Rate about the drums' axis, of the last evaluation.</summary>
    public double AxialRate => _omega.Dot(_hub.Axis);

    /// <summary>Index of the innermost moving link of a cord; −1 if all of it is held or gone.</summary>
    public int InnerLink(int cord)
    {
        for (int i = _firstLink[cord + 1] - 1; i >= _firstLink[cord]; i--)
        {
            if (_links[i].IsMoving)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>Index of the link that ends in the weight.</summary>
    public int OuterLink(int cord) => _firstLink[cord];

    /// <summary>All links of a cord.</summary>
    public Span<Link> LinksOf(int cord) => _links.AsSpan(_firstLink[cord].._firstLink[cord + 1]);

    public bool HasLetGo(int cord) => _links[_firstLink[cord]].Phase.Chart == Chart.Gone;

    /// <summary>Whether <see cref="Become"/> can take these cords: as many, of as many pieces.</summary>
    public bool Fits(ReadOnlySpan<CordConstants> cords)
    {
        bool fits = cords.Length == _cords.Length;
        for (int i = 0; fits && i < cords.Length; i++)
        {
            fits = cords[i].Nodes == _cords[i].Nodes;
        }

        return fits;
    }

    /// <summary>Puts another hub and other cords in the place of its own, so that one serves many; everything is wound up then.</summary>
    public void Become(HubConstants hub, ReadOnlySpan<CordConstants> cords)
    {
        _hub = hub;
        cords.CopyTo(_cords);
        WindAll();
    }

    /// <summary>Back to the start: everything wound up and held.</summary>
    public void WindAll()
    {
        for (int cord = 0; cord < _cords.Length; cord++)
        {
            for (int node = 0; node < _cords[cord].Nodes; node++)
            {
                Wind(cord, node);
            }
        }

        GatherRiding();
    }

    /// <summary>Takes the phases of another mechanism made from the same constants.</summary>
    public void TakePhases(ReadOnlySpan<LinkPhase> phases, double bearingSign)
    {
        for (int i = 0; i < _links.Length; i++)
        {
            _links[i].Phase = phases[i];
            if (phases[i].Chart == Chart.Held)
            {
                _links[i].Motion.Position = _links[i].HeldAt;
            }
        }

        SetBearing(bearingSign);
    }

    /// <summary>Whether Coulomb friction of the bearing holds the hub, turns with it or against it.</summary>
    public void SetBearing(double sign)
    {
        BearingSign = sign;
        GatherRiding();
    }

    /// <summary>Adds up anew what rides on the hub, after a node has left it or come back.</summary>
    public void GatherRiding() =>
        Riding.Gather(_hub, _cords, _links, _hub.OnBearing && _hub.CoulombFriction > 0 && BearingSign == 0);

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
        (-turn.ToInertial(Riding.Centre)).Write(state[Place..]);
        (-turn.ToInertial(omega.Cross(Riding.Centre))).Write(state[Speed..]);
    }

    public void Derivatives(ReadOnlySpan<double> state, Span<double> derivatives)
    {
        Evaluate(state);

        Vec acceleration = _turn.ToInertial(_hubAcceleration);
        Vec.Read(state[Speed..]).Write(derivatives);
        Quaternion.Read(state[Attitude..]).Rate(_omega).Write(derivatives[Attitude..]);
        acceleration.Write(derivatives[Speed..]);
        _hubTurning.Write(derivatives[Rates..]);

        double frictionPower = 0;
        double dampingPower = 0;
        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            Span<double> to = derivatives.Slice(link.Offset, Slots);
            if (!link.IsMoving)
            {
                to.Clear();
                continue;
            }

            WriteRates(link, to);
            ref readonly LinkMotion motion = ref link.Motion;
            if (link.IsOnDrum)
            {
                frictionPower -= motion.Tension * (motion.Pull - motion.Gradient).Dot(motion.Velocity);
            }

            if (link.Phase.Pulls)
            {
                dampingPower -= link.Damper * motion.StretchRate * motion.StretchRate;
            }
        }

        derivatives[FrictionWork] = frictionPower;
        derivatives[DampingWork] = dampingPower;
        if (_hub.OnBearing)
        {
            double rate = _omega.Dot(_hub.Axis);
            double friction = BearingTorque(rate);
            derivatives[BearingWork] = friction * rate;
            derivatives[AxialImpulse] = friction + GravityTorque();
        }
        else
        {
            derivatives[BearingWork] = 0;
            derivatives[AxialImpulse] = 0;
        }
    }

    /// <summary>Everything about the present state: geometry, tensions, accelerations.</summary>
    public void Evaluate(ReadOnlySpan<double> state)
    {
        _turn = new Turn(state.Slice(Attitude, 4));
        _omega = Vec.Read(state[Rates..]);
        if (_hub.OnBearing)
        {
            _omega = _omega.Dot(_hub.Axis) * _hub.Axis;
        }

        LocateAll(state);
        ApplyKnownForces(_turn.ToBody(_hub.Gravity));
        SolveTensions();
        Accelerate();
    }

    /// <summary>Geometry and velocities of all links, from the hub outward, and which of them are of fixed length.</summary>
    public void LocateAll(ReadOnlySpan<double> state)
    {
        Tensions.Clear();
        for (int i = _links.Length - 1; i >= 0; i--)
        {
            ref Link link = ref _links[i];
            if (link.IsMoving)
            {
                Locate(ref link, state.Slice(link.Offset, Slots));
                if (link.IsConstrained)
                {
                    Tensions.Add(i);
                }
            }
        }
    }

    /// <summary>Writes a velocity of a node, relative to the body, into its six numbers.</summary>
    /// <param name="link">The link, located.</param>
    /// <param name="velocity">Of the node.</param>
    /// <param name="parent">Of the node that it hinges about; zero if that is the hub.</param>
    /// <param name="c">The six numbers.</param>
    public void SetVelocity(in Link link, Vec velocity, Vec parent, Span<double> c)
    {
        switch (link.Phase.Chart)
        {
            case Chart.Groove:
                GrooveChart.SetVelocity(link, _hub, velocity, c);
                break;
            case Chart.SmoothDrum:
                SmoothDrumChart.SetVelocity(link, _hub, velocity, c);
                break;
            case Chart.FreeDrum:
                FreeDrumChart.SetVelocity(link, _hub, velocity, c);
                break;
            case Chart.Hinge:
                HingeChart.SetVelocity(link, _hub, velocity - parent, c);
                break;
            case Chart.FreeHinge:
                FreeHingeChart.SetVelocity(link, _hub, velocity - parent, c);
                break;
        }
    }

    /// <summary>A link wound up, its node held.</summary>
    private void Wind(int cord, int node)
    {
        CordConstants c = _cords[cord];
        double segment = c.SegmentLength;
        double hanging = node == 0 ? c.FreeAtStart : 0;
        double angle = node == 0 ? 0 : ((node * segment) - c.FreeAtStart) / c.Radius;
        double jam = (c.JamsAt - c.FreeAtStart) / c.Radius;
        int index = _firstLink[cord] + node;
        ref Link link = ref _links[index];

        // The whole cord's stretch is in the outermost piece: the others then carry no waves along the cord, which
        // would need steps of microseconds and change nothing that is asked for.
        bool stretches = node == 0 && c.Stiffness > 0;
        double mass = c.NodeMass(node);
        link = new Link
        {
            Cord = cord,
            Offset = FirstLink + (Slots * index),
            Mass = mass,
            WeightShare = node == 0 ? c.Weight / mass : 0,
            Spring = stretches ? c.Stiffness / c.Length : 0,
            Damper = stretches ? 2 * c.DampingRatio * Math.Sqrt(c.Stiffness / c.Length * c.Weight) : 0,
            Phase = new LinkPhase
            {
                Chart = Chart.Held,
                Parent = -1,
                Pulls = stretches,
                Natural = c.Smooth ? Math.Min(segment, c.JamsAt) : segment,
                Winding = new DrumWinding
                {
                    Sense = c.Sense,
                    Angle = c.StartAngle + (c.Sense * angle),
                    Length = hanging,
                    End = Math.Min((segment - hanging) / c.Radius, Math.Max(jam - angle, 0)),
                },
            },
        };
        Drum.Face(ref link, _hub, 0);
        link.HeldAt = (c.Height * _hub.Axis) + (c.Radius * link.Motion.Radial) + (hanging * link.Motion.Trailing);
        link.Motion.Position = link.HeldAt;
    }

    private void Locate(ref Link link, ReadOnlySpan<double> c)
    {
        CordConstants cord = _cords[link.Cord];
        switch (link.Phase.Chart)
        {
            case Chart.Groove:
                GrooveChart.Locate(ref link, cord, _hub, c);
                return;
            case Chart.SmoothDrum:
                SmoothDrumChart.Locate(ref link, cord, _hub, c);
                return;
            case Chart.FreeDrum:
                FreeDrumChart.Locate(ref link, cord, _hub, c);
                return;
            case Chart.Hinge:
                HingeChart.Locate(ref link, cord, _hub, c);
                break;
            case Chart.FreeHinge:
                FreeHingeChart.Locate(ref link, cord, _hub, c);
                break;
        }

        ref LinkMotion motion = ref link.Motion;
        if (link.Phase.Parent < 0)
        {
            motion.Position = link.Phase.Hinge.Place + motion.Position;
        }
        else
        {
            ref readonly LinkMotion parent = ref _links[link.Phase.Parent].Motion;
            motion.Position = parent.Position + motion.Position;
            motion.Velocity = parent.Velocity + motion.Velocity;
        }
    }

    private void WriteRates(in Link link, Span<double> rates)
    {
        CordConstants cord = _cords[link.Cord];
        Vec velocity = link.Motion.Velocity;
        Vec acceleration = link.Motion.Acceleration;
        if (link.Phase.Parent >= 0)
        {
            ref readonly LinkMotion parent = ref _links[link.Phase.Parent].Motion;
            velocity -= parent.Velocity;
            acceleration -= parent.Acceleration;
        }

        switch (link.Phase.Chart)
        {
            case Chart.Groove:
                GrooveChart.Rates(link, cord, _hub, velocity, acceleration, rates);
                break;
            case Chart.SmoothDrum:
                SmoothDrumChart.Rates(link, cord, _hub, velocity, acceleration, rates);
                break;
            case Chart.FreeDrum:
                FreeDrumChart.Rates(link, cord, _hub, velocity, acceleration, rates);
                break;
            case Chart.Hinge:
                HingeChart.Rates(link, cord, _hub, velocity, acceleration, rates);
                break;
            case Chart.FreeHinge:
                FreeHingeChart.Rates(link, cord, _hub, velocity, acceleration, rates);
                break;
        }
    }

    /// <summary>Gravity, springs, bearing: all that acts but the tensions of links of fixed length.</summary>
    private void ApplyKnownForces(Vec gravity)
    {
        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            if (link.IsMoving)
            {
                link.Motion.Force = link.Mass * gravity;
            }
        }

        Vec force = Riding.Mass * gravity;
        Vec moment = Riding.Centre.Cross(force);
        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            if (!link.IsMoving || link.IsConstrained || link.Motion.Tension == 0)
            {
                continue;
            }

            Vec pull = link.Motion.Tension * link.Motion.Pull;
            link.Motion.Force -= pull;
            if (link.Phase.Parent < 0)
            {
                force += pull;
                moment += link.Motion.Position.Cross(pull);
            }
            else
            {
                _links[link.Phase.Parent].Motion.Force += pull;
            }
        }

        if (_hub.OnBearing)
        {
            _axialLoad = _hub.Axis.Dot(moment);
            _hubAcceleration = default;
            _hubTurning = Riding.TurningUnder(_axialLoad + BearingTorque(_omega.Dot(_hub.Axis)));
        }
        else
        {
            Riding.Accelerate(force, moment, _omega, out _hubAcceleration, out _hubTurning);
        }
    }

    /// <summary>Acceleration of a node relative to the body, less what tension brings.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vec RelativeAcceleration(in Link link) =>
        ((1 / link.Mass) * link.Motion.Force) - _hubAcceleration - _hubTurning.Cross(link.Motion.Position) -
        _omega.Cross(_omega.Cross(link.Motion.Position) + (2 * link.Motion.Velocity));

    private void SolveTensions()
    {
        TensionSystem system = Tensions;
        if (system.Count == 0)
        {
            return;
        }

        system.Fill(_links, Riding, true);
        ReadOnlySpan<int> constrained = system.Links;
        for (int row = 0; row < constrained.Length; row++)
        {
            ref readonly Link link = ref _links[constrained[row]];
            Vec acceleration = RelativeAcceleration(link);
            if (link.Phase.Parent >= 0)
            {
                acceleration -= RelativeAcceleration(_links[link.Phase.Parent]);
            }

            system.SetRight(row, link.Motion.Bias + link.Motion.Gradient.Dot(acceleration));
        }

        system.Solve();
    }

    /// <summary>Adds the effect of the tensions found to the hub and the nodes.</summary>
    private void Accelerate()
    {
        ReadOnlySpan<int> constrained = Tensions.Links;
        ReadOnlySpan<double> tensions = Tensions.Tensions;
        for (int k = 0; k < constrained.Length; k++)
        {
            ref Link link = ref _links[constrained[k]];
            double tension = tensions[k];
            Vec pull = tension * link.Motion.Pull;
            link.Motion.Tension = tension;
            link.Motion.Force -= pull;
            if (link.Phase.Parent < 0)
            {
                _hubAcceleration += tension * Tensions.HubAccelerations[k];
                _hubTurning += tension * Tensions.HubTurnings[k];
                _axialLoad += _hub.Axis.Dot(link.Motion.Position.Cross(pull));
            }
            else
            {
                _links[link.Phase.Parent].Motion.Force += pull;
            }
        }

        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            if (link.IsMoving)
            {
                link.Motion.Acceleration = RelativeAcceleration(link);
            }
        }
    }

    private double BearingTorque(double rate) => (-_hub.ViscousFriction * rate) - (_hub.CoulombFriction * BearingSign);

    /// <summary>Moment of gravity about the bearing's axis on all that hangs on it.</summary>
    private double GravityTorque()
    {
        Vec gravity = _turn.ToBody(_hub.Gravity);
        Vec moment = Riding.Centre.Cross(Riding.Mass * gravity);
        for (int i = 0; i < _links.Length; i++)
        {
            ref readonly Link link = ref _links[i];
            if (link.IsMoving)
            {
                moment += link.Motion.Position.Cross(link.Mass * gravity);
            }
        }

        return _hub.Axis.Dot(moment);
    }
}
