using System.CommandLine;
using Momentum.Cases.Answers;
using Momentum.Cases.Report;
using Momentum.Tool.Files;

namespace Momentum.Tool.Commands;

/// <summary><c>momentum check</c>: reads and judges a case without sizing it.</summary>
internal static class CheckCommand
{
    public static Command Build(Streams streams)
    {
        Argument<string> file = CommandLine.CaseArgument();
        Option<bool> json = CommandLine.JsonOption();
        Option<string?> meshes = CommandLine.MeshesOption();
        var command = new Command("check", """
            Reads a case and judges it: spelling, units, missing and contradicting keys, and whether the body is physical and
            goes with the hub. It computes no de-spin; for that see size.

            Example:
              momentum check case.toml
            """)
        {
            file, json, meshes,
        };
        command.SetAction(parsed => Check(streams, parsed.GetRequiredValue(file), CommandLine.MeshFolder(parsed.GetValue(meshes)), parsed.GetValue(json)));
        return command;
    }

    private static int Check(Streams streams, string path, string? meshFolder, bool json)
    {
        var judgement = Judgement.Of(CaseFile.Read(path, streams.Input, meshFolder).Reading);
        if (judgement.HasErrors)
        {
            Messages.Write(streams, judgement.Problems, ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }

        if (json)
        {
            streams.Output.WriteLine(JsonText.Of(JsonReport.Of(judgement)));
        }
        else
        {
            streams.Output.Write(TextReport.Of(judgement));
            Messages.WriteRemarks(streams, judgement.Problems, judgement.Reading.NotUsedYet);
        }

        return (int)ExitCode.Done;
    }
}
