using System.CommandLine;
using System.Text.Json.Nodes;
using Momentum.Cases;
using Momentum.Cases.Report;
using Momentum.Tool.Files;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum new</c>: writes the starter case.</summary>
internal static class NewCommand
{
    public static Command Build(Streams streams)
    {
        var file = new Argument<string>("file") { Description = "The case file to write; - writes it to standard output." };
        var force = new Option<bool>("--force") { Description = "Replace the file if it exists." };
        Option<bool> json = CommandLine.JsonOption();
        var command = new Command("new", """
            Writes a commented case file to start from. Its vehicle is invented; every key of the format is explained in it.

            Example:
              momentum new case.toml
            """)
        {
            file, force, json,
        };
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            var destination = Destination.Of(path, streams, replace: parsed.GetValue(force));
            destination.Write(StarterCase.Write());
            if (destination.IsStandardOutput)
            {
                return (int)ExitCode.Done;
            }

            if (parsed.GetValue(json))
            {
                streams.Output.WriteLine(JsonText.Of(new JsonObject { ["written"] = path }));
            }
            else
            {
                Messages.WriteLine(streams, $"Wrote {path}. Edit it, then: momentum check {path}");
            }

            return (int)ExitCode.Done;
        });
        return command;
    }
}
