using System.Globalization;
using System.Text.Json.Nodes;
using Json.Schema;
using Momentum.Cases;
using Momentum.Cases.Syntax;

namespace Momentum.Tool.Tests.Cases;

/// <summary>The published schema is what the program's own description of the keys says, and judges cases as the program does.</summary>
public sealed class CaseSchemaTests
{
    private static readonly JsonSchema _schema = JsonSchema.FromText(CaseSchema.Write());

    public static TheoryData<string> Examples => [.. Repository.Examples.Select(f => Path.GetFileName(f)!)];

    [Fact]
    public void The_schema_in_the_repository_is_the_one_that_the_program_prints()
    {
        string published = File.ReadAllText(Path.Combine(Repository.Cases, "case.schema.json"));

        Assert.Equal(Invocation.Of("schema").Output, published);
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void The_schema_accepts_every_example(string example) =>
        AssertAccepts(File.ReadAllText(Path.Combine(Repository.ExamplesFolder, example)));

    [Fact]
    public void The_schema_accepts_the_starter_case() => AssertAccepts(StarterCase.Write());

    [Theory]
    [InlineData("\"420 mm +/- 0.2 mm max\"", "420")]
    [InlineData("\"420 mm +/- 0.2 mm max\"", "\"420\"")]
    [InlineData("\"420 mm +/- 0.2 mm max\"", "\"420,5 mm\"")]
    [InlineData("\"420 mm +/- 0.2 mm max\"", "\"420 mm +/-\"")]
    [InlineData("\"420 mm +/- 0.2 mm max\"", "\"NaN mm\"")]
    [InlineData("hub_radius ", "hub_raduis ")]
    [InlineData("weights     = 2", "weights = 1")]
    [InlineData("weights     = 2", "weights = 2.5")]
    [InlineData("let_go      = \"radial\"", "let_go = \"radail\"")]
    [InlineData("let_go      = \"radial\"", "let_go = { corner = \"5 deg\" }")]
    [InlineData("cord_safety_factor = \"> 3\"", "cord_safety_factor = \"3\"")]
    [InlineData("spin_axis     = \"z\"", "spin_axis = \"w\"")]
    [InlineData("format = 1", "format = 2")]
    [InlineData("[\"0 mm\", \"0 mm\", \"250 mm\"]", "[\"0 mm\", \"250 mm\"]")]
    public void The_schema_refuses_what_the_program_refuses(string piece, string replacement)
    {
        string text = SampleCase.With(piece, replacement);

        Assert.Equal(2, Invocation.WithInput(text, "check", "-").ExitCode);
        Assert.False(Evaluate(text));
    }

    [Fact]
    public void The_schema_refuses_the_sample_without_any_one_of_its_required_keys()
    {
        foreach (string key in new[] { "title  =", "spin_axis ", "rate ", "hub_radius ", "weights ", "let_go " })
        {
            string text = string.Join('\n', SampleCase.Text.Split('\n').Where(line => !line.StartsWith(key, StringComparison.Ordinal)));

            Assert.Equal(2, Invocation.WithInput(text, "check", "-").ExitCode);
            Assert.False(Evaluate(text), key);
        }
    }

    private static void AssertAccepts(string toml)
    {
        Assert.True(Evaluate(toml));
        Assert.InRange(Invocation.WithInput(toml, "check", "-").ExitCode, 0, 0);
    }

    private static bool Evaluate(string toml)
    {
        TomlTable table = TomlReader.Read(toml, out _)!;
        return _schema.Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(Json(table))).IsValid;
    }

    private static JsonNode Json(TomlNode node) => node switch
    {
        TomlText text => JsonValue.Create(text.Value),
        TomlScalar { Kind: TomlScalarKind.Truth } truth => JsonValue.Create(truth.Text == "true"),
        TomlScalar { Kind: TomlScalarKind.Whole } whole => JsonValue.Create(long.Parse(whole.Text, CultureInfo.InvariantCulture)),
        TomlScalar { Kind: TomlScalarKind.Decimal } number => JsonValue.Create(double.Parse(number.Text, CultureInfo.InvariantCulture)),
        TomlScalar date => JsonValue.Create(date.Text),
        TomlList list => new JsonArray([.. list.Items.Select(Json)]),
        TomlTable table => new JsonObject(table.Entries.Select(e => KeyValuePair.Create<string, JsonNode?>(e.Key, Json(e.Value.Value)))),
        _ => throw new ArgumentOutOfRangeException(nameof(node)),
    };
}
