using Momentum.Cases.Answers;

namespace Momentum.Cases.Report;

/// <summary>An output format: a writer over the one tree of an answer. A new one is a file of its own here and a line below.</summary>
/// <param name="Name">The name by which it is asked for.</param>
/// <param name="Write">Writes an answer to a stream, as UTF-8.</param>
public sealed record ReportFormat(string Name, Action<Answer, Stream> Write)
{
    /// <summary>Every format.</summary>
    public static IReadOnlyList<ReportFormat> All { get; } =
    [
        new("text", TextReport.Write),
        new("json", JsonReport.Write),
        new("csv", CsvReport.Write),
        new("html", HtmlReport.Write),
    ];
}
