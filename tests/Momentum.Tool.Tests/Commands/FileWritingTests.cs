namespace Momentum.Tool.Tests.Commands;

/// <summary>Files appear whole or not at all, and nothing is replaced unasked.</summary>
public sealed class FileWritingTests
{
    [Fact]
    public void New_writes_a_case_that_is_in_order_and_meets_its_requirements()
    {
        using var place = new Workplace();
        string path = place.PathOf("case.toml");

        Assert.Equal(0, Invocation.Of("new", path).ExitCode);
        Invocation check = Invocation.Of("check", path);
        Assert.Equal(0, check.ExitCode);
        Assert.Empty(check.Error);
        Assert.Equal(0, Invocation.Of("size", path).ExitCode);
        Assert.Equal(["case.toml"], place.Files);
    }

    [Fact]
    public void New_leaves_an_existing_file_alone_unless_forced()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", "mine");

        Invocation refused = Invocation.Of("new", path);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("exists already", refused.Error, StringComparison.Ordinal);
        Assert.Contains("--force", refused.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(path));

        Assert.Equal(0, Invocation.Of("new", path, "--force").ExitCode);
        Assert.StartsWith("# A de-spin case", File.ReadAllText(path), StringComparison.Ordinal);
        Assert.Equal(["case.toml"], place.Files);
    }

    [Fact]
    public void Every_key_of_the_starter_case_is_valid_when_its_comment_mark_is_taken_away()
    {
        using var place = new Workplace();
        string starter = Invocation.Of("new", "-").Output;
        Assert.Contains("\n# nutation = \"0.8 deg\"\n", starter, StringComparison.Ordinal);

        // Keys that exclude one another stay as they are: parts beside a tensor, the third of the two that are given, springs beside a stiffness.
        string[] lines = starter.Split('\n');
        var live = new List<string>();
        bool inPart = false;
        foreach (string line in lines)
        {
            inPart = line.StartsWith("# [[part]]", StringComparison.Ordinal) || (inPart && !line.StartsWith('['));
            bool isKey = line.StartsWith("# ", StringComparison.Ordinal) && (line.Contains(" = ", StringComparison.Ordinal) || line.StartsWith("# [", StringComparison.Ordinal));
            live.Add(isKey && !inPart && !line.StartsWith("# A ", StringComparison.Ordinal) && !line.Contains("cord_length", StringComparison.Ordinal) && !line.Contains("forgive_spin_up", StringComparison.Ordinal) ? line[2..] : line);
        }

        Invocation check = Invocation.Of("check", place.Write("case.toml", string.Join('\n', live)));
        Assert.Equal("", check.Error.Split('\n').FirstOrDefault(l => l.Contains(": error:", StringComparison.Ordinal), ""));
        Assert.Equal(0, check.ExitCode);
        Assert.Contains("Read, not used yet: burn, orbit", check.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("size")]
    [InlineData("run")]
    [InlineData("report")]
    public void A_result_never_replaces_the_case_it_comes_from(string verb)
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);

        Invocation run = Invocation.Of(verb, path, "--output", path);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("is the case file itself", run.Error, StringComparison.Ordinal);
        Assert.Equal(SampleCase.Text, File.ReadAllText(path));
    }

    [Fact]
    public void A_result_goes_to_the_file_named_and_leaves_standard_output_empty()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);
        string history = place.Write("history.csv", "old");

        Invocation run = Invocation.Of("run", path, "--output", history);

        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.StartsWith("time_s,", File.ReadAllText(history), StringComparison.Ordinal);
        Assert.Equal(["case.toml", "history.csv"], place.Files);
    }

    [Fact]
    public void A_place_that_cannot_be_written_is_told()
    {
        using var place = new Workplace();
        string path = place.Write("case.toml", SampleCase.Text);

        foreach ((string target, string says) in new[] { (place.Root, "is a directory"), (place.PathOf("no/such/file.csv"), "its directory does not exist"), (Path.Combine(path, "file.csv"), "cannot be written") })
        {
            Invocation run = Invocation.Of("run", path, "--output", target);
            Assert.Equal(2, run.ExitCode);
            Assert.Contains(says, run.Error, StringComparison.Ordinal);
            Assert.Equal(["case.toml"], place.Files);
        }
    }

    [Fact]
    public void A_device_is_written_through_and_not_replaced_by_a_file()
    {
        if (!File.Exists("/dev/null"))
        {
            return;
        }

        using var place = new Workplace();
        Assert.Equal(0, Invocation.Of("run", place.Write("case.toml", SampleCase.Text), "--output", "/dev/null").ExitCode);
        Assert.Empty(File.ReadAllBytes("/dev/null"));
    }
}
