namespace Momentum.Cases.Answers;

/// <summary>Where the spin axis stands among the principal axes.</summary>
internal enum SpinAxisRank
{
    /// <summary>The axis of largest inertia: stable, also with internal friction.</summary>
    Largest,

    /// <summary>The axis of least inertia: stable only for a rigid body; internal friction makes the nutation grow.</summary>
    Least,

    /// <summary>The intermediate axis: unstable.</summary>
    Intermediate,

    /// <summary>All moments are alike: no axis is preferred.</summary>
    NoDifference,
}
