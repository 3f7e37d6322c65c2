using System.CommandLine;
using System.Text;
using Momentum.Cases.Report;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum size</c>: answers the unknown of a case.</summary>
internal static class SizeCommand
{
    public static Command Build(Streams streams)
    {
        var format = new Option<string>("--format") { Description = "How the answer is written.", DefaultValueFactory = _ => ReportFormat.All[0].Name, HelpName = string.Join('|', ReportFormat.All.Select(f => f.Name)) };
        format.AcceptOnlyFromAmong([.. ReportFormat.All.Select(f => f.Name)]);
        var command = new Command("size", """
            Solves a case for its unknown (cord length, weight mass or final spin rate) and prints the answer. With
            forgive_spin_up = true under [despin.cord] it also sizes the springs in the cords.

            Example:
              momentum size case.toml --json | jq .cord_length_m
            """)
        {
            format,
        };
        var run = new CaseRun(command, "the answer");
        command.SetAction(parsed =>
        {
            ReportFormat chosen = ReportFormat.All.Single(f => f.Name == (run.IsJson(parsed) ? "json" : parsed.GetValue(format)));
            return run.Of(streams, parsed, (answer, _) =>
            {
                using var result = new MemoryStream();
                chosen.Write(answer, result);
                string text = Encoding.UTF8.GetString(result.GetBuffer(), 0, (int)result.Length);
                return writer => writer.Write(text);
            });
        });
        return command;
    }
}
