namespace Momentum.Analyzers.Inference;

/// <summary>How well a unit is known; the weaker of two when numbers are combined. It decides how a report is made.</summary>
internal enum Evidence
{
    /// <summary>Read from a name that may mean something else: an abbreviation without a word that says what it measures.</summary>
    Guessed,

    /// <summary>Read from a name that hardly means anything else: a unit word, or an abbreviation after the quantity that it measures.</summary>
    Named,

    /// <summary>Stated by a type, an attribute or the contract of a framework method.</summary>
    Typed,
}
