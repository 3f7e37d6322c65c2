namespace Momentum.Analyzers;

/// <summary>The tiers of evidence, each a category that an <c>.editorconfig</c> can set as one.</summary>
internal static class Categories
{
    /// <summary>Both ends are stated by a type, an attribute or a contract.</summary>
    internal const string Stated = "Momentum.Stated";

    /// <summary>Both ends are read from names.</summary>
    internal const string Named = "Momentum.Named";

    /// <summary>One end is read from a name.</summary>
    internal const string Suggested = "Momentum.Suggested";
}
