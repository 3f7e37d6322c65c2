using System.Runtime.CompilerServices;
using Xunit.Abstractions;

namespace Momentum.Analyzers.Tests.Corpus;

public sealed class AccuracyTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("tuning")]
    [InlineData("reporting")]
    public async Task Mistakes_are_found_and_right_code_is_left_alone(string part)
    {
        Accuracy accuracy = await Accuracy.Of(part);
        output.WriteLine($"{part} part, corpus {accuracy.Hash}: {accuracy.Right(false) + accuracy.Right(true)} right, {accuracy.Seeded(false) + accuracy.Seeded(true)} seeded");
        output.WriteLine(accuracy.Table());
        if (part == "tuning")
        {
            output.WriteLine(string.Join("\n", accuracy.Failures()));
        }

        Assert.True(accuracy.Right(false) >= 300, "The corpus has fewer than 300 right classes.");
        Assert.True(accuracy.Seeded(false) >= 300, "The corpus has fewer than 300 seeded classes.");
        Assert.True(accuracy.Precision(names: false) >= 0.99, $"Precision on typed sources is {accuracy.Precision(false):F3}.");
        Assert.True(accuracy.Recall(names: false) >= 0.95, $"Recall on typed sources is {accuracy.Recall(false):F3}.");
        Assert.True(accuracy.Precision(names: true) >= 0.95, $"Precision on names is {accuracy.Precision(true):F3}.");
        Assert.True(accuracy.Recall(names: true) >= 0.80, $"Recall on names is {accuracy.Recall(true):F3}.");
    }

    [Fact]
    public async Task The_published_table_is_the_one_that_this_run_gives()
    {
        Accuracy accuracy = await Accuracy.Of("reporting");
        string figures = $"Corpus {accuracy.Hash}: {accuracy.Right(false) + accuracy.Right(true)} right classes, {accuracy.Seeded(false) + accuracy.Seeded(true)} with one mistake.\n\n{accuracy.Table()}";
        string page = await File.ReadAllTextAsync(Page());
        string text = page[..page.IndexOf("Corpus ", StringComparison.Ordinal)];
        if (Environment.GetEnvironmentVariable("MOMENTUM_WRITE_TABLES") == "1")
        {
            await File.WriteAllTextAsync(Page(), text + figures);
        }

        Assert.Equal(text + figures, await File.ReadAllTextAsync(Page()));
    }

    private static string Page([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "analyzers", "docs", "accuracy.md");
}
