namespace Momentum.Package.Tests;

/// <summary>Where the sources are that the packages are made from.</summary>
internal static class Repository
{
    /// <summary>The folder that holds <c>Momentum.sln</c>, at or above the running tests.</summary>
    internal static string Root { get; } = Find();

    private static string Find()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Momentum.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException($"No Momentum.sln at or above {AppContext.BaseDirectory}.");
    }
}
