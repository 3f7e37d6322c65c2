using System.Text;
using System.Text.Json.Nodes;
using Momentum.Tool.Commands;

namespace Momentum.Tool.Tests;

/// <summary>One run of the program's entry point in this process, with its streams captured.</summary>
internal sealed record Invocation(int ExitCode, string Output, string Error)
{
    public JsonNode Json => JsonNode.Parse(Output)!;

    public static Invocation Of(params string[] args) => WithInput("", args);

    public static Invocation WithInput(string input, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var stdin = new MemoryStream(Encoding.UTF8.GetBytes(input));
        int exitCode = CommandLine.Run(args, new Streams(stdin, output, error));
        return new Invocation(exitCode, output.ToString(), error.ToString());
    }
}
