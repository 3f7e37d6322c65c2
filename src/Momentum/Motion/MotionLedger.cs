using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Motion;

/// <summary>What a propagated motion owes and owns since its start. Equality is exact. <c>default</c> is a body at rest that nothing has happened to. Immutable.</summary>
/// <remarks>
/// Linear and angular momentum are integrated as such, in inertial axes, so without loads they are constant to the last bit;
/// the energy is not integrated, so what fails to close in it shows the error of the whole. The quaternion is integrated
/// without being pulled to unit length: how far it has drifted shows the error of the attitude.
/// </remarks>
public readonly record struct MotionLedger : IEqualityOperators<MotionLedger, MotionLedger, bool>
{
    /// <summary>Angular momentum of body and slug about the centre of mass, along inertial axes.</summary>
    public Vector<AngularMomentum, Inertial> AngularMomentum { get; init; }

    /// <summary>Linear momentum along inertial axes.</summary>
    public Vector<LinearMomentum, Inertial> LinearMomentum { get; init; }

    /// <summary>Kinetic energy of body and slug, translation and rotation.</summary>
    public Energy KineticEnergy { get; init; }

    /// <summary>Work of the outer forces and torques.</summary>
    public Energy Work { get; init; }

    /// <summary>Energy that the slug has turned to heat; never negative.</summary>
    public Energy Dissipated { get; init; }

    /// <summary>Kinetic energy that the lost mass took along.</summary>
    public Energy CarriedAway { get; init; }

    /// <summary>Kinetic energy less what it was at the start, less work, plus dissipated and carried away: zero but for numerical error.</summary>
    public Energy Residual { get; init; }

    /// <summary>The residual as a share of the largest of the energies above.</summary>
    public double RelativeResidual { get; init; }

    /// <summary>Length of the integrated quaternion less 1.</summary>
    public double QuaternionDrift { get; init; }

    /// <summary>The energies in joules and how they close, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"kinetic energy {KineticEnergy.Joules} J, work {Work.Joules} J, dissipated {Dissipated.Joules} J, carried away {CarriedAway.Joules} J, residual {RelativeResidual}, quaternion drift {QuaternionDrift}");
}
