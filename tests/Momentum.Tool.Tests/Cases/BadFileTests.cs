using System.Text;
using System.Text.Json.Nodes;
using Momentum.Cases;
using Momentum.Cases.Keys;

namespace Momentum.Tool.Tests.Cases;

/// <summary>Files that are no case at all: refused quickly, in one line, with exit code 2.</summary>
public sealed class BadFileTests
{
    [Fact]
    public void A_missing_file_is_told_with_the_nearest_name()
    {
        using var place = new Workplace();
        place.Write("tern.toml", SampleCase.Text);
        AssertOneError(Invocation.Of("size", place.PathOf("tren.toml")), "there is no such file", "Did you mean " + place.PathOf("tern.toml"));
    }

    [Fact]
    public void A_missing_directory_is_a_missing_file()
    {
        using var place = new Workplace();
        AssertOneError(Invocation.Of("check", place.PathOf("no/such/case.toml")), "there is no such file", "Check the path");
    }

    [Fact]
    public void A_directory_is_no_case()
    {
        using var place = new Workplace();
        AssertOneError(Invocation.Of("check", place.Root), "it is a directory", "Name the file in it");
    }

    [Fact]
    public void An_empty_path_is_no_case() => AssertOneError(Invocation.Of("check", ""), "it is not a path", "Name a case file");

    [Fact]
    public void An_empty_file_is_no_case()
    {
        using var place = new Workplace();
        AssertOneError(Invocation.Of("check", place.Write("case.toml", "")), "it is missing, so that this may not be a case file at all", "Write format = 1");
    }

    [Fact]
    public void Many_megabytes_are_refused_without_being_parsed()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text + new string('#', 8 << 20));
        AssertOneError(Invocation.Of("check", path), "larger than 1 MiB", "Check that this is the case file");
    }

    [Fact]
    public void An_endless_device_is_refused_like_a_large_file()
    {
        if (File.Exists("/dev/zero"))
        {
            AssertOneError(Invocation.Of("check", "/dev/zero"), "larger than 1 MiB", "Check that this is the case file");
        }
    }

    [Fact]
    public void A_file_in_Latin_1_is_refused_with_the_place_of_the_first_wrong_byte()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", Encoding.Latin1.GetBytes("format = 1\ntitle = \"Tröpfchen\"\n"));
        Invocation run = Invocation.Of("check", path);
        AssertOneError(run, "not UTF-8", "Save it as UTF-8");
        Assert.StartsWith($"{path}:2:12: error", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_UTF_16_is_refused()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(SampleCase.Text)]);
        AssertOneError(Invocation.Of("check", path), "not UTF-8", "Save it as UTF-8");
    }

    [Fact]
    public void A_byte_order_mark_of_UTF_8_is_no_fault()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(SampleCase.Text)]);
        Assert.Equal(0, Invocation.Of("check", path).ExitCode);
    }

    [Fact]
    public void Tables_nested_without_end_are_refused()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", $"format = 1\nx = {new string('[', 100_000)}{new string(']', 100_000)}\n");
        AssertOneError(Invocation.Of("check", path), "nested too deep", "Mend this line");
    }

    [Fact]
    public void Windows_line_ends_are_no_fault()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text.Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Equal(0, Invocation.Of("check", path).ExitCode);
    }

    [Fact]
    public void A_case_comes_through_standard_input_as_well()
    {
        Assert.Equal(0, Invocation.WithInput(SampleCase.Text, "size", "-").ExitCode);
        Invocation bad = Invocation.WithInput("format = 1\n[", "size", "-");
        Assert.Equal(2, bad.ExitCode);
        Assert.StartsWith("(standard input):2:", bad.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Several_slips_are_told_all_at_once_in_the_order_of_the_file()
    {
        string text = SampleCase.Text
            .Replace("\"50 rpm +/- 2 %\"", "50", StringComparison.Ordinal)
            .Replace("weights     = 2", "weights = 0", StringComparison.Ordinal)
            .Replace("spin_axis     = \"z\"", "spin_axis = \"Z\"", StringComparison.Ordinal);
        Invocation run = Invocation.WithInput(text, "check", "-");

        Assert.Equal(2, run.ExitCode);
        string[] lines = run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Collection(
            lines,
            line => Assert.Contains("vehicle.spin_axis", line, StringComparison.Ordinal),
            line => Assert.Contains("spin.rate", line, StringComparison.Ordinal),
            line => Assert.Contains("despin.weights", line, StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_of_nothing_but_slips_does_not_flood_the_terminal()
    {
        string text = "format = 1\n" + string.Concat(Enumerable.Range(0, 5000).Select(i => $"k{i} = {i}\n"));
        Invocation run = Invocation.WithInput(text, "check", "-");

        Assert.Equal(2, run.ExitCode);
        Assert.InRange(run.Error.Count(c => c == '\n'), 1, 60);
        Assert.Contains("more errors, not listed", run.Error.TrimEnd().Split('\n')[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void Slips_beyond_those_listed_still_keep_a_section_from_being_judged()
    {
        // Sixty unknown keys, then a case without the spin rate that the whole of it is judged by.
        string unknown = string.Concat(Enumerable.Range(0, 60).Select(i => $"k{i} = {i}\n"));
        Invocation run = Invocation.WithInput(unknown + SampleCase.With("rate   = \"50 rpm +/- 2 %\"\n", ""), "check", "-");

        Assert.Equal(2, run.ExitCode);
        Assert.DoesNotContain("unforeseen", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("format = 1\n[spin]\nrate = \"72 ", "\"\n")]
    [InlineData("format = 1\n[spin]\nrate = ", "\n")]
    [InlineData("format = 1\n", " = 1\n")]
    [InlineData("format = 1\nkind = \"", "\n")]
    public void A_megabyte_in_one_value_or_key_is_told_of_in_a_line_or_two(string before, string after)
    {
        Invocation run = Invocation.WithInput(before + new string('9', 1_000_000) + after, "check", "-");

        Assert.Equal(2, run.ExitCode);
        Assert.InRange(run.Error.Length, 1, 5000);
    }

    [Fact]
    public void Warnings_never_crowd_out_errors()
    {
        var findings = new Findings("case.toml");
        foreach (int i in Enumerable.Range(1, 200))
        {
            findings.Add(new Problem(Severity.Warning, "case.toml", new Place(i, 1), "", null, "a warning", "", ""));
        }

        findings.Add(new Problem(Severity.Error, "case.toml", new Place(201, 1), "", null, "an error", "", ""));

        Assert.True(findings.HasErrors);
        Assert.Equal(1, findings.ErrorCount);
        Assert.Contains(findings.Problems, p => p.Message == "an error");
        Assert.Equal("150 more warnings, not listed", findings.Problems[^1].Message);
        Assert.Equal(Severity.Warning, findings.Problems[^1].Severity);
    }

    [Fact]
    public void Under_json_errors_are_one_object_on_standard_error()
    {
        Invocation run = Invocation.WithInput(SampleCase.With("\"0.7 kg +/- 1 g\"", "\"-0.7 kg\""), "size", "-", "--json");

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        JsonNode failure = JsonNode.Parse(run.Error)!;
        Assert.Equal(2, failure["exit_code"]!.GetValue<int>());
        JsonNode problem = Assert.Single(failure["problems"]!.AsArray())!;
        Assert.Equal("despin.weight_mass", problem["key"]!.GetValue<string>());
        Assert.Equal(19, problem["line"]!.GetValue<int>());
        Assert.Equal("\"-0.7 kg\"", problem["value"]!.GetValue<string>());
        Assert.Contains("not more than 0 kg", problem["message"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains("more than 0 kg", problem["allowed"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Contains("weight_mass =", problem["remedy"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void Control_characters_of_a_file_never_reach_the_terminal()
    {
        Invocation run = Invocation.WithInput("format = 1\n\"\\u001b[2J\" = \"\\u001b[31m\"\n", "check", "-");

        Assert.Equal(2, run.ExitCode);
        Assert.DoesNotContain('\u001b', run.Error);
    }

    private static void AssertOneError(Invocation run, string says, string remedy)
    {
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        string line = Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(": error: ", line, StringComparison.Ordinal);
        Assert.Contains(says, line, StringComparison.Ordinal);
        Assert.Contains(remedy, line, StringComparison.Ordinal);
    }
}
