using System.Diagnostics;
using System.Runtime.Versioning;

namespace Momentum.Tool.Tests.Files;

/// <summary>A result goes where its name leads, takes the place of nothing it is made from, and leaves nothing behind.</summary>
[UnsupportedOSPlatform("windows")]
public sealed class DestinationTests
{
    private const UnixFileMode Private = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    [UnixFact]
    public void A_link_to_a_file_that_is_not_there_yet_makes_that_file_and_stays_a_link()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        Directory.CreateDirectory(place.PathOf("pages"));
        foreach ((string link, string target, string file) in new[] { ("near.csv", "new.csv", "new.csv"), ("below.csv", "pages/new.csv", "pages/new.csv"), ("round.csv", "./pages/../other.csv", "other.csv") })
        {
            File.CreateSymbolicLink(place.PathOf(link), target);

            Assert.Equal(0, Invocation.Of("run", path, "--output", place.PathOf(link)).ExitCode);

            Assert.Equal(target, new FileInfo(place.PathOf(link)).LinkTarget);
            Assert.StartsWith("time_s,", File.ReadAllText(place.PathOf(file)), StringComparison.Ordinal);
        }

        Assert.False(File.Exists("/new.csv"));
    }

    [UnixFact]
    public void A_parent_after_a_linked_folder_is_the_parent_of_the_folder_linked_to()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        Directory.CreateDirectory(place.PathOf("deep/below"));
        File.CreateSymbolicLink(place.PathOf("link"), "deep/below");

        Assert.Equal(0, Invocation.Of("run", path, "--output", place.PathOf("link/../new.csv")).ExitCode);

        Assert.True(File.Exists(place.PathOf("deep/new.csv")));
        Assert.False(File.Exists(place.PathOf("new.csv")));
    }

    [UnixFact]
    public void Links_in_a_circle_are_told()
    {
        using var place = new Workplace();
        File.CreateSymbolicLink(place.PathOf("one"), "two");
        File.CreateSymbolicLink(place.PathOf("two"), "one");

        Invocation run = Invocation.Of("run", place.Write("case.toml", SampleCase.Text), "--output", place.PathOf("one"));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("circle", run.Error, StringComparison.Ordinal);
    }

    [LinuxTheory]
    [InlineData("link.toml", "is the case file itself")]
    [InlineData("hard.toml", "is the case file itself")]
    [InlineData("folder/case.toml", "is the case file itself")]
    [InlineData("./pages/../case.toml", "is the case file itself")]
    [InlineData("cube.stl", "is the mesh cube.stl of the case itself")]
    [InlineData("pages/hard.stl", "is the mesh cube.stl of the case itself")]
    public void No_input_is_overwritten_under_any_name(string output, string says)
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", MeshCase.Naming("cube.stl"));
        place.Write("cube.stl", MeshCase.Cube);
        Directory.CreateDirectory(place.PathOf("pages"));
        File.CreateSymbolicLink(place.PathOf("link.toml"), "case.toml");
        File.CreateSymbolicLink(place.PathOf("folder"), place.Root);
        Shell($"ln case.toml hard.toml && ln cube.stl pages/hard.stl", place.Root);

        foreach (string verb in new[] { "size", "run", "report" })
        {
            Invocation run = Invocation.Of(verb, path, "--output", place.PathOf(output));

            Assert.Equal(2, run.ExitCode);
            Assert.Contains(says, run.Error, StringComparison.Ordinal);
            Assert.Equal(MeshCase.Naming("cube.stl"), File.ReadAllText(path));
            Assert.Equal(MeshCase.Cube, File.ReadAllText(place.PathOf("cube.stl")));
        }
    }

    [LinuxFact]
    public void A_case_on_standard_input_is_not_overwritten_either()
    {
        using var place = new Workplace();
        place.Write("case.toml", SampleCase.Text);

        (int exitCode, string _, string error) = ToolProcess.Shell("momentum size - --output case.toml < case.toml", place.Root);

        Assert.Equal(2, exitCode);
        Assert.Contains("is the case file itself", error, StringComparison.Ordinal);
        Assert.Equal(SampleCase.Text, File.ReadAllText(place.PathOf("case.toml")));
    }

    [LinuxFact]
    public void A_result_is_not_appended_to_its_own_case()
    {
        using var place = new Workplace();
        place.Write("case.toml", SampleCase.Text);

        (int exitCode, string _, string error) = ToolProcess.Shell("momentum size case.toml >> case.toml", place.Root);

        Assert.Equal(2, exitCode);
        Assert.Contains("standard output is the case file itself", error, StringComparison.Ordinal);
        Assert.Equal(SampleCase.Text, File.ReadAllText(place.PathOf("case.toml")));
    }

    [UnixFact]
    public void A_file_that_is_replaced_keeps_its_mode()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        string history = place.Write("history.csv", "old");
        File.SetUnixFileMode(history, Private);

        Assert.Equal(0, Invocation.Of("run", path, "--output", history).ExitCode);

        Assert.Equal(Private, File.GetUnixFileMode(history));
        Assert.StartsWith("time_s,", File.ReadAllText(history), StringComparison.Ordinal);
    }

    // Only the administrator can give a file away; elsewhere there is nothing to see.
    [LinuxFact]
    public void A_file_that_is_replaced_keeps_its_owner()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        string history = place.Write("history.csv", "old");
        if (Shell("chown 12345:23456 history.csv 2>/dev/null", place.Root).ExitCode != 0)
        {
            return;
        }

        Assert.Equal(0, Invocation.Of("run", path, "--output", history).ExitCode);

        Assert.Equal("12345:23456", Shell("stat -c %u:%g history.csv", place.Root).Output.Trim());
    }

    [UnixFact]
    public void A_read_only_file_is_refused_and_left_as_it_is_even_to_the_administrator()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        string history = place.Write("history.csv", "kept");
        File.SetUnixFileMode(history, UnixFileMode.UserRead | UnixFileMode.GroupRead | UnixFileMode.OtherRead);

        Invocation run = Invocation.Of("run", path, "--output", history);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("is read-only and was left as it is", run.Error, StringComparison.Ordinal);
        Assert.Equal("kept", File.ReadAllText(history));
        Assert.Equal(["case.toml", "history.csv"], place.Files);
    }

    [LinuxFact]
    public void A_pipe_is_written_to_and_stays_a_pipe()
    {
        using var place = new Workplace();
        place.Write("case.toml", SampleCase.Text);

        (int exitCode, string output, string error) = ToolProcess.Shell("mkfifo pipe; cat pipe > got & momentum run case.toml --output pipe; code=$?; wait; test -p pipe && head -c 7 got; exit $code", place.Root);

        Assert.Equal(0, exitCode);
        Assert.Equal("time_s,", output);
        Assert.Empty(error);
    }

    [LinuxTheory]
    [InlineData("momentum run case.toml --output /dev/stdout | cat")]
    [InlineData("momentum run case.toml --output /dev/fd/1 | cat")]
    [InlineData("momentum run case.toml --output /proc/self/fd/1 | cat")]
    [InlineData("momentum run case.toml --output /dev/stdout > got; cat got")]
    [InlineData("echo before > got; momentum run case.toml --output /dev/stdout >> got; tail -n +2 got")]
    [InlineData("momentum run case.toml --output /dev/fd/3 3> got; cat got")]
    [InlineData("momentum run case.toml --output /dev/stderr 2>&1 | cat")]
    public void The_programs_own_streams_are_written_to_by_their_names_in_the_file_system(string command)
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);

        (int exitCode, string output, string error) = ToolProcess.Shell(command, place.Root);

        Assert.Equal(0, exitCode);
        Assert.Empty(error);
        Assert.Equal(Invocation.Of("run", path).Output, output);
    }

    [Fact]
    public void With_json_the_page_does_not_go_to_standard_output_by_another_name()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Invocation run = Invocation.WithInput(SampleCase.Text, "report", "-", "--json", "--output", "/dev/stdout");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("needs a file of its own", run.Error, StringComparison.Ordinal);
    }

    [UnixFact]
    public void What_a_killed_run_left_is_removed_by_the_next_and_what_a_living_one_writes_is_not()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        string left = place.Write($".momentum-{Guid.NewGuid():N}.tmp", "half");
        string written = place.PathOf($".momentum-{Guid.NewGuid():N}.tmp");
        string other = place.Write(".momentum-notes.tmp", "mine");
        using (new FileStream(written, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Delete))
        {
            Assert.Equal(0, Invocation.Of("run", path, "--output", place.PathOf("history.csv")).ExitCode);

            Assert.False(File.Exists(left));
            Assert.True(File.Exists(written));
            Assert.True(File.Exists(other));
        }
    }

    [UnixFact]
    public void A_name_as_long_as_the_file_system_takes_can_be_written()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);

        Assert.Equal(0, Invocation.Of("run", path, "--output", place.PathOf(new string('n', 251) + ".csv")).ExitCode);
    }

    [LinuxFact]
    public void A_full_disk_is_told_and_nothing_is_left()
    {
        (int exitCode, string _, string error) = ToolProcess.Shell("momentum schema > /dev/full", "/tmp");

        Assert.Equal(2, exitCode);
        Assert.StartsWith("momentum: error: the result could not be written to standard output", error, StringComparison.Ordinal);
        Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    private static (int ExitCode, string Output) Shell(string command, string folder)
    {
        using Process process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", command]) { WorkingDirectory = folder, RedirectStandardOutput = true })!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output);
    }
}
