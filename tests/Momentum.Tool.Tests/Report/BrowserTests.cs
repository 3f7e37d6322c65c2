namespace Momentum.Tool.Tests.Report;

/// <summary>The tests that share one browser.</summary>
[CollectionDefinition(Name)]
public sealed class BrowserTests : ICollectionFixture<Chromium>
{
    /// <summary>Name of the collection.</summary>
    public const string Name = "browser";
}
