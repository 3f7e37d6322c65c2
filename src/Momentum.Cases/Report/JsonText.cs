using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Momentum.Cases.Report;

/// <summary>The one layout of JSON that is written: indented, UTF-8 as it is, numbers in full precision.</summary>
internal static class JsonText
{
    internal static JsonWriterOptions Layout { get; } = new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(JsonNode node)
    {
        using var text = new MemoryStream();
        using (var writer = new Utf8JsonWriter(text, Layout))
        {
            node.WriteTo(writer);
        }

        return Printable.Text(Encoding.UTF8.GetString(text.GetBuffer(), 0, (int)text.Length));
    }

    public static void Write(JsonNode node, Stream utf8)
    {
        utf8.Write(Encoding.UTF8.GetBytes(Of(node)));
    }

    public static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode)t)]);
}
