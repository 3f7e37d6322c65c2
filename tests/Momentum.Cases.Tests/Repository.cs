namespace Momentum.Cases.Tests;

/// <summary>Where the repository's own files are.</summary>
internal static class Repository
{
    public static string Root
    {
        get
        {
            DirectoryInfo? folder = new(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Momentum.sln")))
            {
                folder = folder.Parent;
            }

            return folder?.FullName ?? throw new DirectoryNotFoundException($"No Momentum.sln at or above {AppContext.BaseDirectory}.");
        }
    }

    public static string Example(string name) => File.ReadAllText(Path.Combine(Root, "examples", name));
}
