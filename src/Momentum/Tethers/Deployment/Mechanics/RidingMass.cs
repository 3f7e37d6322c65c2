namespace Momentum.Tethers.Deployment.Mechanics;

/// <summary>
/// The hub with all that rides on it, held weights and wound cord: its mass, centre and inertia, and how it answers to a force.
/// Body axes; moments about the body origin.
/// </summary>
internal sealed class RidingMass
{
    private HubConstants _hub;
    private double _mass;
    private Vec _centre;
    private Tensor _inertia;
    private Tensor _inverse;
    private double _axialInverse;

    public RidingMass(HubConstants hub) => _hub = hub;

    public double Mass => _mass;

    public Vec Centre => _centre;

    /// <summary>Adds up the hub, the nodes that it holds, and what of each cord lies at its end on the hub.</summary>
    /// <param name="hub">The hub.</param>
    /// <param name="cords">The cords.</param>
    /// <param name="links">Their links, cord by cord.</param>
    /// <param name="bearingHolds">Whether the bearing's dry friction holds the hub.</param>
    public void Gather(HubConstants hub, ReadOnlySpan<CordConstants> cords, ReadOnlySpan<Link> links, bool bearingHolds)
    {
        _hub = hub;
        double mass = hub.Mass;
        Vec moment = mass * hub.Centre;
        Tensor about = hub.Inertia + Tensor.OfPoint(hub.Mass, hub.Centre);
        foreach (ref readonly Link link in links)
        {
            if (link.Phase.Chart == Chart.Held)
            {
                mass += link.Mass;
                moment += link.Mass * link.HeldAt;
                about += Tensor.OfPoint(link.Mass, link.HeldAt);
            }
        }

        int outer = 0;
        foreach (CordConstants cord in cords)
        {
            double end = cord.EndMass;
            if (end > 0 && links[outer].Phase.Chart != Chart.Gone)
            {
                Vec at = EndPlace(cord);
                mass += end;
                moment += end * at;
                about += Tensor.OfPoint(end, at);
            }

            outer += cord.Nodes;
        }

        _mass = mass;
        _centre = (1 / mass) * moment;
        _inertia = about + Tensor.OfPoint(-mass, _centre);
        _inverse = _inertia.Inverse();
        _axialInverse = bearingHolds ? 0 : 1 / hub.Axis.Dot(about * hub.Axis);
    }

    /// <summary>Where a cord is fastened to the hub.</summary>
    public Vec EndPlace(CordConstants cord)
    {
        double angle = cord.StartAngle + (cord.Sense * (cord.Length - cord.FreeAtStart) / cord.Radius);
        (double sin, double cos) = Math.SinCos(angle);
        return (cord.Height * _hub.Axis) + (cord.Radius * ((cos * _hub.First) + (sin * _hub.Second)));
    }

    /// <summary>What a force and its moment change of the acceleration of the body origin and of the rates.</summary>
    public void Respond(Vec force, Vec moment, out Vec acceleration, out Vec turning)
    {
        if (_hub.OnBearing)
        {
            turning = TurningUnder(_hub.Axis.Dot(moment));
            acceleration = default;
        }
        else
        {
            turning = _inverse * (moment - _centre.Cross(force));
            acceleration = ((1 / _mass) * force) - turning.Cross(_centre);
        }
    }

    /// <summary>Acceleration of the rates under a torque about the bearing's axis.</summary>
    public Vec TurningUnder(double torque) => (torque * _axialInverse) * _hub.Axis;

    /// <summary>Acceleration of the body origin and of the rates under a force and its moment, free of a bearing, at the rates that there are.</summary>
    public void Accelerate(Vec force, Vec moment, Vec omega, out Vec acceleration, out Vec turning)
    {
        turning = _inverse * (moment - _centre.Cross(force) - omega.Cross(_inertia * omega));
        acceleration = ((1 / _mass) * force) - turning.Cross(_centre) - omega.Cross(omega.Cross(_centre));
    }

    /// <summary>Angular momentum about its centre of mass, body axes.</summary>
    public Vec Momentum(Vec omega) => _inertia * omega;

    /// <summary>Angle in radians between its angular momentum at given rates and the nearer end of the axis.</summary>
    public double Nutation(Vec rates)
    {
        Vec momentum = Momentum(rates);
        return Math.Atan2(momentum.Cross(_hub.Axis).Length, Math.Abs(momentum.Dot(_hub.Axis)));
    }

    /// <summary>
    /// The rates with which it has a rate about the axis and an angular momentum at an angle to the axis; false if there are none,
    /// because a momentum there turns it the other way about the axis.
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
}
