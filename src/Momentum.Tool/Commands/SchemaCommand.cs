using System.CommandLine;
using Momentum.Cases;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum schema</c>: prints the JSON Schema of the case file.</summary>
internal static class SchemaCommand
{
    public static Command Build(Streams streams)
    {
        var command = new Command("schema", """
            Prints the JSON Schema of the case file, by which an editor completes and checks a case while you type.

            Example:
              momentum schema > momentum-case.schema.json
            """)
        {
            // Always JSON; the switch is taken so that scripts can give it to every verb.
            CommandLine.JsonOption(),
        };
        command.SetAction(_ =>
        {
            streams.Output.Write(CaseSchema.Write());
            return (int)ExitCode.Done;
        });
        return command;
    }
}
