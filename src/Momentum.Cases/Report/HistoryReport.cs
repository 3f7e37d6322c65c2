using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Momentum.Cases.Answers;

namespace Momentum.Cases.Report;

/// <summary>Writes a motion against time, row by row as it is computed.</summary>
internal static class HistoryReport
{
    private const int Together = 1 << 16;

    /// <summary>As CSV: a line of column names, then one for each instant.</summary>
    public static void WriteCsv(History history, TextWriter text)
    {
        text.Write(string.Join(',', history.Columns));
        text.Write(",phase,event\n");
        var line = new StringBuilder();
        foreach (HistoryRow row in history.Rows)
        {
            line.Clear();
            foreach (double value in row.Values)
            {
                line.Append(CultureInfo.InvariantCulture, $"{value:R},");
            }

            line.Append(row.Phase).Append(',').Append(row.Event).Append('\n');
            foreach (ReadOnlyMemory<char> chunk in line.GetChunks())
            {
                text.Write(chunk.Span);
            }
        }
    }

    /// <summary>As JSON: the answer, and in it the history as a list for each column.</summary>
    public static void WriteJson(Answer answer, History history, TextWriter text)
    {
        // By columns, so that all numbers are kept until the last row is known; nothing else is.
        List<double>[] columns = [.. history.Columns.Select(_ => new List<double>(history.Count))];
        var phases = new List<string>(history.Count);
        var events = new List<string>(history.Count);
        foreach (HistoryRow row in history.Rows)
        {
            for (int i = 0; i < columns.Length; i++)
            {
                columns[i].Add(row.Values[i]);
            }

            phases.Add(row.Phase);
            events.Add(row.Event);
        }

        var buffer = new ArrayBufferWriter<byte>(2 * Together);
        using var json = new Utf8JsonWriter(buffer, JsonText.Layout);
        json.WriteStartObject();
        foreach ((string key, JsonNode? value) in JsonReport.Of(answer))
        {
            json.WritePropertyName(key);
            if (value is null)
            {
                json.WriteNullValue();
            }
            else
            {
                value.WriteTo(json);
            }
        }

        json.WriteStartObject("history");
        for (int i = 0; i < columns.Length; i++)
        {
            WriteList(history.Columns[i], columns[i], json.WriteNumberValue);
        }

        WriteList("phase", phases, json.WriteStringValue);
        WriteList("event", events, json.WriteStringValue);
        json.WriteEndObject();
        json.WriteEndObject();
        Pass();
        text.Write('\n');

        void WriteList<T>(string name, List<T> values, Action<T> write)
        {
            json.WriteStartArray(name);
            foreach (T value in values)
            {
                write(value);
                if (json.BytesPending > Together)
                {
                    Pass();
                }
            }

            json.WriteEndArray();
        }

        void Pass()
        {
            json.Flush();
            text.Write(Printable.Text(Encoding.UTF8.GetString(buffer.WrittenSpan)));
            buffer.ResetWrittenCount();
        }
    }
}
