namespace Momentum.Dispersion;

/// <summary>What of a de-spin may be uncertain.</summary>
public enum UncertainInput
{
    /// <summary>Spin inertia of the hub.</summary>
    SpinInertia,

    /// <summary>Spin rate before release.</summary>
    InitialSpin,

    /// <summary>Radius to the centreline of the wound cord.</summary>
    HubRadius,

    /// <summary>Mass of each weight.</summary>
    WeightMass,

    /// <summary>Length of each cord.</summary>
    CordLength,

    /// <summary>Mass per length of each cord.</summary>
    CordLineDensity,

    /// <summary>Cord direction at let-go, from the intended one.</summary>
    LetGoAngle,

    /// <summary>How much later than the others the last weight lets go.</summary>
    SecondWeightDelay,

    /// <summary>Nutation before release, in three dimensions.</summary>
    Nutation,

    /// <summary>To which side of the spin axis the angular momentum leans before release, which nobody can know: all round with equal chance.</summary>
    NutationDirection,
}
