using System.Globalization;
using System.Text.RegularExpressions;

namespace Momentum.Package.Tests;

/// <summary>
/// Each C# example of the readme is a whole program: it builds in a new project without a warning, and prints what the
/// readme says. A line that the readme marks <c>// error CS0019</c> is left out, and stops the build when put back.
/// </summary>
[Collection(PackedOnce.Name)]
public sealed partial class ReadmeTests(Packages packages)
{
    [Fact]
    public void The_examples_build_run_and_print_what_is_written_beside_them()
    {
        int number = 0;
        foreach (Match example in Examples().Matches(File.ReadAllText(Path.Combine(Repository.Root, "README.md"))))
        {
            number++;
            string code = example.Groups["code"].Value;
            string items = code.Contains("using Momentum.Cases", StringComparison.Ordinal) ? $"""<PackageReference Include="Momentum.Cases" Version="{packages.Version}" />""" : "";
            Consumer consumer = new(packages, string.Create(CultureInfo.InvariantCulture, $"Readme{number}"), items: items);
            string printed = consumer.With(MustNotCompile().Replace(code, "")).BuildsAndRuns();
            if (example.Groups["printed"].Success)
            {
                Assert.True(example.Groups["printed"].Value == printed, $"Example {number} of README.md prints:\n{printed}");
            }

            string[] promised = [.. Prints().Matches(code).Select(comment => comment.Groups["text"].Value)];
            if (promised.Length > 0)
            {
                Assert.Equal(promised, printed.TrimEnd('\n').Split('\n'));
            }

            if (MustNotCompile().Matches(code) is { Count: > 0 } marked)
            {
                string output = consumer.With(code).FailsToBuild();
                Assert.All(marked, line => Assert.Contains("error " + line.Groups["id"].Value, output, StringComparison.Ordinal));
            }
        }

        Assert.True(number > 0, "README.md has no C# example.");
    }

    // The output is in the text block that directly follows, if there is one.
    [GeneratedRegex("^```csharp\\s*?\n(?<code>.*?)^```\\s*?$(\\s*?^```text\\s*?\n(?<printed>.*?)^```\\s*?$)?", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Examples();

    [GeneratedRegex("// prints: (?<text>.*)$", RegexOptions.Multiline)]
    private static partial Regex Prints();

    [GeneratedRegex("^.*// error (?<id>[A-Z]+[0-9]+).*\n", RegexOptions.Multiline)]
    private static partial Regex MustNotCompile();
}
