using System.Reflection;
using Momentum.Tests.Architecture;
using Mono.Cecil;

namespace Momentum.Cases.Tests.Architecture;

/// <summary>
/// A browser can run it: no files, no console, no process, no threads by force, no native code. (The build refuses calls that
/// .NET itself marks as missing in a browser.)
/// </summary>
public sealed class BrowserTests
{
    private static readonly ModuleDefinition _cases = ModuleDefinition.ReadModule(typeof(CaseReader).Assembly.Location);

    private static readonly string[] _allowedAssemblies = ["Momentum", "OxyPlot", "Tomlyn", "UnitsNet"];

    private static readonly HashSet<string> _forbidden =
    [
        "System.Console", "System.Environment", "System.IO.File", "System.IO.Directory", "System.IO.FileStream", "System.IO.FileInfo", "System.IO.DirectoryInfo",
        "System.Diagnostics.Process", "System.Diagnostics.Stopwatch", "System.Threading.Thread", "System.Threading.ThreadPool", "System.Threading.Tasks.Task",
        "System.Threading.Tasks.Parallel", "System.Linq.ParallelEnumerable", "System.Net.Http.HttpClient", "System.Runtime.InteropServices.NativeLibrary",
    ];

    // What the compiler writes into every iterator, to tell whether one may be used again.
    private const string IteratorsOwn = "System.Environment::get_CurrentManagedThreadId";

    [Fact]
    public void It_asks_for_nothing_that_a_browser_lacks()
    {
        IEnumerable<string> found =
            from method in _cases.GetTypes().SelectMany(type => type.Methods).Where(method => method.HasBody)
            from mention in Library.Mentions(method)
            where mention != IteratorsOwn && _forbidden.Contains(mention.Split("::")[0])
            select $"{method.FullName} uses {mention}";
        Assert.True(!found.Any(), string.Join('\n', found.Distinct()));
    }

    [Fact]
    public void It_and_the_libraries_it_brings_call_no_native_code()
    {
        string[] brought = [.. _allowedAssemblies.Append("Momentum.Cases").Append("MathNet.Numerics")];
        Assert.All(brought, name =>
        {
            using var module = ModuleDefinition.ReadModule(Assembly.Load(name).Location);
            string[] native = [.. module.GetTypes().SelectMany(type => type.Methods).Where(method => method.IsPInvokeImpl).Select(method => method.PInvokeInfo.Module.Name).Distinct()];

            // MathNet.Numerics can be told to use native providers, by packages that are not brought along.
            Assert.True(native.Length == 0 || name == "MathNet.Numerics", $"{name} calls {string.Join(", ", native)}");
        });
    }

    [Fact]
    public void It_stands_on_the_library_and_three_others() =>
        Assert.Equal(_allowedAssemblies, _cases.AssemblyReferences.Select(a => a.Name).Where(name => !name.StartsWith("System", StringComparison.Ordinal)).Order(StringComparer.Ordinal));

    [Fact]
    public void The_check_sees_a_file_being_opened()
    {
        // The tool's own reader of case files, which opens them.
        using var tool = ModuleDefinition.ReadModule(Assembly.Load("Momentum.Tool").Location);
        Assert.Contains(tool.GetTypes().SelectMany(type => type.Methods).Where(method => method.HasBody).SelectMany(Library.Mentions), m => _forbidden.Contains(m.Split("::")[0]));
    }

    [Fact]
    public void Every_kind_of_section_is_named_to_the_trimmer()
    {
        TypeDefinition description = _cases.GetTypes().Single(type => type.Name == "SectionDescription");
        string[] named = [.. description.Methods.Where(m => m.IsConstructor).SelectMany(m => m.CustomAttributes)
            .Where(a => a.AttributeType.Name == "DynamicDependencyAttribute").Select(a => ((TypeReference)a.ConstructorArguments[1].Value).FullName).Order(StringComparer.Ordinal)];
        string[] sections = [.. _cases.GetTypes().Where(type => !type.IsAbstract && type.BaseType?.Name == "Section").Select(type => type.FullName).Order(StringComparer.Ordinal)];
        Assert.Equal(sections, named);
    }
}
