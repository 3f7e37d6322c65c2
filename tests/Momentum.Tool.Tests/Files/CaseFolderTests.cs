namespace Momentum.Tool.Tests.Files;

/// <summary>A case reads plain files in its own folder, and others only if the user says so.</summary>
public sealed class CaseFolderTests
{
    [Fact]
    public void A_mesh_in_the_folder_of_the_case_or_below_it_is_read()
    {
        using var place = new Workplace();
        Directory.CreateDirectory(place.PathOf("meshes"));
        place.Write("meshes/cube.stl", MeshCase.Cube);
        place.Write("cube.stl", MeshCase.Cube);

        foreach (string name in new[] { "cube.stl", "meshes/cube.stl", "meshes/../cube.stl" })
        {
            Invocation run = Invocation.Of("check", place.Write("case.toml", MeshCase.Naming(name)));
            Assert.True(run.ExitCode == 0, run.Error);
        }
    }

    [UnixFact]
    public void A_mesh_that_leads_out_of_the_folder_is_refused_whether_it_is_there_or_not()
    {
        using var place = new Workplace();
        Directory.CreateDirectory(place.PathOf("cases"));
        Directory.CreateDirectory(place.PathOf("cases-too"));
        place.Write("secret.stl", MeshCase.Cube);
        place.Write("cases-too/secret.stl", MeshCase.Cube);
        File.CreateSymbolicLink(place.PathOf("cases/link.stl"), "../secret.stl");
        File.CreateSymbolicLink(place.PathOf("cases/out"), "..");

        foreach (string name in new[] { "../secret.stl", "../missing.stl", place.PathOf("secret.stl"), "link.stl", "out/secret.stl", "../cases-too/secret.stl", "/dev/zero", "/proc/self/environ" })
        {
            Invocation run = Invocation.Of("check", place.Write("cases/case.toml", MeshCase.Naming(name)));

            Assert.Equal(2, run.ExitCode);
            Assert.Contains("lies outside the case file's folder", run.Error, StringComparison.Ordinal);
            Assert.Contains("--meshes", run.Error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("check")]
    [InlineData("size")]
    public void A_mesh_of_another_folder_is_read_if_the_user_names_the_folder(string verb)
    {
        using var place = new Workplace();
        Directory.CreateDirectory(place.PathOf("cases"));
        Directory.CreateDirectory(place.PathOf("meshes"));
        place.Write("meshes/cube.stl", MeshCase.Cube);
        string path = place.Write("cases/case.toml", MeshCase.Naming("../meshes/cube.stl"));

        Assert.Equal(2, Invocation.Of(verb, path).ExitCode);
        Invocation run = Invocation.Of(verb, path, "--meshes", place.PathOf("meshes"));
        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("there is no such folder", Invocation.Of(verb, path, "--meshes", place.PathOf("mehses")).Error, StringComparison.Ordinal);
    }

    [LinuxFact]
    public void A_pipe_for_a_mesh_is_refused_and_waits_for_nobody()
    {
        using var place = new Workplace();
        place.Write("case.toml", MeshCase.Naming("cube.stl"));

        (int exitCode, string _, string error) = ToolProcess.Shell("mkfifo cube.stl; timeout 60 dotnet \"$0\" check case.toml", place.Root);

        Assert.Equal(2, exitCode);
        Assert.Contains("not a plain file", error, StringComparison.Ordinal);
    }
}
