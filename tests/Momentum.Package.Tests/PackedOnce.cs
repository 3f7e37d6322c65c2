namespace Momentum.Package.Tests;

/// <summary>The tests that look at the packages, which are packed once for all of them.</summary>
[CollectionDefinition(Name)]
public sealed class PackedOnce : ICollectionFixture<Packages>
{
    internal const string Name = "packages";
}
