using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Springs;

/// <summary>One instant of a planar de-spin with spring cords.</summary>
/// <remarks>
/// Inertial axes as in <see cref="DespinState"/>. After let-go the weights are carried on in straight lines, and energy and
/// momentum of the departed weights and cords are kept as they were at let-go. Immutable, so safe to share between threads.
/// </remarks>
public sealed class SpringCordState
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
        Phase = flight > 0 ? DespinPhase.Released : _cordAngle > 0 ? DespinPhase.Hinging : DespinPhase.Unwinding;
        double inward = _state[SpringCordEquations.Inward];
        double across = _state[SpringCordEquations.Across];
        _radialRate = (across * _now.Cosine) - (inward * _now.Sine);
        _tangentialRate = (across * _now.Sine) + (inward * _now.Cosine);
        double unwound = moment.Hinging ? design.Proportions.Length : _state[SpringCordEquations.Swept];
        RootAngle = _state[SpringCordEquations.HubAngle] + unwound;
    }

    /// <summary>Time since release of the weights.</summary>
    public Duration Time => Duration.FromSeconds(_time / Rate);

    /// <summary>Unwinding, hinging, or released.</summary>
    public DespinPhase Phase { get; }

    /// <summary>Spin of the hub; negative if reversed.</summary>
    public RotationalSpeed Spin => RotationalSpeed.FromRadiansPerSecond(_state[SpringCordEquations.Spin] * Rate);

    /// <summary>How far the hub has turned since release of the weights; not reduced to one turn.</summary>
    public Angle HubAngle => Angle.FromRadians(Turn);

    /// <summary>Length of each cord's free part with its stretch; at let-go and after it, what it was at let-go.</summary>
    public Length FreeLength => Length.FromMeters(_now.Free * Radius);

    /// <summary>Stretch of each cord; at let-go and after it, what it was at let-go.</summary>
    public Length Stretch => Length.FromMeters(_state[SpringCordEquations.Stretch] * Radius);

    /// <summary>Cord angle from tangent; zero while unwinding, and the let-go angle after let-go.</summary>
    public Angle CordAngle => Angle.FromRadians(_cordAngle);

    /// <summary>Tension of each cord. Zero after let-go.</summary>
    public Force CordTension => Force.FromNewtons(Phase == DespinPhase.Released ? 0 : _design.Tension(_now.Tension));

    /// <summary>Speed of each weight.</summary>
    public Speed WeightSpeed => Speed.FromMetersPerSecond(double.Hypot(RadialVelocity, TangentialVelocity));

    /// <summary>Energy of hub, weights and cords.</summary>
    public SpringCordEnergy Energy
    {
        get
        {
            double spin = _state[SpringCordEquations.Spin];
            double stretch = _state[SpringCordEquations.Stretch];
            double unit = Mass * Radius * Radius * Rate * Rate;
            return new SpringCordEnergy(
                UnitsNet.Energy.FromJoules(0.5 * unit * _design.Proportions.Inertia * spin * spin),
                UnitsNet.Energy.FromJoules(0.5 * unit * ((_radialRate * _radialRate) + (_tangentialRate * _tangentialRate))),
                UnitsNet.Energy.FromJoules(0.5 * unit * _design.Proportions.Spring * stretch * stretch),
                UnitsNet.Energy.FromJoules(unit * _state[SpringCordEquations.Damped]));
        }
    }

    /// <summary>Angular momentum of hub and weights together, about the spin axis.</summary>
    public AngularMomentum AngularMomentum
    {
        get
        {
            double hub = _design.Proportions.Inertia * _state[SpringCordEquations.Spin];
            double weights = (RadialPlace * _tangentialRate) - (TangentialPlace * _radialRate);
            return AngularMomentum.FromKilogramSquareMetersPerSecond(Mass * Radius * Radius * Rate * (hub + weights));
        }
    }

    internal double RadialVelocity => _radialRate * Radius * Rate;

    internal double TangentialVelocity => _tangentialRate * Radius * Rate;

    /// <summary>Angle from the first inertial axis to the radius through the cord's root, at let-go if that is past.</summary>
    internal double RootAngle { get; }

    internal double Turn => _state[SpringCordEquations.HubAngle] + (_state[SpringCordEquations.Spin] * _flight);

    private double Radius => _design.Hub.Radius.Meters;

    private double Rate => _design.Hub.Spin.ToSi();

    private double Mass => _design.Weights * _design.WeightMass.ToSi();

    private double RadialPlace => 1 + (_now.Free * _now.Sine);

    private double TangentialPlace => -_now.Free * _now.Cosine;

    /// <summary>Where a weight is.</summary>
    /// <param name="weight">Which one, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such weight.</exception>
    public Position<Inertial> WeightPosition(int weight) =>
        Turned(weight, RadialPlace + (_radialRate * _flight), TangentialPlace + (_tangentialRate * _flight));

    /// <summary>Where a weight's cord meets the hub; null after let-go.</summary>
    /// <param name="weight">Which one, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such weight.</exception>
    public Position<Inertial>? CordRoot(int weight)
    {
        Position<Inertial> root = Turned(weight, 1, 0);
        return Phase == DespinPhase.Released ? null : root;
    }

    private Position<Inertial> Turned(int weight, double radial, double tangential) =>
        EvenSpacing.Place(weight, _design.Weights, RootAngle, radial * Radius, tangential * Radius);
}
