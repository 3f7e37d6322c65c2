using System.CommandLine;
using System.Text.Json.Nodes;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Composing;
using Momentum.Tool.Files;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum report</c>: the answer as a page to read, print and sign.</summary>
internal static class ReportCommand
{
    public static Command Build(Streams streams)
    {
        var command = new Command("report", """
            Writes the answer as one HTML file that opens offline and prints: answer table to sign, pictures, an animation of
            the unwinding, assumptions, checks, cautions and inputs. With --json the answer itself goes to standard output.

            Example:
              momentum report case.toml --output report.html
            """);
        var run = new CaseRun(command, "the page");
        command.SetAction(parsed =>
        {
            bool asJson = run.IsJson(parsed);
            string? page = run.Output(parsed);
            if (asJson && Destination.Of(page, streams).IsStandardOutput)
            {
                throw new UsageException("with --json the page needs a file of its own", "Name it, for example --output report.html.");
            }

            return run.Of(
                streams, parsed,
                (answer, _) =>
                {
                    string html = HtmlReport.Render(AnswerReport.Of(answer));
                    return writer => writer.Write(html);
                },
                answer =>
                {
                    if (asJson)
                    {
                        JsonObject result = JsonReport.Of(answer);
                        result["report"] = page;
                        streams.Output.Write(JsonText.Of(result) + "\n");
                    }
                });
        });
        return command;
    }
}
