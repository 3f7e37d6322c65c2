using System.Text.Json.Nodes;

namespace Momentum.Tool.Tests.Commands;

/// <summary>The command line itself: help, completion, slips.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData("\"chek\" is no known command; did you mean check?", "momentum --help", "chek", "case.toml")]
    [InlineData("command was not provided", "momentum --help")]
    [InlineData("\"--jsno\" is no known option", "momentum size --help", "size", "--jsno")]
    [InlineData("--samples 1:", "momentum run --help", "run", "case.toml", "--samples", "1")]
    [InlineData("--cases 10:", "momentum size --help", "size", "case.toml", "--cases", "10")]
    [InlineData("--samples 1e3:", "momentum run --help", "run", "case.toml", "--samples", "1e3")]
    [InlineData("--until \"3\": the unit is missing", "", "run", "case.toml", "--until", "3")]
    [InlineData("--until \"0 s\": it is not more than 0 s", "", "run", "case.toml", "--until", "0 s")]
    [InlineData("is no known argument", "momentum check --help", "check", "a.toml", "b.toml")]
    public void A_slip_on_the_command_line_is_one_line_and_exit_code_2(string says, string hint, params string[] args)
    {
        Invocation run = Invocation.Of(args);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        string line = Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(says, line, StringComparison.Ordinal);
        Assert.Contains(hint, line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_slip_under_json_is_a_JSON_object()
    {
        Invocation run = Invocation.Of("size", "--json");

        Assert.Equal(2, run.ExitCode);
        Assert.Equal(2, JsonNode.Parse(run.Error)!["exit_code"]!.GetValue<int>());
    }

    [Fact]
    public void A_page_and_JSON_do_not_share_standard_output()
    {
        Invocation run = Invocation.Of("report", "case.toml", "--output", "-", "--json");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("needs a file of its own", JsonNode.Parse(run.Error)!["problems"]![0]!["message"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("new")]
    [InlineData("check")]
    [InlineData("size")]
    [InlineData("run")]
    [InlineData("report")]
    [InlineData("schema")]
    public void The_help_of_every_verb_shows_an_example_and_json(string verb)
    {
        Invocation run = Invocation.Of(verb, "--help");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Example:\n    momentum " + verb, run.Output, StringComparison.Ordinal);
        Assert.Contains("--json", run.Output, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void The_help_of_the_program_names_its_exit_codes()
    {
        Invocation run = Invocation.Of("--help");

        Assert.Equal(0, run.ExitCode);
        foreach (string code in new[] { "0  done", "1  done, but", "2  the command line", "3  the computation refused", "4  a defect" })
        {
            Assert.Contains(code, run.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_shell_can_complete_verbs_and_case_files()
    {
        Assert.Contains("check", Invocation.Of("[suggest:12]", "momentum che").Output, StringComparison.Ordinal);

        using var place = new Workplace();
        string path = place.Write("tern.toml", "");
        string line = $"momentum size {place.PathOf("te")}";
        Assert.Contains(path, Invocation.Of($"[suggest:{line.Length}]", line).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_name_beginning_with_an_at_sign_is_a_file_name() =>
        Assert.Contains("@args: error: there is no such file", Invocation.Of("check", "@args").Error, StringComparison.Ordinal);
}
