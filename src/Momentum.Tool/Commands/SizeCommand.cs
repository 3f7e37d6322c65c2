using System.CommandLine;
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
        var command = new Command("size", """
            Solves a case for its unknown (cord length, weight mass or final spin rate) and prints the answer. With
            forgive_spin_up = true under [despin.cord] it also sizes the springs in the cords.

            Example:
              momentum size case.toml --json | jq .cord_length_m
            """)
        {
            file, output, json,
        };
        (Option<int> cases, Option<ulong> seed) = CaseRun.SpreadOptionsOf(command);
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            bool asJson = parsed.GetValue(json);
            return CaseRun.Of(streams, path, asJson, new SpreadOptions(parsed.GetValue(cases), parsed.GetValue(seed)), answer => CaseRun.Deliver(
                streams, parsed.GetValue(output), path, asJson ? JsonText.Of(JsonReport.Of(answer)) + "\n" : TextReport.Of(answer)));
        });
        return command;
    }
}
