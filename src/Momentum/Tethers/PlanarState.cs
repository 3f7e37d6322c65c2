using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>One instant of a planar de-spin, whatever its cords.</summary>
/// <remarks>
/// Inertial axes have their origin at the hub's centre of mass, their third axis along the spin axis in the sense of the
/// initial spin, and their first axis through where the first weight was stowed at release. After let-go the weights are
/// carried on in straight lines from the hub at rest, and energy and momentum of the departed weights and cords are kept as
/// they were at let-go. Immutable, so safe to share between threads.
/// </remarks>
public abstract class PlanarState : IDespinState
{
    private protected PlanarState()
    {
    }

    /// <summary>Time since release of the weights.</summary>
    public abstract Duration Time { get; }

    /// <summary>Unwinding, hinging, or let go.</summary>
    public abstract CordPhase Phase { get; }

    /// <summary>Spin of the hub; negative if reversed.</summary>
    public abstract RotationalSpeed Spin { get; }

    /// <summary>How far the hub has turned since release of the weights; not reduced to one turn.</summary>
    public abstract Angle HubAngle { get; }

    /// <summary>Free length of each cord, with its stretch; at let-go and after it, what was free at let-go.</summary>
    public abstract Length FreeLength { get; }

    /// <summary>Stretch of each cord, zero if it has none; at let-go and after it, what it was at let-go.</summary>
    public virtual Length Stretch => Length.Zero;

    /// <summary>Cord angle from tangent; zero while unwinding, and the let-go angle after let-go.</summary>
    public abstract Angle CordAngle { get; }

    /// <summary>Tension of each cord; with massive cords the largest anywhere along it. Zero after let-go.</summary>
    public abstract Force CordTension { get; }

    /// <summary>Speed of each weight.</summary>
    public abstract Speed WeightSpeed { get; }

    /// <summary>Angular momentum of hub, weights and cords together, about the spin axis.</summary>
    public abstract AngularMomentum AngularMomentum { get; }

    /// <inheritdoc/>
    public abstract DeploymentEnergy Energy { get; }

    /// <summary>Speed of each weight away from the spin axis, along the radius to where its cord meets the hub, or met it at let-go.</summary>
    public Speed WeightRadialSpeed => Speed.FromMetersPerSecond(RadialVelocity);

    /// <summary>Speed of each weight across that radius, positive in the sense of the initial spin.</summary>
    public Speed WeightTangentialSpeed => Speed.FromMetersPerSecond(TangentialVelocity);

    private protected abstract PlanarDesign Moving { get; }

    internal abstract double RadialVelocity { get; }

    internal abstract double TangentialVelocity { get; }

    /// <summary>Angle from the first inertial axis to the radius through the first cord's root, at let-go if that is past.</summary>
    internal abstract double RootAngle { get; }

    internal abstract double Turn { get; }

    /// <inheritdoc/>
    public Force TensionOf(int cord)
    {
        EvenSpacing.Require(cord, Moving.WeightCount, nameof(cord));
        return CordTension;
    }

    /// <summary>Velocity of a weight.</summary>
    /// <param name="weight">Which one, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such weight.</exception>
    public Vector<Speed, Inertial> WeightVelocity(int weight) => Vector<Speed, Inertial>.FromSi(VelocityAt(weight, RootAngle));

    /// <summary>
    /// Velocity of a weight along the body axes as they stand now: the third the spin axis, the first through where the first
    /// weight was stowed.
    /// </summary>
    /// <param name="weight">Which one, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such weight.</exception>
    public Vector<Speed, Body> WeightVelocityInBodyAxes(int weight) => Vector<Speed, Body>.FromSi(VelocityAt(weight, RootAngle - Turn));

    /// <summary>Where a weight is.</summary>
    /// <param name="weight">Which one, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such weight.</exception>
    public abstract Position<Inertial> WeightPosition(int weight);

    /// <summary>Where a weight's cord meets the hub; null after let-go.</summary>
    /// <param name="weight">Which one, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such weight.</exception>
    public abstract Position<Inertial>? CordRoot(int weight);

    private Vec VelocityAt(int weight, double rootAngle) =>
        EvenSpacing.At(weight, Moving.WeightCount, rootAngle, RadialVelocity, TangentialVelocity);
}
