using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;

namespace Momentum.Cases;

/// <summary>The JSON Schema (draft 2020-12) of the case file, by which editors complete and check it.</summary>
public static class CaseSchema
{
    private const string Number = QuantityText.NumberPattern;

    private static readonly JsonSerializerOptions _layout = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema's text, ending in a line feed.</summary>
    public static string Write()
    {
        JsonObject schema = SectionSchema(SectionDescription.Of(typeof(Case)));
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "$id", $"urn:momentum:case:{Case.CurrentFormat.ToString(CultureInfo.InvariantCulture)}");
        schema.Insert(2, "title", "Momentum de-spin case");
        return schema.ToJsonString(_layout).ReplaceLineEndings("\n") + "\n";
    }

    private static JsonObject SectionSchema(SectionDescription section)
    {
        var properties = new JsonObject();
        foreach (KeyDescription key in section.Keys)
        {
            properties[key.Name] = KeySchema(key);
        }

        var schema = new JsonObject { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = properties };
        if (section.Keys.Any(k => k.Required))
        {
            schema["required"] = new JsonArray([.. section.Keys.Where(k => k.Required).Select(k => JsonValue.Create(k.Name))]);
        }

        return schema;
    }

    private static JsonObject KeySchema(KeyDescription key)
    {
        JsonObject schema = key.Form switch
        {
            KeyForm.Text => new JsonObject { ["type"] = "string", ["minLength"] = 1 },
            KeyForm.Texts => new JsonObject { ["type"] = "array", ["items"] = new JsonObject { ["type"] = "string" } },
            KeyForm.Truth => new JsonObject { ["type"] = "boolean" },
            KeyForm.Count => CountSchema(key),
            KeyForm.Choice => new JsonObject { ["enum"] = new JsonArray([.. key.Choices.Select(c => JsonValue.Create(c))]) },
            KeyForm.Quantity => QuantitySchema(key.Quantity!),
            KeyForm.Limit => new JsonObject { ["type"] = "string", ["pattern"] = $@"^\s*{(key.AllowsBand ? "([<>]=?)?" : "[<>]=?")}\s*{Number}{UnitPattern(key.Quantity!)}\s*$" },
            KeyForm.Triple => new JsonObject { ["type"] = "array", ["items"] = QuantitySchema(key.Quantity!), ["minItems"] = key.Length, ["maxItems"] = key.Length },
            KeyForm.Sections => new JsonObject { ["type"] = "array", ["items"] = SectionSchema(SectionDescription.Of(key.ValueType)) },
            _ => NestedSchema(SectionDescription.Of(key.ValueType)),
        };
        schema["description"] = key.Doc + (key.NotUsedYet ? " Read and checked, not used yet." : "") + (key.Quantity is null ? "" : $" Allowed: {key.Allowed}.");
        if (key.Example.Length > 0)
        {
            // A key's example is TOML, whose texts, lists, numbers and truth values are JSON as well.
            schema["examples"] = new JsonArray(JsonNode.Parse(key.Example));
        }

        return schema;
    }

    private static JsonObject CountSchema(KeyDescription key)
    {
        var schema = new JsonObject { ["type"] = "integer" };
        if (key.AtLeast is { } least)
        {
            schema["minimum"] = int.Parse(least, CultureInfo.InvariantCulture);
        }

        if (key.AtMost is { } most)
        {
            schema["maximum"] = int.Parse(most, CultureInfo.InvariantCulture);
        }

        return schema;
    }

    private static JsonObject NestedSchema(SectionDescription section) => section.Shorthand is { } shorthand
        ? new JsonObject { ["anyOf"] = new JsonArray(KeySchema(shorthand), SectionSchema(section)) }
        : SectionSchema(section);

    /// <summary>A text with its tolerances, or measured values; a ratio may be a bare number too, for it has no unit to leave out.</summary>
    private static JsonObject QuantitySchema(QuantityKind kind) => new()
    {
        ["type"] = kind.SiUnit == "1" ? new JsonArray("string", "number", "object") : new JsonArray("string", "object"),
        ["pattern"] = $@"^\s*{Number}{UnitPattern(kind)}{(kind.SiUnit == "1" ? $@"(\s+to\s+{Number}\s*%?)?" : "")}\s*((\+/-|±|\+)\s*{Number}.*)?$",
        ["required"] = new JsonArray("samples", "column", "unit"),
        ["additionalProperties"] = false,
        ["properties"] = new JsonObject { ["samples"] = Text(), ["column"] = Text(), ["unit"] = Text() },
    };

    private static JsonObject Text() => new() { ["type"] = "string" };

    /// <summary>That a unit is there, not which: the program knows too many spellings for a pattern that a person could read.</summary>
    private static string UnitPattern(QuantityKind kind) => kind.SiUnit == "1" ? @"\s*%?" : @"\s*[^\s\d+±,.][^+±,]*";
}
