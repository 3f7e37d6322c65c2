namespace Momentum.Cases.Quantities;

/// <summary>How far a stated value may be off, and in what sense.</summary>
internal enum SpreadKind
{
    /// <summary>Stated without a tolerance: taken as exact.</summary>
    None,

    /// <summary>The tolerance is one standard deviation of a normal distribution.</summary>
    OneSigma,

    /// <summary>The tolerance is a limit either way, any value between equally likely.</summary>
    Limits,
}
