using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Springs;

/// <summary>One instant of a planar de-spin with spring cords.</summary>
public sealed class SpringCordState : PlanarState
{
    private readonly SpringCordDesign _design;
    private readonly SpringCordEquations.Glance _now;
    private readonly double[] _state;
    private readonly double _time;
    private readonly double _flight;
    private readonly double _cordAngle;

    // Rates of the weight per initial spin and in hub radii, along the radius to the cord's root and across it.
    private readonly double _radialRate;
    private readonly double _tangentialRate;

    internal SpringCordState(SpringCordDesign design, SpringCordRun.Moment moment, double flight)
    {
        _design = design;
        _state = moment.State;
        _time = moment.Time + flight;
        _flight = flight;
        _now = new SpringCordEquations(design.Proportions) { Hinging = moment.Hinging }.Look(_state);
        _cordAngle = moment.Hinging ? _state[SpringCordEquations.Swept] : 0;
        Phase = flight > 0 ? CordPhase.LetGo : _cordAngle > 0 ? CordPhase.Hinging : CordPhase.Unwinding;
        double inward = _state[SpringCordEquations.Inward];
        double across = _state[SpringCordEquations.Across];
        _radialRate = (across * _now.Cosine) - (inward * _now.Sine);
        _tangentialRate = (across * _now.Sine) + (inward * _now.Cosine);
        double unwound = moment.Hinging ? design.Proportions.Length : _state[SpringCordEquations.Swept];
        RootAngle = _state[SpringCordEquations.HubAngle] + unwound;
    }

    /// <inheritdoc/>
    public override Duration Time => Duration.FromSeconds(_time / Rate);

    /// <inheritdoc/>
    public override CordPhase Phase { get; }

    /// <inheritdoc/>
    public override RotationalSpeed Spin => RotationalSpeed.FromRadiansPerSecond(_state[SpringCordEquations.Spin] * Rate);

    /// <inheritdoc/>
    public override Angle HubAngle => Angle.FromRadians(Turn);

    /// <inheritdoc/>
    public override Length FreeLength => Length.FromMeters(_now.Free * Radius);

    /// <inheritdoc/>
    public override Length Stretch => Length.FromMeters(_state[SpringCordEquations.Stretch] * Radius);

    /// <inheritdoc/>
    public override Angle CordAngle => Angle.FromRadians(_cordAngle);

    /// <inheritdoc/>
    public override Force CordTension => Force.FromNewtons(Phase == CordPhase.LetGo ? 0 : _design.Tension(_now.Tension));

    /// <inheritdoc/>
    public override Speed WeightSpeed => Speed.FromMetersPerSecond(double.Hypot(RadialVelocity, TangentialVelocity));

    /// <inheritdoc/>
    public override DeploymentEnergy Energy
    {
        get
        {
            double spin = _state[SpringCordEquations.Spin];
            double stretch = _state[SpringCordEquations.Stretch];
            return new DeploymentEnergy(
                UnitsNet.Energy.FromJoules(0.5 * EnergyUnit * _design.Proportions.Inertia * spin * spin),
                UnitsNet.Energy.Zero,
                UnitsNet.Energy.FromJoules(0.5 * EnergyUnit * ((_radialRate * _radialRate) + (_tangentialRate * _tangentialRate))),
                UnitsNet.Energy.Zero,
                UnitsNet.Energy.FromJoules(0.5 * EnergyUnit * _design.Proportions.Spring * stretch * stretch),
                UnitsNet.Energy.Zero);
        }
    }

    /// <summary>What the damping of the cords has turned into heat.</summary>
    public Energy DampedEnergy => UnitsNet.Energy.FromJoules(EnergyUnit * _state[SpringCordEquations.Damped]);

    /// <inheritdoc/>
    public override AngularMomentum AngularMomentum
    {
        get
        {
            double hub = _design.Proportions.Inertia * _state[SpringCordEquations.Spin];
            double weights = (RadialPlace * _tangentialRate) - (TangentialPlace * _radialRate);
            return AngularMomentum.FromKilogramSquareMetersPerSecond(Mass * Radius * Radius * Rate * (hub + weights));
        }
    }

    internal override double RadialVelocity => _radialRate * Radius * Rate;

    internal override double TangentialVelocity => _tangentialRate * Radius * Rate;

    internal override double RootAngle { get; }

    internal override double Turn => _state[SpringCordEquations.HubAngle] + (_state[SpringCordEquations.Spin] * _flight);

    private double Radius => _design.Hub.Radius.Meters;

    private double Rate => _design.Hub.Spin.ToSi();

    private protected override PlanarDesign Moving => _design;

    private double EnergyUnit => Mass * Radius * Radius * Rate * Rate;

    private double Mass => _design.WeightCount * _design.WeightMass.ToSi();

    private double RadialPlace => 1 + (_now.Free * _now.Sine);

    private double TangentialPlace => -_now.Free * _now.Cosine;

    /// <inheritdoc/>
    public override Position<Inertial> WeightPosition(int weight) =>
        Turned(weight, RadialPlace + (_radialRate * _flight), TangentialPlace + (_tangentialRate * _flight));

    /// <inheritdoc/>
    public override Position<Inertial>? CordRoot(int weight)
    {
        Position<Inertial> root = Turned(weight, 1, 0);
        return Phase == CordPhase.LetGo ? null : root;
    }

    private Position<Inertial> Turned(int weight, double radial, double tangential) =>
        EvenSpacing.Place(weight, _design.WeightCount, RootAngle, radial * Radius, tangential * Radius);
}
