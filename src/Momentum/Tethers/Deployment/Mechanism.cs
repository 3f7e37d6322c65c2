using System.Runtime.CompilerServices;

namespace Momentum.Tethers.Deployment;

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
/// leaves), a the axis; the tangent point runs at the rate φ' = dφ/dt, so that e' = φ' t × (−1), t' = φ' e in body axes.
/// A node on a grooved drum sits at W = h a + R e + d u with u = t cos β + a sin β and d = d0 + R φ: its relative
/// velocity is d φ' cos β e + R φ' (1 − cos β) u + (d β' + R φ' sin β) n, n = a cos β − t sin β; the rates that are
/// integrated are its components along e and n, so that no equation is divided by a vanishing length but that of φ. On a smooth drum the
/// wound part lies on a geodesic: cylinder unrolled, the cord is one straight line of length L at slope β, the tangent
/// length is l = d0 + R φ − L (1 − cos β), the height L sin β, and the velocity l φ' e + L β' n. An elastic or slack
/// cord leaves three coordinates: W = h a + R e + l t + z a. After the end of winding the node is placed by its
/// displacement from the hinge; an inextensible link uses the direction and the transverse velocity only, and these move as
/// they must whatever the length of the displacement that is integrated: length and velocity along it are exact, and what
/// the integration makes of them changes nothing.</para>
/// <para><b>Dynamics.</b> A link's length constraint g(W) = 0 has the gradient G and the velocity-dependent second
/// derivative B. The node feels −T P, the hub the wrench (T P, W × T P), with P = G, or with drum friction P = G +
/// μ R l/(R² + l²) e (l the tangent length): the cord resists being peeled off with a moment about the tangent point that
/// is μ T R once it is long, against its motion and going smoothly to zero where that is slow. On a smooth drum and about a hinge G = u and T is
/// the tension; on a grooved one G = u − R (1 − cos β)/(d cos β) e: the groove's lips guide the cord without work, and
/// what they carry besides the tension appears as a force of second order in β. Accelerations follow from one
/// symmetric linear system in the tensions, (G · mobility · P) T = B + G · (accelerations without tension), of as many
/// unknowns as there are inextensible links: the elimination of the accelerations from Newton's and Euler's equations.
/// The limit of vanishing free length is taken in <see cref="Peel"/>.</para>
/// </remarks>
internal sealed partial class Mechanism
{
    public const int Place = 0;
    public const int Attitude = 3;
    public const int Speed = 7;
    public const int Rates = 10;
    public const int FirstLink = 13;
    public const int Slots = 6;

    private readonly CordConstants[] _cords;
    private readonly Link[] _links;
    private readonly double[] _waiting;
    private readonly double[] _midpoint;
    private readonly int[] _firstLink;
    private readonly int[] _constrained;
    private readonly double[] _system;
    private readonly double[] _tensions;

    private HubConstants _hub;

    // Hub with all that rides on it.
    private double _mass;
    private Vec _centre;
    private Tensor _inertia;
    private Tensor _inverse;
    private Tensor _aboutOrigin;
    private double _axialInverse;

    private int _constrainedCount;
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
        _constrained = new int[count];
        _tensions = new double[count];
        _system = new double[count * (count + 1)];
        for (int i = 0; i < cords.Length; i++)
        {
            Wind(i);
        }

        Dimension = FirstLink + (Slots * count) + 4;
        _midpoint = new double[Dimension];
        _waiting = new double[Dimension];
        GatherHub();
    }

    public int Dimension { get; }

    public int CordCount => _cords.Length;

    public int FrictionWork => Dimension - 4;

    public int DampingWork => Dimension - 3;

    public int BearingWork => Dimension - 2;

    public int AxialImpulse => Dimension - 1;

    /// <summary>Sign of the turning that Coulomb friction in the bearing works against; 0 while it holds the hub.</summary>
    public double BearingSign { get; set; }

    public HubConstants Hub => _hub;

    public CordConstants CordOf(int cord) => _cords[cord];

    public ReadOnlySpan<Link> Links => _links;

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

    public int OuterLink(int cord) => _firstLink[cord];

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

    /// <summary>Copies the phases of another mechanism made from the same constants.</summary>
    public void TakePhases(ReadOnlySpan<Link> phases, double bearingSign)
    {
        phases.CopyTo(_links);
        BearingSign = bearingSign;
        GatherHub();
    }

    public void Derivatives(ReadOnlySpan<double> state, Span<double> derivatives)
    {
        Evaluate(state);

        Vec acceleration = _turn.ToInertial(_hubAcceleration);
        Vec.Read(state[Speed..]).Write(derivatives);
        Quaternion(state[Attitude..], _omega, derivatives[Attitude..]);
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

            WriteRates(ref link, to);
            if (link.IsOnDrum)
            {
                frictionPower -= link.Tension * (link.Pull - link.Gradient).Dot(link.Velocity);
            }

            if (link.Pulls)
            {
                dampingPower -= link.Damper * link.StretchRate * link.StretchRate;
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

        Vec gravity = _turn.ToBody(_hub.Gravity);
        ApplyKnownForces(gravity);
        SolveTensions();
        Accelerate();
    }

    private static void Quaternion(ReadOnlySpan<double> q, Vec omega, Span<double> rate)
    {
        double x = q[0];
        double y = q[1];
        double z = q[2];
        double w = q[3];
        rate[0] = 0.5 * ((w * omega.X) + (y * omega.Z) - (z * omega.Y));
        rate[1] = 0.5 * ((w * omega.Y) + (z * omega.X) - (x * omega.Z));
        rate[2] = 0.5 * ((w * omega.Z) + (x * omega.Y) - (y * omega.X));
        rate[3] = -0.5 * ((x * omega.X) + (y * omega.Y) + (z * omega.Z));
    }

    /// <summary>Position, relative velocity, gradient and bias of a link from its coordinates.</summary>
    private void Locate(ref Link link, ReadOnlySpan<double> c)
    {
        CordConstants cord = _cords[link.Cord];
        switch (link.Chart)
        {
            case LinkChart.Wound:
                {
                    Drum(ref link, cord, c[0]);
                    (double sin, double cos) = Math.SinCos(c[1]);

                    // 1 − cos β without its cancellation.
                    double lift = sin * sin / (1 + cos);
                    double radius = cord.Radius;
                    Vec axis = _hub.Axis;
                    link.Cos = cos;
                    link.Sin = sin;
                    link.Along = (cos * link.Trailing) + (sin * axis);
                    link.Across = (cos * axis) - (sin * link.Trailing);
                    Vec centre = (cord.Height * axis) + (radius * link.Radial);
                    double outward = c[3];
                    double across = c[4];
                    double arm;
                    double inward = 0;
                    if (cord.Smooth)
                    {
                        double whole = link.Natural;
                        arm = link.BaseLength + (radius * c[0]) - (whole * lift);
                        link.Free = arm;
                        link.Position = centre + (arm * link.Trailing) + (whole * sin * axis);
                        link.Unwinding = arm > 0 ? outward / arm : 0;
                        link.Swinging = across / whole;
                        link.Gradient = link.Along;
                        link.Bias = (outward * link.Unwinding * cos) + (across * link.Swinging);
                    }
                    else
                    {
                        double free = link.BaseLength + (radius * c[0]);
                        arm = free * cos;
                        link.Free = free;
                        link.Position = centre + (free * link.Along);
                        link.Unwinding = arm > 0 ? outward / arm : 0;
                        link.Swinging = free > 0 ? (across - (radius * link.Unwinding * sin)) / free : 0;
                        inward = radius * link.Unwinding * lift;
                        double guide = arm > 0 ? radius * lift / arm : 0;
                        link.Gradient = link.Along - (guide * link.Radial);
                        link.Bias = (outward * link.Unwinding * cos) + (free * link.Swinging * link.Swinging) +
                            (guide * link.Unwinding * ((radius * link.Unwinding * (cos - lift)) - (2 * free * link.Swinging * sin)));
                    }

                    link.Velocity = (outward * link.Radial) + (inward * link.Along) + (across * link.Across);
                    link.Pull = Rub(link, cord, arm, outward);
                    break;
                }

            case LinkChart.WoundFree:
                {
                    Drum(ref link, cord, c[0]);
                    double radius = cord.Radius;
                    double tangent = c[1];
                    double height = c[2];
                    Vec axis = _hub.Axis;
                    link.Free = tangent;
                    link.Position = ((cord.Height + height) * axis) + (radius * link.Radial) + (tangent * link.Trailing);
                    link.Unwinding = tangent > 0 ? c[3] / tangent : 0;
                    link.Velocity = (c[3] * link.Radial) + (c[4] * link.Trailing) + (c[5] * axis);
                    if (cord.Smooth)
                    {
                        double unrolled = tangent + (radius * (link.EndAngle - c[0]));
                        double path = Math.Sqrt((unrolled * unrolled) + (height * height));
                        link.Cos = unrolled / path;
                        link.Sin = height / path;
                        link.Along = (link.Cos * link.Trailing) + (link.Sin * axis);
                        link.Gradient = link.Along;
                        link.Stretch = path - link.Natural;
                    }
                    else
                    {
                        double path = Math.Sqrt((tangent * tangent) + (height * height));
                        link.Cos = path > 0 ? tangent / path : 1;
                        link.Sin = path > 0 ? height / path : 0;
                        link.Along = (link.Cos * link.Trailing) + (link.Sin * axis);
                        double guide = tangent > 0 ? radius * link.Sin * link.Sin / ((1 + link.Cos) * tangent) : 0;
                        link.Gradient = link.Along - (guide * link.Radial);
                        link.Stretch = path - link.BaseLength - (radius * c[0]);
                    }

                    link.Pull = Rub(link, cord, tangent, c[3]);
                    Pull(ref link, link.Gradient.Dot(link.Velocity));
                    break;
                }

            default:
                {
                    Vec from = Vec.Read(c);
                    Vec velocity = Vec.Read(c[3..]);
                    double length = from.Length;
                    link.Along = (1 / length) * from;
                    link.Gradient = link.Along;
                    link.Pull = link.Along;
                    double along = link.Along.Dot(velocity);
                    if (link.Chart == LinkChart.Hinged)
                    {
                        link.Elongation = length / link.Natural;
                        link.Elongating = along / link.Natural;
                        from = link.Natural * link.Along;
                        velocity -= along * link.Along;
                        length = link.Natural;
                        link.Bias = velocity.Square / length;
                    }
                    else
                    {
                        link.Stretch = length - link.Natural;
                        Pull(ref link, along);
                    }

                    link.Free = length;
                    if (link.Parent < 0)
                    {
                        link.Position = link.Anchor + from;
                        link.Velocity = velocity;
                    }
                    else
                    {
                        ref readonly Link parent = ref _links[link.Parent];
                        link.Position = parent.Position + from;
                        link.Velocity = parent.Velocity + velocity;
                    }

                    break;
                }
        }
    }

    /// <summary>Drum directions at the tangent point.</summary>
    private void Drum(ref Link link, CordConstants cord, double unwound)
    {
        (double sin, double cos) = Math.SinCos(link.BaseAngle + (link.Sense * unwound));
        link.Radial = (cos * _hub.First) + (sin * _hub.Second);
        link.Trailing = link.Sense * ((sin * _hub.First) - (cos * _hub.Second));
    }

    /// <summary>The gradient, inclined against the node's way off the drum by drum friction.</summary>
    private static Vec Rub(in Link link, CordConstants cord, double arm, double outward)
    {
        if (cord.Friction == 0)
        {
            return link.Gradient;
        }

        double radius = cord.Radius;
        double share = cord.Friction * radius * arm / ((radius * radius) + (arm * arm));
        double slow = cord.FrictionSpeed;
        return link.Gradient + (share * outward / Math.Sqrt((outward * outward) + (slow * slow)) * link.Radial);
    }

    private static void Pull(ref Link link, double rate)
    {
        link.StretchRate = rate;
        link.Tension = link.Pulls ? (link.Spring * link.Stretch) + (link.Damper * rate) : 0;
    }

    private void ApplyKnownForces(Vec gravity)
    {
        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            if (link.IsMoving)
            {
                link.Force = link.Mass * gravity;
            }
        }

        Vec force = _mass * gravity;
        Vec moment = _centre.Cross(force);
        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            if (!link.IsMoving || link.IsConstrained || link.Tension == 0)
            {
                continue;
            }

            Vec pull = link.Tension * link.Pull;
            link.Force -= pull;
            if (link.Parent < 0)
            {
                force += pull;
                moment += link.Position.Cross(pull);
            }
            else
            {
                _links[link.Parent].Force += pull;
            }
        }

        Vec omega = _omega;
        if (_hub.OnBearing)
        {
            _axialLoad = _hub.Axis.Dot(moment);
            double torque = _axialLoad + BearingTorque(omega.Dot(_hub.Axis));
            _hubAcceleration = default;
            _hubTurning = (torque * _axialInverse) * _hub.Axis;
        }
        else
        {
            _hubTurning = _inverse * (moment - _centre.Cross(force) - omega.Cross(_inertia * omega));
            _hubAcceleration = ((1 / _mass) * force) - _hubTurning.Cross(_centre) - omega.Cross(omega.Cross(_centre));
        }
    }

    /// <summary>Acceleration of O and of the rates for a force and its moment about O.</summary>
    private void Respond(Vec force, Vec moment, out Vec acceleration, out Vec turning)
    {
        if (_hub.OnBearing)
        {
            turning = (_hub.Axis.Dot(moment) * _axialInverse) * _hub.Axis;
            acceleration = default;
        }
        else
        {
            turning = _inverse * (moment - _centre.Cross(force));
            acceleration = ((1 / _mass) * force) - turning.Cross(_centre);
        }
    }

    /// <summary>Acceleration of a node relative to the body, less what tension brings.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vec RelativeAcceleration(in Link link) =>
        ((1 / link.Mass) * link.Force) - _hubAcceleration - _hubTurning.Cross(link.Position) -
        _omega.Cross(_omega.Cross(link.Position) + (2 * link.Velocity));

    private void SolveTensions()
    {
        int n = _constrainedCount;
        if (n == 0)
        {
            return;
        }

        FillMatrix(true);
        for (int row = 0; row < n; row++)
        {
            ref readonly Link link = ref _links[_constrained[row]];
            Vec acceleration = RelativeAcceleration(link);
            if (link.Parent >= 0)
            {
                acceleration -= RelativeAcceleration(_links[link.Parent]);
            }

            _system[(row * (n + 1)) + n] = link.Bias + link.Gradient.Dot(acceleration);
        }

        SolveSystem(n);
        for (int row = 0; row < n; row++)
        {
            _links[_constrained[row]].Tension = _tensions[row];
        }
    }

    /// <summary>How the length acceleration of each constrained link answers to unit tension in each.</summary>
    private void FillMatrix(bool withFriction)
    {
        int n = _constrainedCount;
        for (int k = 0; k < n; k++)
        {
            ref Link source = ref _links[_constrained[k]];
            if (source.Parent < 0)
            {
                Vec pull = withFriction ? source.Pull : source.Gradient;
                Respond(pull, source.Position.Cross(pull), out source.HubAcceleration, out source.HubTurning);
            }
        }

        for (int j = 0; j < n; j++)
        {
            int row = _constrained[j];
            ref readonly Link link = ref _links[row];
            for (int k = 0; k < n; k++)
            {
                int column = _constrained[k];
                ref readonly Link source = ref _links[column];
                Vec pull = withFriction ? source.Pull : source.Gradient;
                double sum = 0;
                if (row == column)
                {
                    sum += link.Gradient.Dot(pull) / link.Mass;
                }
                else if (row == source.Parent)
                {
                    sum -= link.Gradient.Dot(pull) / link.Mass;
                }

                if (link.Parent >= 0)
                {
                    double parentMass = _links[link.Parent].Mass;
                    if (link.Parent == column)
                    {
                        sum -= link.Gradient.Dot(pull) / parentMass;
                    }
                    else if (link.Parent == source.Parent)
                    {
                        sum += link.Gradient.Dot(pull) / parentMass;
                    }
                }

                if (source.Parent < 0)
                {
                    sum += link.Parent < 0
                        ? link.Gradient.Dot(source.HubAcceleration + source.HubTurning.Cross(link.Position))
                        : link.Gradient.Dot(source.HubTurning.Cross(link.Position - _links[link.Parent].Position));
                }

                _system[(j * (n + 1)) + k] = sum;
            }
        }
    }

    /// <summary>Gaussian elimination with row exchange; the last column is the right-hand side.</summary>
    private void SolveSystem(int n)
    {
        int width = n + 1;
        double[] m = _system;
        for (int column = 0; column < n; column++)
        {
            int pivot = column;
            for (int row = column + 1; row < n; row++)
            {
                if (Math.Abs(m[(row * width) + column]) > Math.Abs(m[(pivot * width) + column]))
                {
                    pivot = row;
                }
            }

            if (pivot != column)
            {
                for (int k = column; k < width; k++)
                {
                    (m[(column * width) + k], m[(pivot * width) + k]) = (m[(pivot * width) + k], m[(column * width) + k]);
                }
            }

            for (int row = column + 1; row < n; row++)
            {
                double factor = m[(row * width) + column] / m[(column * width) + column];
                for (int k = column + 1; k < width; k++)
                {
                    m[(row * width) + k] -= factor * m[(column * width) + k];
                }
            }
        }

        for (int row = n - 1; row >= 0; row--)
        {
            double sum = m[(row * width) + n];
            for (int k = row + 1; k < n; k++)
            {
                sum -= m[(row * width) + k] * _tensions[k];
            }

            _tensions[row] = sum / m[(row * width) + row];
        }
    }

    /// <summary>Adds the effect of the tensions found to the hub and the nodes.</summary>
    private void Accelerate()
    {
        for (int k = 0; k < _constrainedCount; k++)
        {
            ref Link link = ref _links[_constrained[k]];
            Vec pull = link.Tension * link.Pull;
            link.Force -= pull;
            if (link.Parent < 0)
            {
                _hubAcceleration += link.Tension * link.HubAcceleration;
                _hubTurning += link.Tension * link.HubTurning;
                _axialLoad += _hub.Axis.Dot(link.Position.Cross(pull));
            }
            else
            {
                _links[link.Parent].Force += pull;
            }
        }

        for (int i = 0; i < _links.Length; i++)
        {
            ref Link link = ref _links[i];
            if (link.IsMoving)
            {
                link.Acceleration = RelativeAcceleration(link);
            }
        }
    }

    private void WriteRates(ref Link link, Span<double> to)
    {
        double radius = _cords[link.Cord].Radius;
        double turning = link.Unwinding;
        switch (link.Chart)
        {
            case LinkChart.Wound:
                {
                    double outward = link.Velocity.Dot(link.Radial);
                    double along = link.Velocity.Dot(link.Along);
                    double across = link.Velocity.Dot(link.Across);
                    to[0] = turning;
                    to[1] = link.Swinging;
                    to[2] = 0;
                    to[3] = link.Acceleration.Dot(link.Radial) + (turning * ((across * link.Sin) - (along * link.Cos)));
                    to[4] = link.Acceleration.Dot(link.Across) - (outward * turning * link.Sin) - (along * link.Swinging);
                    to[5] = 0;
                    break;
                }

            case LinkChart.WoundFree:
                {
                    double outward = link.Velocity.Dot(link.Radial);
                    double trailing = link.Velocity.Dot(link.Trailing);
                    to[0] = turning;
                    to[1] = trailing + (radius * turning);
                    to[2] = link.Velocity.Dot(_hub.Axis);
                    to[3] = link.Acceleration.Dot(link.Radial) - (trailing * turning);
                    to[4] = link.Acceleration.Dot(link.Trailing) + (outward * turning);
                    to[5] = link.Acceleration.Dot(_hub.Axis);
                    break;
                }

            default:
                {
                    Vec velocity = link.Parent < 0 ? link.Velocity : link.Velocity - _links[link.Parent].Velocity;
                    Vec acceleration = link.Parent < 0 ? link.Acceleration : link.Acceleration - _links[link.Parent].Acceleration;
                    if (link.Chart == LinkChart.Hinged)
                    {
                        // What direction and transverse velocity of the numbers must do, at whatever length they have come to have.
                        acceleration += link.Elongating * velocity;
                        velocity = link.Elongation * velocity;
                    }

                    velocity.Write(to);
                    acceleration.Write(to[3..]);
                    break;
                }
        }
    }

    private double BearingTorque(double rate) => (-_hub.ViscousFriction * rate) - (_hub.CoulombFriction * BearingSign);

    /// <summary>Moment of gravity about the bearing's axis on all that hangs on it.</summary>
    private double GravityTorque()
    {
        Vec gravity = _turn.ToBody(_hub.Gravity);
        Vec moment = _centre.Cross(_mass * gravity);
        for (int i = 0; i < _links.Length; i++)
        {
            ref readonly Link link = ref _links[i];
            if (link.IsMoving)
            {
                moment += link.Position.Cross(link.Mass * gravity);
            }
        }

        return _hub.Axis.Dot(moment);
    }
}
