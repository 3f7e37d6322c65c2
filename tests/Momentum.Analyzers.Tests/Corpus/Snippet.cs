namespace Momentum.Analyzers.Tests.Corpus;

/// <summary>One class of code whose mistakes are known.</summary>
/// <param name="Name">The class's name, unique in its corpus.</param>
/// <param name="Code">The class.</param>
/// <param name="Seeded">The rules of which any one, reported, finds the one mistake; the first is the one it is counted under. Empty: the code is right.</param>
/// <param name="NamesOnly">Whether units are known from names only, at one end or both.</param>
internal sealed record Snippet(string Name, string Code, IReadOnlyList<string> Seeded, bool NamesOnly)
{
    internal bool IsRight => Seeded.Count == 0;
}
