using System.CommandLine;
using System.Text.Json.Nodes;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;
using Momentum.Cases.Report.Composing;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum report</c>: the answer as a page to read, print and sign.</summary>
internal static class ReportCommand
{
    public static Command Build(Streams streams)
    {
        Argument<string> file = CommandLine.CaseArgument();
        Option<bool> json = CommandLine.JsonOption();
        Option<string?> output = CaseRun.OutputOption("the page");
        var command = new Command("report", """
            Writes the answer as one HTML file that opens offline and prints: answer table to sign, pictures, an animation of
            the unwinding, assumptions, checks, cautions and inputs. With --json the answer itself goes to standard output.

            Example:
              momentum report case.toml --output report.html
            """)
        {
            file, output, json,
        };
        (Option<int> cases, Option<ulong> seed) = CaseRun.SpreadOptionsOf(command);
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            string? page = parsed.GetValue(output);
            bool asJson = parsed.GetValue(json);
            if (asJson && page is null or "-")
            {
                throw new UsageException("with --json the page needs a file of its own", "Name it, for example --output report.html.");
            }

            return CaseRun.Of(streams, path, asJson, new SpreadOptions(parsed.GetValue(cases), parsed.GetValue(seed)), answer =>
            {
                CaseRun.Deliver(streams, page, path, HtmlReport.Render(AnswerReport.Of(answer)));
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
