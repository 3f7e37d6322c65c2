using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Momentum.Package.Tests;

/// <summary>Runs programs as a user's shell would, apart from the test run that starts them.</summary>
internal static class DotNet
{
    private static readonly TimeSpan _patience = TimeSpan.FromMinutes(8);

    /// <summary>Runs the <c>dotnet</c> command in a folder and requires success.</summary>
    internal static string Succeeds(string folder, params string[] arguments)
    {
        (int exit, string output) = Run(folder, "dotnet", arguments);
        Assert.True(exit == 0, string.Create(CultureInfo.InvariantCulture, $"dotnet {string.Join(' ', arguments)} ended with {exit}:\n{output}"));
        return output;
    }

    /// <summary>Runs the <c>dotnet</c> command in a folder and requires failure.</summary>
    internal static string Fails(string folder, params string[] arguments)
    {
        (int exit, string output) = Run(folder, "dotnet", arguments);
        Assert.True(exit != 0, $"dotnet {string.Join(' ', arguments)} should have failed:\n{output}");
        return output;
    }

    /// <summary>Runs a program and gives its exit code and all that it wrote.</summary>
    internal static (int ExitCode, string Output) Run(string folder, string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };

        // What the running test host was told about its own build must not reach another one.
        foreach (string name in start.Environment.Keys.Where(IsOfThisBuild).ToArray())
        {
            start.Environment.Remove(name);
        }

        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["DOTNET_NOLOGO"] = "1";
        start.Environment["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1";

        // A build server left behind would keep the output pipe open, and the wait below would not end.
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        start.Environment["DOTNET_CLI_USE_MSBUILD_SERVER"] = "0";
        start.Environment["UseSharedCompilation"] = "false";

        StringBuilder output = new();
        using Process process = new() { StartInfo = start };
        process.OutputDataReceived += Append;
        process.ErrorDataReceived += Append;
        process.Start();
        process.StandardInput.Close();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        if (!process.WaitForExit(_patience))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"{program} {string.Join(' ', arguments)} did not end within {_patience}:\n{output}");
        }

        process.WaitForExit();
        return (process.ExitCode, output.ToString());

        void Append(object sender, DataReceivedEventArgs line)
        {
            lock (output)
            {
                output.Append(line.Data).Append(line.Data is null ? "" : "\n");
            }
        }
    }

    private static bool IsOfThisBuild(string variable) =>
        variable.StartsWith("MSBUILD", StringComparison.OrdinalIgnoreCase) ||
        variable.StartsWith("VSTEST", StringComparison.OrdinalIgnoreCase) ||
        variable.Equals("DOTNET_HOST_PATH", StringComparison.OrdinalIgnoreCase) ||
        variable.Equals("CI", StringComparison.OrdinalIgnoreCase);
}
