using System.Text.Json.Nodes;
using Momentum.Cases;

namespace Momentum.Tool.Tests.Files;

/// <summary>Nothing that a case or a name in the file system holds steers the reader's terminal or turns the order of reading.</summary>
public sealed class PrintableTests
{
    // A control sequence, one of the C1 set, an override of direction, an isolate, a mark, a line separator.
    private const string Hostile = "\u001b[2J\u009b31m\u202Ekg 21\u202C\u2066x\u2069\u200F\u2028\u0007";

    private const string Escaped = "\\u001b[2J\\u009b31m\\u202Ekg 21\\u202C\\u2066x\\u2069\\u200F\\u2028\\u0007";

    [Theory]
    [InlineData("check")]
    [InlineData("size")]
    [InlineData("report")]
    [InlineData("check", "--json")]
    [InlineData("size", "--json")]
    public void A_name_in_the_case_is_shown_with_its_codes(params string[] command)
    {
        using var place = new Workplace();
        place.Write("cube.stl", MeshCase.Cube);
        string path = place.Write("case.toml", MeshCase.Naming("cube.stl", Escaped).Replace("Sandpiper", Escaped, StringComparison.Ordinal));

        Invocation run = Invocation.Of([command[0], path, .. command[1..]]);

        Assert.Equal(0, run.ExitCode);
        AssertHarmless(run.Output);
        Assert.Contains("\\u202E", run.Output, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Json_gives_a_hostile_text_back_as_it_was()
    {
        string text = SampleCase.Text.Replace("Sandpiper", Escaped, StringComparison.Ordinal);

        Assert.Contains(Hostile, Invocation.WithInput(text, "size", "-", "--json").Json["title"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [UnixFact]
    public void The_name_of_a_file_and_of_its_neighbour_are_shown_with_their_codes_in_one_line()
    {
        using var place = new Workplace();
        place.Write("case\n\u202E.toml", SampleCase.Text.Replace("format = 1", "format = 7", StringComparison.Ordinal));

        Invocation near = Invocation.Of("check", place.PathOf("cas\n\u202E.toml"));
        Invocation bad = Invocation.Of("check", place.PathOf("case\n\u202E.toml"));
        Invocation json = Invocation.Of("check", place.PathOf("case\n\u202E.toml"), "--json");

        Assert.Contains("Did you mean", near.Error, StringComparison.Ordinal);
        foreach (Invocation run in new[] { near, bad })
        {
            AssertHarmless(run.Error);
            Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        }

        AssertHarmless(json.Error);
        Assert.EndsWith("case\n\u202E.toml", JsonNode.Parse(json.Error)!["problems"]![0]!["file"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plain text\n\twith a tab\n", "plain text\n\twith a tab\n")]
    [InlineData("é·²±−µ 漢字 🙂 עברית", "é·²±−µ 漢字 🙂 עברית")]
    [InlineData("line\r\nline\r", "line\nline\\u000D")]
    [InlineData("\u202Ea\u001b", "\\u202Ea\\u001B")]
    public void Only_what_steers_is_shown_as_its_code(string text, string shown) => Assert.Equal(shown, Printable.Text(text));

    [Fact]
    public void In_a_line_its_end_and_half_a_character_are_shown_as_their_code_too() =>
        Assert.Equal("a\\u000Ab\\u0009\\uD83Dc🙂", Printable.Line("a\nb\t\uD83Dc🙂"));

    private static void AssertHarmless(string text) => Assert.DoesNotContain(text, c => (char.IsControl(c) && c is not '\n' and not '\t') || Hostile.Contains(c, StringComparison.Ordinal) && c > 0x7e);
}
