namespace Momentum.Analyzers.Inference;

/// <summary>What kind of code told the unit.</summary>
internal enum OriginKind
{
    /// <summary>A member of a quantity type read as a number, such as <c>length.Feet</c>.</summary>
    Escape,

    /// <summary>An attribute on a declaration.</summary>
    Attribute,

    /// <summary>The suffix of a declared name.</summary>
    Name,

    /// <summary>The contract of a framework method, such as <c>Math.Sin</c>.</summary>
    Contract,

    /// <summary>A factory of a quantity type, such as <c>Length.FromFeet</c>.</summary>
    Factory,
}
