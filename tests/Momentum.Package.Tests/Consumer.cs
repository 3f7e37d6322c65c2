namespace Momentum.Package.Tests;

/// <summary>A user's own console project, outside the repository, that knows Momentum by its package only.</summary>
internal sealed class Consumer
{
    private readonly string _folder;
    private readonly string _language;

    /// <summary>Lays the project out; nothing is restored yet.</summary>
    /// <param name="packages">The feed and version to take the library from.</param>
    /// <param name="name">The project's name, its own among the tests.</param>
    /// <param name="properties">MSBuild properties beside the usual ones, as XML.</param>
    /// <param name="items">MSBuild items beside the package reference, as XML.</param>
    /// <param name="language">The ending of the language's files: cs, or fs for F#.</param>
    internal Consumer(Packages packages, string name, string properties = "", string items = "", string language = "cs")
    {
        _language = language;
        _folder = Directory.CreateDirectory(Path.Combine(packages.Scratch, name)).FullName;

        // Empty, so that nothing above the folder is inherited.
        Write("Directory.Build.props", "<Project />");
        Write("Directory.Build.targets", "<Project />");
        Write("Directory.Packages.props", "<Project />");
        Write($"{name}.{language}proj", $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <InvariantGlobalization>true</InvariantGlobalization>
                <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
                <NuGetAudit>false</NuGetAudit>
                {properties}
              </PropertyGroup>
              <ItemGroup>
                <PackageReference Include="Momentum" Version="{packages.Version}" />
                {items}
              </ItemGroup>
            </Project>
            """);

        // Its own package folder, so that nothing packed is left among the user's; what the user has is read from there.
        string shared = Environment.GetEnvironmentVariable("NUGET_PACKAGES") ??
            Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        Write("nuget.config", $"""
            <configuration>
              <config><add key="globalPackagesFolder" value="{Path.Combine(Repository.Root, "artifacts", "consumer-packages")}" /></config>
              <fallbackPackageFolders><add key="shared" value="{shared}" /></fallbackPackageFolders>
              <packageSources><add key="packed" value="{packages.Feed}" /></packageSources>
              <packageSourceMapping>
                <packageSource key="packed"><package pattern="Momentum" /><package pattern="Momentum.Cases" /></packageSource>
                <packageSource key="nuget.org"><package pattern="*" /></packageSource>
              </packageSourceMapping>
            </configuration>
            """);
        Name = name;
    }

    /// <summary>The project's name, which is its program's too.</summary>
    internal string Name { get; }

    /// <summary>The names of the files that the build put beside the program.</summary>
    internal IEnumerable<string> OutputFiles => Directory.EnumerateFiles(Output, "*", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(Output, path));

    private string Output => Path.Combine(_folder, "bin", "Debug", "net10.0");

    /// <summary>Writes the program's one source file.</summary>
    internal Consumer With(string program)
    {
        Write($"Program.{_language}", program);
        return this;
    }

    /// <summary>Builds, and requires that it succeeds without a warning.</summary>
    internal string Builds() => DotNet.Succeeds(_folder, "build", "--verbosity", "quiet");

    /// <summary>Builds, and requires that it fails.</summary>
    internal string FailsToBuild() => DotNet.Fails(_folder, "build", "--verbosity", "quiet");

    /// <summary>Builds and runs, and gives what the program wrote.</summary>
    internal string BuildsAndRuns()
    {
        Builds();
        return DotNet.Succeeds(_folder, Path.Combine(Output, Name + ".dll"));
    }

    /// <summary>Lets the command-line formatter apply the fixes of one rule, as an editor would, and gives the source that results.</summary>
    internal string Applies(string rule)
    {
        DotNet.Succeeds(_folder, "format", "analyzers", "--no-restore", "--diagnostics", rule);
        return File.ReadAllText(Path.Combine(_folder, "Program.cs"));
    }

    /// <summary>Publishes as the project says, and gives what the tools said and the folder with the result.</summary>
    internal (string Output, string Folder) Publishes()
    {
        string destination = Path.Combine(_folder, "published");
        return (DotNet.Succeeds(_folder, "publish", "--verbosity", "quiet", "--output", destination), destination);
    }

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(_folder, file), text);
}
