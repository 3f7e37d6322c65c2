using System.Diagnostics;
using Momentum.Tool.Commands;

namespace Momentum.Tool.Tests.Files;

/// <summary>The real program in a shell, where it is called <c>momentum</c>.</summary>
internal static class ToolProcess
{
    /// <summary>Runs a shell command in a folder.</summary>
    public static (int ExitCode, string Output, string Error) Shell(string command, string folder)
    {
        var start = new ProcessStartInfo("/bin/sh", ["-c", "momentum() { dotnet \"$0\" \"$@\"; }\n" + command, typeof(CommandLine).Assembly.Location])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
