using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>How the first weight leaves; the others leave alike, turned by their even spacing.</summary>
/// <remarks>
/// Both velocities are relative to inertial space and to the hub's centre of mass, which does not move; they differ in the
/// axes along which their components are taken. <c>default</c> is a weight at rest. Equality is by all members.
/// </remarks>
/// <param name="Speed">Speed of each weight.</param>
/// <param name="RadialSpeed">Component away from the spin axis, along the radius to the cord's end point on the hub.</param>
/// <param name="TangentialSpeed">Component across that radius, positive in the sense of the initial spin.</param>
/// <param name="VelocityInHubAxes">Along body axes at let-go: third axis the spin axis, first axis through where the first weight was stowed.</param>
/// <param name="VelocityInInertialAxes">Along inertial axes that coincided with the body axes at release of the weights.</param>
/// <param name="Direction">Angle of the velocity from the first inertial axis, in the sense of the initial spin, -180° to 180°.</param>
public readonly record struct WeightDeparture(
    Speed Speed,
    Speed RadialSpeed,
    Speed TangentialSpeed,
    Vector<Speed, Body> VelocityInHubAxes,
    Vector<Speed, Inertial> VelocityInInertialAxes,
    Angle Direction)
    : IEqualityOperators<WeightDeparture, WeightDeparture, bool>
{
    /// <summary>From the two components (m/s), and the angles of the cord's root from the first inertial axis and of the hub.</summary>
    internal static WeightDeparture Of(double radial, double tangential, double rootAngle, double turn)
    {
        (double sine, double cosine) = Math.SinCos(rootAngle);
        double x = (radial * cosine) - (tangential * sine);
        double y = (radial * sine) + (tangential * cosine);
        (double hubSine, double hubCosine) = Math.SinCos(rootAngle - turn);
        return new WeightDeparture(
            Speed.FromMetersPerSecond(double.Hypot(radial, tangential)),
            Speed.FromMetersPerSecond(radial),
            Speed.FromMetersPerSecond(tangential),
            Vector<Speed, Body>.FromSi((radial * hubCosine) - (tangential * hubSine), (radial * hubSine) + (tangential * hubCosine), 0),
            Vector<Speed, Inertial>.FromSi(x, y, 0),
            Angle.FromRadians(Math.Atan2(y, x)));
    }

    /// <summary>The speed, its two components and its direction, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Speed} ({RadialSpeed} radial, {TangentialSpeed} tangential) towards {Direction}");
}
