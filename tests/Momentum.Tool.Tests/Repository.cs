namespace Momentum.Tool.Tests;

/// <summary>Where the repository's own files are.</summary>
internal static class Repository
{
    public static string Cases => Path.Combine(Root, "src", "Momentum.Cases");

    public static string ExamplesFolder => Path.Combine(Root, "examples");

    public static IEnumerable<string> Examples => Directory.EnumerateFiles(ExamplesFolder, "*.toml").Order(StringComparer.Ordinal);

    private static string Root
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder.FullName, "Momentum.sln")))
            {
                folder = folder.Parent ?? throw new DirectoryNotFoundException("The tests do not run inside the repository.");
            }

            return folder.FullName;
        }
    }
}
