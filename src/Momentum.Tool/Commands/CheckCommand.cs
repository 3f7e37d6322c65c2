using System.CommandLine;
using Momentum.Tool.Cases;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum check</c>: reads and judges a case without sizing it.</summary>
internal static class CheckCommand
{
    public static Command Build(Streams streams)
    {
        Argument<string> file = CommandLine.CaseArgument();
        Option<bool> json = CommandLine.JsonOption();
        var command = new Command("check", """
            Reads a case and judges it: spelling, units, missing and contradicting keys, and whether the body is physical.

            Example:
              momentum check case.toml
            """)
        {
            file, json,
        };
        command.SetAction(parsed =>
        {
            CaseReading reading = CaseReader.Read(parsed.GetRequiredValue(file), streams.Input);
            if (reading.Case is null)
            {
                Messages.Write(streams, reading.Problems, ExitCode.BadInput, parsed.GetValue(json));
                return (int)ExitCode.BadInput;
            }

            streams.Output.WriteLine("ok");
            return (int)ExitCode.Done;
        });
        return command;
    }
}
