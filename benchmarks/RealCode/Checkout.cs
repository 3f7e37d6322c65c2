using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;

namespace RealCode;

/// <summary>One checkout: its projects, each a compilation of the C# files nearest to it.</summary>
internal sealed partial class Checkout
{
    private const string ImplicitUsings = "global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq; global using System.Net.Http; global using System.Threading; global using System.Threading.Tasks;";

    private static readonly ImmutableArray<MetadataReference> _references = [..
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(path => !Path.GetFileName(path).StartsWith("Microsoft.CodeAnalysis", StringComparison.Ordinal) && Path.GetFileName(path) is not ("RealCode.dll" or "Momentum.Analyzers.dll"))
            .Select(path => MetadataReference.CreateFromFile(path))];

    private static readonly CSharpParseOptions _parsing = new(
        LanguageVersion.Latest,
        preprocessorSymbols: ["NET", "NETCOREAPP", "NET5_0_OR_GREATER", "NET6_0_OR_GREATER", "NET7_0_OR_GREATER", "NET8_0_OR_GREATER", "NETSTANDARD2_0_OR_GREATER", "TRACE"]);

    private readonly string _folder;
    private readonly CSharpCompilationOptions _options;
    private readonly Dictionary<string, List<string>> _projects = new(StringComparer.Ordinal);
    private readonly Dictionary<string, CSharpCompilation?> _compilations = new(StringComparer.Ordinal);

    internal Checkout(string folder, IReadOnlyDictionary<string, ReportDiagnostic> severities)
    {
        _folder = folder;
        _options = new(OutputKind.DynamicallyLinkedLibrary, allowUnsafe: true, specificDiagnosticOptions: severities);
        string[] homes = [.. Directory.EnumerateFiles(folder, "*.csproj", SearchOption.AllDirectories).Select(p => Path.GetDirectoryName(p)!).Distinct()];
        HashSet<string> known = [.. homes];
        foreach (string file in Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string? home = Path.GetDirectoryName(file);
            while (home is not null && home.Length > folder.Length && !known.Contains(home))
            {
                home = Path.GetDirectoryName(home);
            }

            if (!_projects.TryGetValue(home ?? folder, out List<string>? files))
            {
                _projects.Add(home ?? folder, files = []);
            }

            files.Add(file);
        }
    }

    internal string Name => Path.GetFileName(_folder);

    internal int Files { get; private set; }

    internal int Lines { get; private set; }

    internal int Errors { get; private set; }

    /// <summary>Every report in every project, once.</summary>
    internal async Task<List<Finding>> Analyze(DiagnosticAnalyzer analyzer, bool countErrors)
    {
        HashSet<Finding> findings = [];
        foreach (string project in _projects.Keys)
        {
            if (Compile(project) is not { } compilation)
            {
                continue;
            }

            Errors += countErrors ? compilation.GetDiagnostics().Count(d => d.Severity == DiagnosticSeverity.Error) : 0;
            CompilationWithAnalyzers with = compilation.WithAnalyzers([analyzer], new CompilationWithAnalyzersOptions(new AnalyzerOptions([]), null, concurrentAnalysis: true, logAnalyzerExecutionTime: false));
            foreach (Diagnostic diagnostic in await with.GetAnalyzerDiagnosticsAsync())
            {
                FileLinePositionSpan place = diagnostic.Location.GetLineSpan();
                _ = findings.Add(new(Name, Path.GetRelativePath(_folder, place.Path ?? _folder), place.StartLinePosition.Line + 1, diagnostic.Id, diagnostic.GetMessage(CultureInfo.InvariantCulture).Split('\n')[0]));
            }

            // What was bound for this project is not needed any more; those that reference it need its symbols only.
            _compilations[project] = compilation.Clone();
        }

        return [.. findings];
    }

    private CSharpCompilation? Compile(string project)
    {
        if (_compilations.TryGetValue(project, out CSharpCompilation? known))
        {
            return known;
        }

        // A project that is asked for again while it is being made is in a circle of references: those are left out.
        _compilations[project] = null;
        string[] files = [.. Directory.EnumerateFiles(project, "*.csproj")];
        string text = string.Concat(files.Select(File.ReadAllText));
        List<MetadataReference> references = [.. _references.Where(r => !_projects.Keys.Any(p => File.Exists(Path.Combine(p, Path.ChangeExtension(Path.GetFileName(r.Display!), ".csproj")))))];
        foreach (Match match in ProjectReference().Matches(text))
        {
            string other = Path.GetDirectoryName(Path.GetFullPath(Path.Combine(project, match.Groups[1].Value.Replace('\\', '/'))))!;
            if (_projects.ContainsKey(other) && other != project && Compile(other) is { } compilation)
            {
                references.Add(compilation.ToMetadataReference());
            }
        }

        List<SyntaxTree> trees = [];
        foreach (string file in _projects[project])
        {
            SourceText source = SourceText.From(File.ReadAllText(file));
            trees.Add(CSharpSyntaxTree.ParseText(source, _parsing, file));
            Files++;
            Lines += source.Lines.Count;
        }

        if (text.Contains("ImplicitUsings", StringComparison.Ordinal))
        {
            trees.Add(CSharpSyntaxTree.ParseText(ImplicitUsings, _parsing));
        }

        string name = files.Length > 0 ? Path.GetFileNameWithoutExtension(files[0]) : Path.GetFileName(project);
        return _compilations[project] = CSharpCompilation.Create(name, trees, references, _options);
    }

    [GeneratedRegex("<ProjectReference\\s+Include=\"([^\"]+)\"")]
    private static partial Regex ProjectReference();
}
