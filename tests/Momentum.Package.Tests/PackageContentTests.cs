using System.IO.Compression;
using System.Xml.Linq;

namespace Momentum.Package.Tests;

/// <summary>What is in the packages, and nothing else.</summary>
[Collection(PackedOnce.Name)]
public sealed class PackageContentTests(Packages packages)
{
    private static readonly string[] _libraryAssemblies =
    [
        "analyzers/dotnet/cs/Momentum.Analyzers.dll",
        "analyzers/dotnet/cs/Momentum.CodeFixes.dll",
        "lib/net10.0/Momentum.dll",
    ];

    private static readonly string[] _libraryDependencies = ["MathNet.Numerics", "UnitsNet"];

    private static readonly string[] _casesAssemblies = ["lib/net10.0/Momentum.Cases.dll"];

    private static readonly string[] _casesDependencies = ["Momentum", "OxyPlot.Core", "Tomlyn"];

    private static readonly string[] _toolAssemblies =
    [
        "MathNet.Numerics.dll",
        "Momentum.Cases.dll",
        "Momentum.Tool.dll",
        "Momentum.dll",
        "OxyPlot.dll",
        "Spectre.Console.Ansi.dll",
        "Spectre.Console.dll",
        "System.CommandLine.dll",
        "Tomlyn.dll",
        "UnitsNet.dll",
    ];

    [Fact]
    public void The_library_package_holds_the_library_and_the_analyzer_and_no_other_assembly() =>
        Assert.Equal(_libraryAssemblies, Assemblies("Momentum"));

    [Fact]
    public void The_library_package_depends_on_what_the_library_needs_and_not_on_the_compiler() =>
        Assert.Equal(_libraryDependencies, Dependencies("Momentum"));

    [Fact]
    public void The_package_of_cases_holds_one_assembly_and_depends_on_the_library_and_on_no_console()
    {
        Assert.Equal(_casesAssemblies, Assemblies("Momentum.Cases"));
        Assert.Equal(_casesDependencies, Dependencies("Momentum.Cases"));
    }

    // Where a rule's link points to, in the package as in the repository.
    [Fact]
    public void The_library_package_holds_the_page_of_every_rule()
    {
        using ZipArchive archive = ZipFile.OpenRead(packages.File("Momentum"));
        IEnumerable<string> pages = Directory.EnumerateFiles(Path.Combine(Repository.Root, "analyzers", "docs"), "*.md").Select(page => "analyzers/docs/" + Path.GetFileName(page));
        Assert.Equal(pages.Order(StringComparer.Ordinal), archive.Entries.Select(e => e.FullName).Where(name => name.StartsWith("analyzers/docs/", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_tool_package_holds_the_tool_and_its_libraries_and_no_other_assembly() =>
        Assert.Equal(_toolAssemblies, Assemblies("Momentum.Tool").Select(path => path.Replace("tools/net10.0/any/", "", StringComparison.Ordinal)));

    [Fact]
    public void The_tool_package_names_the_command_momentum()
    {
        using ZipArchive archive = ZipFile.OpenRead(packages.File("Momentum.Tool"));
        using Stream stream = archive.GetEntry("tools/net10.0/any/DotnetToolSettings.xml")!.Open();
        Assert.Equal("momentum", (string?)XDocument.Load(stream).Descendants("Command").Single().Attribute("Name"));
    }

    [Theory]
    [InlineData("Momentum")]
    [InlineData("Momentum.Cases")]
    [InlineData("Momentum.Tool")]
    public void A_package_carries_its_licence_its_description_and_the_readme(string id)
    {
        XDocument nuspec = Nuspec(id);
        Assert.Equal("MIT", Value("license"));
        Assert.Equal("README.md", Value("readme"));
        Assert.NotEmpty(Value("description"));
        Assert.NotEmpty(Value("authors"));
        using ZipArchive archive = ZipFile.OpenRead(packages.File(id));
        using StreamReader readme = new(archive.GetEntry("README.md")!.Open());
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Root, "README.md")), readme.ReadToEnd());

        string Value(string name) => nuspec.Descendants().Single(e => e.Name.LocalName == name).Value;
    }

    [Fact]
    public void The_library_package_carries_the_documentation_that_editors_show()
    {
        using ZipArchive archive = ZipFile.OpenRead(packages.File("Momentum"));
        using Stream stream = archive.GetEntry("lib/net10.0/Momentum.xml")!.Open();
        IEnumerable<string?> members = XDocument.Load(stream).Descendants("member").Select(m => (string?)m.Attribute("name"));
        Assert.Contains("T:Momentum.Quantities.Vector`2", members);
    }

    private IEnumerable<string> Assemblies(string id)
    {
        using ZipArchive archive = ZipFile.OpenRead(packages.File(id));
        return [.. archive.Entries.Select(e => e.FullName).Where(name => Path.GetExtension(name) is ".dll" or ".exe" or ".so").Order(StringComparer.Ordinal)];
    }

    private IEnumerable<string> Dependencies(string id) =>
        Nuspec(id).Descendants().Where(e => e.Name.LocalName == "dependency").Select(e => (string)e.Attribute("id")!).Order(StringComparer.Ordinal);

    private XDocument Nuspec(string id)
    {
        using ZipArchive archive = ZipFile.OpenRead(packages.File(id));
        using Stream stream = archive.GetEntry(id + ".nuspec")!.Open();
        return XDocument.Load(stream);
    }
}
