using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Momentum.Tool.Commands;

/// <summary>The one layout of JSON that the program writes: indented, UTF-8 as it is, numbers in full precision.</summary>
internal static class JsonText
{
    private static readonly JsonSerializerOptions _layout = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(JsonNode node) => node.ToJsonString(_layout);
}
