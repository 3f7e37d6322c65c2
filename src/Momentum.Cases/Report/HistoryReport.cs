using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Momentum.Cases.Answers;

namespace Momentum.Cases.Report;

/// <summary>Writes a motion against time.</summary>
internal static class HistoryReport
{
    /// <summary>As CSV: a line of column names, then one for each instant.</summary>
    public static string Csv(History history)
    {
        var text = new StringBuilder();
        text.AppendJoin(',', history.Columns).Append(",phase,event\n");
        foreach (HistoryRow row in history.Rows)
        {
            foreach (double value in row.Values)
            {
                text.Append(CultureInfo.InvariantCulture, $"{value:R},");
            }

            text.Append(row.Phase).Append(',').Append(row.Event).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>As JSON: a list for each column.</summary>
    public static JsonObject Json(History history)
    {
        var columns = new JsonObject();
        foreach ((int index, string column) in history.Columns.Index())
        {
            columns[column] = new JsonArray([.. history.Rows.Select(r => (JsonNode)r.Values[index])]);
        }

        columns["phase"] = JsonText.Texts(history.Rows.Select(r => r.Phase));
        columns["event"] = JsonText.Texts(history.Rows.Select(r => r.Event));
        return columns;
    }
}
