using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;

namespace Momentum.QuantityGenerator;

/// <summary>
/// Makes from the list of quantities and products what the library and the analyzer need of it. It takes part in this
/// repository's build only: the packages carry what it made, not the generator.
/// </summary>
[Generator(LanguageNames.CSharp)]
public sealed class QuantityGenerator : IIncrementalGenerator
{
    private static readonly DiagnosticDescriptor _wrongRow = new(
        "QTY001", "The list of quantities cannot be read", "{0}", "Quantities", DiagnosticSeverity.Error, isEnabledByDefault: true);

    /// <inheritdoc/>
    public void Initialize(IncrementalGeneratorInitializationContext context)
    {
        IncrementalValuesProvider<string> lists = context.AdditionalTextsProvider
            .Where(file => Path.GetFileName(file.Path) == "Quantities.txt")
            .Select((file, stop) => file.GetText(stop)?.ToString() ?? "");
        IncrementalValueProvider<string?> assembly = context.CompilationProvider.Select((compilation, _) => compilation.AssemblyName);
        context.RegisterSourceOutput(lists.Combine(assembly), (output, input) => Make(output, input.Left, input.Right));
    }

    private static void Make(SourceProductionContext output, string list, string? assembly)
    {
        QuantityTable table;
        try
        {
            table = QuantityTable.Read(list);
        }
        catch (FormatException wrong)
        {
            output.ReportDiagnostic(Diagnostic.Create(_wrongRow, Location.None, wrong.Message));
            return;
        }

        if (assembly == "Momentum.Analyzers")
        {
            Add("SiUnits", SiSource.ForTheAnalyzer(table));
            return;
        }

        Add("SiNumbers", SiSource.Numbers(table));
        Add("Si", SiSource.OfVectors(table));
        Add("ScalarProducts", ProductSource.OfScalars(table));
        Add("VectorProducts", ProductSource.OfVectors(table));
        foreach (Quantity quantity in table.Quantities.Where(quantity => quantity.IsOwn))
        {
            Add(quantity.Name, ScalarSource.Of(quantity));
        }

        void Add(string name, string text) => output.AddSource($"{name}.g.cs", SourceText.From(text.Replace("\r\n", "\n"), Encoding.UTF8));
    }
}
