using System.Globalization;
using System.Text;
using Momentum.Tool.Commands;
using Momentum.Tool.Files;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;

// Buffered, for a history has thousands of lines. A reader that goes away (a pipe into head) is no error.
var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
var output = new StreamWriter(new StandardStream(Console.OpenStandardOutput(), carriesResults: true), utf8, bufferSize: 1 << 16) { NewLine = "\n" };
var error = new StreamWriter(new StandardStream(Console.OpenStandardError(), carriesResults: false), utf8) { AutoFlush = true, NewLine = "\n" };
using Stream input = Console.OpenStandardInput();
return CommandLine.Run(args, new Streams(input, output, error, Console.IsErrorRedirected ? null : error) { OutputPath = OperatingSystem.IsLinux() ? "/dev/stdout" : null });
