using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>How the hub wobbles over a stretch of time. Equality is by all members. <c>default</c> is none.</summary>
/// <param name="LargestNutation">Largest nutation angle.</param>
/// <param name="LargestTransverseRate">Largest rate across the spin axis.</param>
/// <param name="LargestSpin">Largest rate about the spin axis, without its sign.</param>
/// <param name="Momentum">The hub's angular momentum about its centre of mass at the end of the stretch.</param>
/// <param name="MomentumTilt">Angle of that vector to the hub's angular momentum at the start of the deployment.</param>
public readonly record struct Wobble(
    Angle LargestNutation,
    RotationalSpeed LargestTransverseRate,
    RotationalSpeed LargestSpin,
    Vector<AngularMomentum, Inertial> Momentum,
    Angle MomentumTilt)
    : IEqualityOperators<Wobble, Wobble, bool>
{
    /// <summary>Nutation, transverse rate and tilt, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"nutation {LargestNutation}, transverse rate {LargestTransverseRate}, spin {LargestSpin}, momentum {Momentum} tilted {MomentumTilt}");
}
