using UnitsNet;

namespace Momentum.Tethers;

/// <summary>What every computed de-spin tells, in the plane, on spring cords or in space.</summary>
/// <remarks>
/// A <see cref="DespinMotion"/>, a <see cref="Springs.SpringCordMotion"/> or a <see cref="Deployment.DeploymentResult"/>. In the plane
/// a spin is positive in the sense of the initial one, in space about the positive end of the spin axis.
/// </remarks>
public interface IDespinMotion
{
    /// <summary>Rate of the hub about its spin axis at the end: after let-go, or when the computation ended.</summary>
    RotationalSpeed FinalSpin { get; }

    /// <summary>The largest tension of all cords.</summary>
    PeakTension PeakTension { get; }

    /// <summary>How each weight leaves, in the order of the cords; without those whose cord does not let go.</summary>
    IReadOnlyList<WeightDeparture> Departures { get; }

    /// <summary>How well momenta and energy close; a motion exists only if they do.</summary>
    DeploymentLedger Ledger { get; }

    /// <summary>The state at a time.</summary>
    /// <param name="time">Since release of the weights.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative, not finite, or after the end of what was computed.</exception>
    IDespinState At(Duration time);

    /// <summary>The states at many times; faster than one by one.</summary>
    /// <param name="times">Each since release of the weights.</param>
    /// <exception cref="ArgumentOutOfRangeException">A time is negative, not finite, or after the end of what was computed.</exception>
    IReadOnlyList<IDespinState> History(IEnumerable<Duration> times);
}
