using System.IO.Compression;
using System.Security.Cryptography;

namespace Momentum.Package.Tests;

/// <summary>The same sources give the same bytes, wherever they lie.</summary>
[Collection(PackedOnce.Name)]
public sealed class DeterminismTests(Packages packages)
{
    [Fact]
    public void Packing_in_another_folder_gives_the_same_assemblies_byte_for_byte()
    {
        string[] first = PackCopy("one");
        string[] second = PackCopy("another/and/deeper");
        Assert.NotEmpty(first);
        Assert.Equal(first, second);
    }

    // "name hash" of each assembly of ours in the library's package, built from a copy of the sources.
    private string[] PackCopy(string name)
    {
        string copy = Path.Combine(packages.Scratch, "copies", name);
        foreach (string file in Directory.EnumerateFiles(Repository.Root).Where(file => Path.GetFileName(file) != ".git"))
        {
            CopyFile(file, copy);
        }

        foreach (string folder in new[] { "src", "analyzers" })
        {
            foreach (string file in Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*", SearchOption.AllDirectories).Where(IsSource))
            {
                CopyFile(file, copy);
            }
        }

        string feed = Path.Combine(copy, "feed");
        DotNet.Succeeds(copy, "pack", Path.Combine("src", "Momentum"), "--configuration", "Release", "--output", feed, "-p:ContinuousIntegrationBuild=true");
        using ZipArchive archive = ZipFile.OpenRead(Directory.EnumerateFiles(feed, "*.nupkg").Single());
        return [.. archive.Entries.Where(e => e.Name.EndsWith(".dll", StringComparison.Ordinal)).Select(Hash)];

        static string Hash(ZipArchiveEntry entry)
        {
            using Stream stream = entry.Open();
            return $"{entry.FullName} {Convert.ToHexString(SHA256.HashData(stream))}";
        }
    }

    private static void CopyFile(string file, string destination)
    {
        string target = Path.Combine(destination, Path.GetRelativePath(Repository.Root, file));
        Directory.CreateDirectory(Path.GetDirectoryName(target)!);
        File.Copy(file, target);
    }

    private static bool IsSource(string path) =>
        !Path.GetRelativePath(Repository.Root, path).Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj");
}
