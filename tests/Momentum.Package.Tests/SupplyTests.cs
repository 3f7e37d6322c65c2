using System.IO.Compression;
using System.Text.Json.Nodes;
using System.Xml.Linq;

namespace Momentum.Package.Tests;

/// <summary>Where what we build from and ship comes from, and that the package says so.</summary>
[Collection(PackedOnce.Name)]
public sealed class SupplyTests(Packages packages)
{
    private const string InTool = "tools/net10.0/any/";

    private static IEnumerable<string> Projects => Directory.EnumerateFiles(Repository.Root, "*.csproj", SearchOption.AllDirectories)
        .Where(path => !Path.GetRelativePath(Repository.Root, path).Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj" or "artifacts"));

    [Fact]
    public void Every_project_has_what_it_is_restored_from_on_record_without_a_host()
    {
        Assert.NotEmpty(Projects);
        Assert.All(Projects, project =>
        {
            string record = File.ReadAllText(Path.Combine(Path.GetDirectoryName(project)!, "packages.lock.json"));
            Assert.Contains("contentHash", record, StringComparison.Ordinal);
            Assert.DoesNotContain("://", record, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void One_public_feed_is_asked_whatever_else_a_machine_has_set_up()
    {
        XElement sources = XDocument.Load(Path.Combine(Repository.Root, "nuget.config")).Root!.Element("packageSources")!;

        Assert.Equal(["clear", "add"], sources.Elements().Select(e => e.Name.LocalName));
        Assert.Equal("https://api.nuget.org/v3/index.json", (string?)sources.Element("add")!.Attribute("value"));
    }

    [Fact]
    public void The_tool_carries_the_notice_of_every_library_in_it()
    {
        string[] notices = Text("THIRD-PARTY-NOTICES.txt").Split('\n');

        Assert.NotEmpty(Shipped());
        Assert.All(Shipped(), library => Assert.Contains(library.Id, notices));
    }

    [Fact]
    public void The_tool_carries_a_bill_of_materials_that_names_every_library_and_version_and_no_hour()
    {
        string text = Text("bom.cdx.json");
        JsonNode bill = JsonNode.Parse(text)!;
        (string Id, string Version)[] components = [.. bill["components"]!.AsArray().Select(c => ((string)c!["name"]!, (string)c["version"]!))];

        Assert.Equal("CycloneDX", (string?)bill["bomFormat"]);
        Assert.Equal("Momentum.Tool", (string?)bill["metadata"]!["component"]!["name"]);
        Assert.All(Shipped(), library => Assert.Contains(library, components));
        Assert.DoesNotContain("timestamp", text, StringComparison.Ordinal);
    }

    /// <summary>The packages whose assemblies the tool's package holds, by its own list.</summary>
    private (string Id, string Version)[] Shipped() =>
    [
        .. from library in JsonNode.Parse(Text(InTool + "Momentum.Tool.deps.json"))!["libraries"]!.AsObject()
           where (string?)library.Value!["type"] == "package"
           let parts = library.Key.Split('/')
           select (parts[0], parts[1]),
    ];

    private string Text(string entry)
    {
        using ZipArchive archive = ZipFile.OpenRead(packages.File("Momentum.Tool"));
        using StreamReader reader = new(archive.GetEntry(entry)!.Open());
        return reader.ReadToEnd();
    }
}
