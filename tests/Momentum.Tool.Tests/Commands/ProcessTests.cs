using System.Diagnostics;
using Momentum.Tool.Commands;
using Momentum.Tool.Tests.Files;

namespace Momentum.Tool.Tests.Commands;

/// <summary>A few runs of the real program: its streams, its exit code, a reader that goes away.</summary>
public sealed class ProcessTests
{
    [Fact]
    public void The_program_answers_on_standard_output_and_is_silent_on_standard_error()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.With("nutation = \"0.5 deg\"", ""));
        (int exitCode, string output, string error) = Run("size", path, "--json");

        Assert.Equal(0, exitCode);
        Assert.Contains("\"cord_length_m\"", output, StringComparison.Ordinal);
        Assert.Empty(error);
    }

    [Fact]
    public void The_program_tells_a_bad_case_in_one_line_and_exits_with_2()
    {
        using var place = new Workplace();
        (int exitCode, string output, string error) = Run("size", place.Write("case.toml", SampleCase.With("\"0.7 kg +/- 1 g\"", "0.7")));

        Assert.Equal(2, exitCode);
        Assert.Empty(output);
        Assert.Contains("despin.weight_mass", Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_program_exits_with_1_if_a_requirement_is_not_met()
    {
        using var place = new Workplace();
        Assert.Equal(1, Run("size", place.Write("case.toml", SampleCase.With("\"> 3\"", "\"> 3000\""))).ExitCode);
    }

    [Fact]
    public void A_reader_that_goes_away_is_no_error()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        var start = new ProcessStartInfo("/bin/sh") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add("dotnet \"$0\" run \"$1\" --samples 20000 | head -n 1");
        start.ArgumentList.Add(typeof(CommandLine).Assembly.Location);
        start.ArgumentList.Add(path);
        (_, string output, string error) = Finish(start);

        Assert.StartsWith("time_s,", output, StringComparison.Ordinal);
        Assert.Equal("", error);
    }

    [LinuxTheory]
    [InlineData("momentum schema >&-")]
    [InlineData("momentum size case.toml >&-")]
    [InlineData("momentum run case.toml --samples 20000 >&-")]
    public void A_closed_standard_output_is_told_in_one_line(string command)
    {
        using var place = new Workplace();
        place.Write("case.toml", SampleCase.Exact);

        (int exitCode, string _, string error) = ToolProcess.Shell(command, place.Root);

        Assert.Equal(2, exitCode);
        Assert.StartsWith("momentum: error: the result could not be written to standard output: it is closed.", Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
    }

    [LinuxFact]
    public void A_closed_standard_error_loses_only_the_messages()
    {
        using var place = new Workplace();
        place.Write("case.toml", SampleCase.Text);

        (int exitCode, string output, string _) = ToolProcess.Shell("momentum size case.toml 2>&-; momentum size missing.toml 2>&-; echo $?", place.Root);

        Assert.Equal(0, exitCode);
        Assert.EndsWith("2\n", output, StringComparison.Ordinal);
    }

    // The whole history kept would take several hundred megabytes; the heap is held to 96.
    [LinuxFact]
    public void Many_samples_pass_through_little_memory()
    {
        using var place = new Workplace();
        place.Write("case.toml", SampleCase.Exact);

        (int exitCode, string output, string error) = ToolProcess.Shell("DOTNET_GCHeapHardLimit=0x6000000 momentum run case.toml --samples 200000 | wc -l", place.Root);

        Assert.True(error.Length == 0, error);
        Assert.Equal(0, exitCode);
        Assert.InRange(int.Parse(output, System.Globalization.CultureInfo.InvariantCulture), 200_002, 200_004);
    }

    private static (int ExitCode, string Output, string Error) Run(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(typeof(CommandLine).Assembly.Location);
        foreach (string arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        return Finish(start);
    }

    private static (int ExitCode, string Output, string Error) Finish(ProcessStartInfo start)
    {
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
