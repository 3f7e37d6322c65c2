using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>One instant of a planar de-spin whose cords do not stretch.</summary>
public sealed class DespinState : PlanarState
{
    private readonly DespinDesign _design;
    private readonly double _time;
    private readonly double _flight;
    private readonly double _coordinate;
    private readonly double _turn;
    private readonly double _spin;
    private readonly double _free;
    private readonly double _tension;
    private readonly double _hubTension;
    private readonly double _rootAngle;
    private readonly double _radialPosition;
    private readonly double _tangentialPosition;
    private readonly double _radialVelocity;
    private readonly double _tangentialVelocity;
    private readonly double _turning;

    // From the two rates alone; energy and momentum are then summed from positions and velocities of the parts, so that
    // their constancy checks the rates.
    internal DespinState(
        DespinDesign design, CordPhase phase, double time, double flight, double coordinate, double turn, double spin, double turning)
    {
        _design = design;
        Phase = phase;
        _time = time;
        _flight = flight;
        _coordinate = coordinate;
        _turn = turn;
        _spin = spin;
        PlanarCords cords = design.Cords;
        _free = cords.FreeLength(coordinate);
        _turning = turning;
        if (phase != CordPhase.LetGo)
        {
            _tension = cords.Tension(coordinate, spin, turning, out double atHub) / design.WeightCount;
            _hubTension = atHub / design.WeightCount;
        }

        // The angle from the first inertial axis to the radius through the tangent point or the cord's end point, at the
        // coordinate; the hub may have turned on since let-go.
        _rootAngle = turn - (spin * flight) + Math.Min(coordinate, 0) - cords.Start;
        double sine = coordinate > 0 ? Math.Sin(coordinate) : 0;
        double cosine = coordinate > 0 ? Math.Cos(coordinate) : 1;
        _radialPosition = cords.Radius + (_free * sine);
        _tangentialPosition = -_free * cosine;
        _radialVelocity = _free * _turning * cosine;
        _tangentialVelocity = (cords.Radius * spin) + (_free * _turning * sine);
    }

    /// <inheritdoc/>
    public override Duration Time => Duration.FromSeconds(_time);

    /// <inheritdoc/>
    public override CordPhase Phase { get; }

    /// <inheritdoc/>
    public override RotationalSpeed Spin => RotationalSpeed.FromRadiansPerSecond(_spin);

    /// <inheritdoc/>
    public override Angle HubAngle => Angle.FromRadians(_turn);

    /// <inheritdoc/>
    public override Length FreeLength => Length.FromMeters(_free);

    /// <inheritdoc/>
    public override Angle CordAngle => Angle.FromRadians(Math.Max(_coordinate, 0));

    /// <inheritdoc/>
    public override Force CordTension => Force.FromNewtons(_tension);

    /// <summary>Tension of each cord where it meets the hub. Zero after let-go.</summary>
    public Force CordTensionAtHub => Force.FromNewtons(_hubTension);

    /// <inheritdoc/>
    public override Speed WeightSpeed => Speed.FromMetersPerSecond(Math.Sqrt(
        (_radialVelocity * _radialVelocity) + (_tangentialVelocity * _tangentialVelocity)));

    /// <inheritdoc/>
    public override DeploymentEnergy Energy
    {
        get
        {
            double density = _design.Cords.Density;
            double rim = _design.Hub.Radius.Meters * _spin;
            double sine = _coordinate > 0 ? Math.Sin(_coordinate) : 0;
            double swing = _free * _turning;
            double hub = 0.5 * _design.Hub.SpinInertia.ToSi() * _spin * _spin;
            double weights = 0.5 * _design.Cords.Weights *
                ((_radialVelocity * _radialVelocity) + (_tangentialVelocity * _tangentialVelocity));
            double wound = 0.5 * density * (_design.CordLength.Meters - _free) * rim * rim;
            double free = 0.5 * density * _free * ((rim * rim) + (rim * swing * sine) + (swing * swing / 3));
            return new DeploymentEnergy(
                UnitsNet.Energy.FromJoules(hub),
                UnitsNet.Energy.Zero,
                UnitsNet.Energy.FromJoules(weights),
                UnitsNet.Energy.FromJoules(wound + free),
                UnitsNet.Energy.Zero,
                UnitsNet.Energy.Zero);
        }
    }

    /// <inheritdoc/>
    public override AngularMomentum AngularMomentum
    {
        get
        {
            double density = _design.Cords.Density;
            double radius = _design.Hub.Radius.Meters;
            double sine = _coordinate > 0 ? Math.Sin(_coordinate) : 0;
            double hub = _design.Hub.SpinInertia.ToSi() * _spin;
            double weights = _design.Cords.Weights *
                ((_radialPosition * _tangentialVelocity) - (_tangentialPosition * _radialVelocity));
            double wound = density * (_design.CordLength.Meters - _free) * radius * radius * _spin;
            double free = density * _free *
                ((radius * radius * _spin) + (radius * _free * (_spin + _turning) * sine / 2) + (_free * _free * _turning / 3));
            return AngularMomentum.FromKilogramSquareMetersPerSecond(hub + weights + wound + free);
        }
    }

    private protected override PlanarDesign Moving => _design;

    internal override double RadialVelocity => _radialVelocity;

    internal override double TangentialVelocity => _tangentialVelocity;

    internal override double RootAngle => _rootAngle;

    internal override double Turn => _turn;

    /// <inheritdoc/>
    public override Position<Inertial> WeightPosition(int weight) => Turned(
        weight,
        _radialPosition + (_radialVelocity * _flight),
        _tangentialPosition + (_tangentialVelocity * _flight));

    /// <inheritdoc/>
    public override Position<Inertial>? CordRoot(int weight)
    {
        Position<Inertial> root = Turned(weight, _design.Hub.Radius.Meters, 0);
        return Phase == CordPhase.LetGo ? null : root;
    }

    private Position<Inertial> Turned(int weight, double radial, double tangential) =>
        EvenSpacing.Place(weight, _design.WeightCount, _rootAngle, radial, tangential);
}
