using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>Whether a compilation can have units at all.</summary>
internal static class Participation
{
    /// <summary>Whether it references this library or UnitsNet, or is one of them.</summary>
    internal static bool Takes(Compilation compilation) =>
        compilation.AssemblyName == "Momentum"
        || compilation.ReferencedAssemblyNames.Any(name => name.Name is "UnitsNet" or "Momentum");
}
