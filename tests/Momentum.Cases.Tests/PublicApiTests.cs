using Momentum.Tests.Api;

namespace Momentum.Cases.Tests;

/// <summary>What a tool builder can name changes only where somebody meant it to.</summary>
public sealed class PublicApiTests
{
    private const string Accept = "MOMENTUM_ACCEPT_API=1 dotnet test tests/Momentum.Cases.Tests --filter PublicApi";

    [Fact]
    public void The_public_surface_is_the_one_on_record()
    {
        string actual = PublicApi.Text(typeof(CaseReader).Assembly);
        string path = Path.Combine(Repository.Root, "src", "Momentum.Cases", "PublicAPI.txt");
        if (Environment.GetEnvironmentVariable("MOMENTUM_ACCEPT_API") == "1")
        {
            File.WriteAllText(path, actual);
        }

        string[] recorded = File.Exists(path) ? File.ReadAllLines(path) : [];
        string[] found = actual.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        string[] difference = [.. recorded.Except(found).Select(line => "- " + line), .. found.Except(recorded).Select(line => "+ " + line)];
        Assert.True(
            difference.Length == 0,
            $"The public surface differs from src/Momentum.Cases/PublicAPI.txt:\n{string.Join('\n', difference)}\nIf that is meant, say so in CHANGELOG.md and run: {Accept}");
    }
}
