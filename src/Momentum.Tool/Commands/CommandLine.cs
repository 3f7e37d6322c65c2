using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Invocation;
using Momentum.Cases;
using Momentum.Cases.Report.Composing;
using Momentum.Tool.Files;

namespace Momentum.Tool.Commands;

/// <summary>The program's verbs, and the one place where whatever goes wrong becomes a line and an exit code.</summary>
internal static class CommandLine
{
    private const string About = """
        Sizes, simulates, checks and reports a two-weight (yo-yo) de-spin from a case file.

        Example:
          momentum new case.toml && momentum size case.toml

        Results go to standard output, messages to standard error. With --json results are JSON in SI with the unit in each
        key, and errors are one JSON object on standard error with exit_code and problems.

        Exit codes:
          0  done, and every requirement is met
          1  done, but a requirement is not met or could not be judged
          2  the command line or the case file is at fault, or a file cannot be read or written
          3  the computation refused: not physical, no solution, not converged, a check of itself failed, time limit reached
          4  a defect of the program itself

        Flying weights, spinning bodies and loaded cords injure and kill. This is a computation and no permission: the range's
        and local safety rules and licensed practice come first.

        Shell completion: register momentum with the dotnet-suggest global tool, or ask momentum itself:
          momentum [suggest:12] "momentum che"
        """;

    /// <summary>Runs one command line.</summary>
    public static int Run(string[] args, Streams streams)
    {
        bool json = args.Contains("--json");

        // The one door out: whatever anybody's text holds, it steers no terminal.
        streams = streams with { Output = new PrintableWriter(streams.Output), Error = new PrintableWriter(streams.Error) };
        try
        {
            int exitCode = Invoke(args, streams, json);
            streams.Output.Flush();
            return exitCode;
        }
        catch (UsageException refusal)
        {
            Messages.Write(streams, refusal.Message, refusal.Remedy, ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }
        catch (TimeLimitException stop)
        {
            Messages.Write(streams, stop.Message, "Allow more with --time-limit, or ask for fewer --cases or --samples.", ExitCode.Refused, json);
            return (int)ExitCode.Refused;
        }
        catch (ComputationRefusedException refusal)
        {
            Messages.Write(streams, refusal.Message, "", ExitCode.Refused, json);
            return (int)ExitCode.Refused;
        }
        catch (Exception unforeseen)
        {
            Messages.Write(
                streams, $"unforeseen failure ({unforeseen.GetType().Name}{Where(unforeseen)}): {unforeseen.Message}",
                $"No result was written. This is a defect of momentum {AnswerReport.ToolVersion()}: please report it to the project with this line, the command line and the case file.", ExitCode.Defect, json);
            return (int)ExitCode.Defect;
        }
    }

    /// <summary>The member that threw, by which a report of the defect is told from others.</summary>
    private static string Where(Exception unforeseen) => unforeseen.TargetSite is { DeclaringType: { } type } site ? $" in {type.Name}.{site.Name}" : "";

    private static int Invoke(string[] args, Streams streams, bool json)
    {
        var root = new RootCommand(About)
        {
            NewCommand.Build(streams),
            CheckCommand.Build(streams),
            SizeCommand.Build(streams),
            RunCommand.Build(streams),
            ReportCommand.Build(streams),
            SchemaCommand.Build(streams),
        };

        // A file name beginning with @ is a file name here, not a list of further arguments.
        ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Action is ParseErrorAction || (parsed.Errors.Count > 0 && parsed.Action is null))
        {
            string command = parsed.CommandResult.Command == root ? "momentum" : $"momentum {parsed.CommandResult.Command.Name}";
            Messages.Write(streams, Fault(parsed), $"See {command} --help.", ExitCode.BadInput, json);
            return (int)ExitCode.BadInput;
        }

        return parsed.Invoke(new InvocationConfiguration { Output = streams.Output, Error = streams.Error, EnableDefaultExceptionHandler = false });
    }

    /// <summary>The case file that most verbs take, completed with the TOML files at hand.</summary>
    public static Argument<string> CaseArgument()
    {
        var argument = new Argument<string>("case") { Description = "The case file; - reads it from standard input." };
        argument.CompletionSources.Add(TomlFiles);
        argument.Validators.Add(result =>
        {
            // An unknown option would otherwise be taken for a file of that name.
            if (result.Tokens is [{ Value: ['-', _, ..] option }] && !File.Exists(option))
            {
                result.AddError($"\"{option}\" is no known option.");
            }
        });
        return argument;
    }

    /// <summary>The switch that every verb has.</summary>
    public static Option<bool> JsonOption() => new("--json") { Description = "Write the result as JSON: SI, with the unit in each key." };

    /// <summary>The option by which a user lets a case read meshes from another folder than its own.</summary>
    public static Option<string?> MeshesOption() => new("--meshes") { Description = "Let the case read mesh files from this folder and those below it too, not only from its own.", HelpName = "folder" };

    /// <summary>The folder of <see cref="MeshesOption"/> without links; null if none is named.</summary>
    /// <exception cref="UsageException">There is no such folder.</exception>
    public static string? MeshFolder(string? named) => named is null ? null
        : Directory.Exists(named) ? RealPath.Of(named)
        : throw new UsageException($"--meshes {named}: there is no such folder", "Check the path.");

    private static string Fault(ParseResult parsed)
    {
        if (parsed.UnmatchedTokens is [var token, ..])
        {
            Command command = parsed.CommandResult.Command;
            string? near = Nearest.To(token, command.Subcommands.Select(c => c.Name).Concat(command.Options.Select(o => o.Name)));
            string kind = command.Subcommands.Count > 0 && !token.StartsWith('-') ? "command" : "argument or option";
            return $"\"{Printable.Line(token)}\" is no known {kind}" + (near is null ? "" : $"; did you mean {near}?");
        }

        return parsed.Errors.Count > 0 ? Printable.Line(parsed.Errors[0].Message) : "no command was given";
    }

    private static IEnumerable<CompletionItem> TomlFiles(CompletionContext context)
    {
        string word = context.WordToComplete;
        string directory = Path.GetDirectoryName(word) is { Length: > 0 } given ? given : ".";
        return Directory.Exists(directory)
            ? Directory.EnumerateFiles(directory, Path.GetFileName(word) + "*.toml").Order(StringComparer.Ordinal).Take(100).Select(f => new CompletionItem(directory == "." ? Path.GetFileName(f) : f))
            : [];
    }
}
