using System.Text.Json.Nodes;
using Momentum.Cases;
using Momentum.Cases.Report;

namespace Momentum.Tool.Commands;

/// <summary>Writes what went wrong to the error stream: a line each, or one JSON object under <c>--json</c>.</summary>
internal static class Messages
{
    /// <summary>The problems of a case file.</summary>
    public static void Write(Streams streams, IReadOnlyList<Problem> problems, ExitCode exitCode, bool json)
    {
        if (json)
        {
            var failure = new JsonObject { ["exit_code"] = (int)exitCode, ["problems"] = JsonReport.Of(problems) };
            streams.Error.WriteLine(JsonText.Of(failure));
            return;
        }

        foreach (Problem problem in problems)
        {
            WriteLine(streams, problem.ToString());
        }
    }

    /// <summary>One problem that has no place in a case file.</summary>
    public static void Write(Streams streams, string message, string remedy, ExitCode exitCode, bool json)
    {
        if (json)
        {
            Write(streams, [new Problem(Severity.Error, "", null, "", null, message, "", remedy)], exitCode, json);
            return;
        }

        string stop = message.EndsWith('.') || message.EndsWith('?') ? "" : ".";
        WriteLine(streams, $"momentum: error: {OneLine(message)}{stop} {OneLine(remedy)}".TrimEnd());
    }

    /// <summary>Warnings, and what was read without being used, beside a result.</summary>
    public static void WriteRemarks(Streams streams, IReadOnlyList<Problem> warnings, IReadOnlyList<string> notUsedYet)
    {
        foreach (Problem warning in warnings)
        {
            WriteLine(streams, warning.ToString());
        }

        if (notUsedYet.Count > 0)
        {
            WriteLine(streams, $"Read, not used yet: {string.Join(", ", notUsedYet)}.");
        }
    }

    /// <summary>One line, whatever is quoted in it: a name of a file or a part may hold the end of a line.</summary>
    public static void WriteLine(Streams streams, string text) => streams.Error.WriteLine(Printable.Line(text));

    private static string OneLine(string text) => text.ReplaceLineEndings(" ");
}
