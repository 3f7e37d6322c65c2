using System.Globalization;
using System.Text;
using Momentum.Tool.Commands;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;

// Buffered, for a history has thousands of lines; flushed at the end. A reader that goes away (a pipe into head) is no error.
using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 1 << 16) { NewLine = "\n" };
using var error = new StreamWriter(Console.OpenStandardError(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true, NewLine = "\n" };
using Stream input = Console.OpenStandardInput();
int exitCode = CommandLine.Run(args, new Streams(input, output, error, IsTerminal: !Console.IsErrorRedirected));
try
{
    output.Flush();
}
catch (IOException failure)
{
    error.WriteLine($"momentum: error: the result could not be written to standard output: {failure.Message}");
    return (int)ExitCode.BadInput;
}

return exitCode;
