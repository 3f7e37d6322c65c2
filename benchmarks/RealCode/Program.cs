using System.Globalization;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;
using RealCode;

// What the analyzer says of code that others wrote: how often it is right there.
//   dotnet run -c Release -- <folder of checkouts> [--ledger <file>] [--analyzer <Momentum.Analyzers.dll or the package>] [--off] [--fast] [--only <part of a path>]
// Nothing is fetched: the folder holds one checkout a sub-folder. Every project folder in it is compiled as far as it binds
// against this run's framework, UnitsNet and MathNet.Numerics; a project that references another sees it as a compilation,
// as an editor does. Each report is printed with its verdict from the ledger, and how often the reports were right.
// --off turns on the rules that are off by default; --fast binds only what the analyzer asks for and counts no binding errors.
if (args.Length == 0 || !Directory.Exists(args[0]))
{
    Console.Error.WriteLine("State a folder that holds one checkout a sub-folder: dotnet run -c Release -- <folder> [--ledger <file>] [--analyzer <dll or package>] [--off] [--fast] [--only <part of a path>]");
    return 1;
}

string root = Path.GetFullPath(args[0]);
string? Option(string name) => Array.IndexOf(args, name) is >= 0 and int at && at + 1 < args.Length ? args[at + 1] : null;
Ledger ledger = Ledger.Read(Option("--ledger"));
DiagnosticAnalyzer analyzer = Loading.Analyzer(Option("--analyzer"));
Dictionary<string, ReportDiagnostic> severities = args.Contains("--off")
    ? analyzer.SupportedDiagnostics.Where(d => !d.IsEnabledByDefault).ToDictionary(d => d.Id, _ => ReportDiagnostic.Info)
    : [];
List<Finding> all = [];
foreach (string folder in Directory.EnumerateDirectories(root).Order(StringComparer.Ordinal))
{
    if (Option("--only") is { } only && !folder.Contains(only, StringComparison.OrdinalIgnoreCase))
    {
        continue;
    }

    Checkout checkout = new(folder, severities);
    List<Finding> found = await checkout.Analyze(analyzer, countErrors: !args.Contains("--fast"));
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"# {checkout.Name}: {checkout.Files} files, {checkout.Lines} lines, {checkout.Errors} binding errors, {found.Count} reports"));
    foreach (Finding finding in found.OrderBy(f => f.Rule, StringComparer.Ordinal).ThenBy(f => f.Path, StringComparer.Ordinal).ThenBy(f => f.Line))
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{ledger.Of(finding),-9} {finding.Rule} {finding.Checkout}/{finding.Path}:{finding.Line}: {finding.Text}"));
    }

    all.AddRange(found);
}

Console.WriteLine();
Console.Write(Summary.Table(all, ledger, analyzer));
return 0;
