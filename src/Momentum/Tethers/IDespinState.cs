using Momentum.Frames;
using UnitsNet;

namespace Momentum.Tethers;

/// <summary>One instant of a computed de-spin, in the plane, on spring cords or in space.</summary>
public interface IDespinState
{
    /// <summary>Time since release of the weights.</summary>
    Duration Time { get; }

    /// <summary>Rate of the hub about its spin axis.</summary>
    RotationalSpeed Spin { get; }

    /// <summary>The phase of the cord that is furthest behind.</summary>
    CordPhase Phase { get; }

    /// <summary>Where the energy is of what is still together; in the plane after let-go, of all as it was at let-go.</summary>
    DeploymentEnergy Energy { get; }

    /// <summary>Tension of a cord; zero while held, slack or let go.</summary>
    /// <param name="cord">Index of the cord, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such cord.</exception>
    Force TensionOf(int cord);

    /// <summary>Where a weight is, from the inertial origin.</summary>
    /// <param name="weight">Index of the weight, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such weight.</exception>
    Position<Inertial> WeightPosition(int weight);
}
