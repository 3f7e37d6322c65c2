using System.CommandLine;
using System.Text;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum size</c>: answers the unknown of a case.</summary>
internal static class SizeCommand
{
    public static Command Build(Streams streams)
    {
        Argument<string> file = CommandLine.CaseArgument();
        Option<bool> json = CommandLine.JsonOption();
        Option<string?> output = CaseRun.OutputOption("the answer");
        var format = new Option<string>("--format") { Description = "How the answer is written.", DefaultValueFactory = _ => ReportFormat.All[0].Name, HelpName = string.Join('|', ReportFormat.All.Select(f => f.Name)) };
        format.AcceptOnlyFromAmong([.. ReportFormat.All.Select(f => f.Name)]);
        var command = new Command("size", """
            Solves a case for its unknown (cord length, weight mass or final spin rate) and prints the answer. With
            forgive_spin_up = true under [despin.cord] it also sizes the springs in the cords.

            Example:
              momentum size case.toml --json | jq .cord_length_m
            """)
        {
            file, output, format, json,
        };
        (Option<int> cases, Option<ulong> seed) = CaseRun.SpreadOptionsOf(command);
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            bool asJson = parsed.GetValue(json);
            ReportFormat chosen = ReportFormat.All.Single(f => f.Name == (asJson ? "json" : parsed.GetValue(format)));
            return CaseRun.Of(streams, path, asJson, new SpreadOptions(parsed.GetValue(cases), parsed.GetValue(seed)), answer =>
            {
                using var result = new MemoryStream();
                chosen.Write(answer, result);
                CaseRun.Deliver(streams, parsed.GetValue(output), path, Encoding.UTF8.GetString(result.GetBuffer(), 0, (int)result.Length));
            });
        });
        return command;
    }
}
