namespace Momentum.Tool.Tests;

/// <summary>A directory of its own for one test, removed afterwards.</summary>
internal sealed class Workplace : IDisposable
{
    public Workplace() => Root = Directory.CreateTempSubdirectory("momentum-test-").FullName;

    public string Root { get; }

    /// <summary>Every file in it, by name.</summary>
    public IEnumerable<string> Files => Directory.EnumerateFiles(Root).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal);

    public string PathOf(string name) => Path.Combine(Root, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(PathOf(name), bytes);
        return PathOf(name);
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
