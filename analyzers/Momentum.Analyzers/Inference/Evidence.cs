namespace Momentum.Analyzers.Inference;

/// <summary>How well a unit is known; the weaker of two when numbers are combined.</summary>
internal enum Evidence
{
    /// <summary>Read from the suffix of a name.</summary>
    Named,

    /// <summary>Stated by a type, an attribute or the contract of a framework method.</summary>
    Typed,
}
