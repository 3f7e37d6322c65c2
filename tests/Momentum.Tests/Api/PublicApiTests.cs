using Momentum.Quantities;

namespace Momentum.Tests.Api;

/// <summary>The public surface changes only where somebody meant it to: the text kept beside the library says what it is.</summary>
public sealed class PublicApiTests
{
    private const string Accept = "MOMENTUM_ACCEPT_API=1 dotnet test tests/Momentum.Tests --filter PublicApi";

    [Fact]
    public void The_public_surface_is_the_one_on_record()
    {
        string actual = PublicApi.Text(typeof(IFrame).Assembly);
        string path = Path.Combine(Root(), "src", "Momentum", "PublicAPI.txt");
        if (Environment.GetEnvironmentVariable("MOMENTUM_ACCEPT_API") == "1")
        {
            File.WriteAllText(path, actual);
        }

        string[] recorded = File.Exists(path) ? File.ReadAllLines(path) : [];
        string[] found = actual.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        string[] difference = [.. recorded.Except(found).Select(line => "- " + line), .. found.Except(recorded).Select(line => "+ " + line)];
        Assert.True(
            difference.Length == 0,
            $"The public surface differs from src/Momentum/PublicAPI.txt:\n{string.Join('\n', difference)}\nIf that is meant, say so in CHANGELOG.md and run: {Accept}");
    }

    [Fact]
    public void Extension_operators_and_methods_are_on_record_too()
    {
        string text = PublicApi.Text(typeof(IFrame).Assembly);
        Assert.Contains("Cross(", text, StringComparison.Ordinal);
        Assert.Contains("operator *(Vector<Speed, TFrame> left, Mass right)", text, StringComparison.Ordinal);
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Momentum.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException($"No Momentum.sln at or above {AppContext.BaseDirectory}.");
    }
}
