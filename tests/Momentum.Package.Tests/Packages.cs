using System.Globalization;

namespace Momentum.Package.Tests;

/// <summary>All packages, packed once from the sources into a feed of their own, under a version that no cache knows.</summary>
public sealed class Packages : IDisposable
{
    /// <summary>Packs.</summary>
    public Packages()
    {
        Scratch = Directory.CreateTempSubdirectory("momentum-package-").FullName;
        Version = string.Create(CultureInfo.InvariantCulture, $"0.1.0-test.{DateTime.UtcNow.Ticks}");
        foreach (string project in new[] { "Momentum", "Momentum.Cases", "Momentum.Tool" })
        {
            DotNet.Succeeds(Repository.Root, "pack", Path.Combine("src", project), "--configuration", "Release", "--output", Feed, $"-p:PackageVersion={Version}");
        }
    }

    /// <summary>The folder in which the packages lie.</summary>
    internal string Feed => Path.Combine(Scratch, "feed");

    /// <summary>A folder that goes with the tests.</summary>
    internal string Scratch { get; }

    /// <summary>The version of all packages.</summary>
    internal string Version { get; }

    /// <summary>The file of one package.</summary>
    internal string File(string id) => Path.Combine(Feed, $"{id}.{Version}.nupkg");

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(Scratch, recursive: true);
}
