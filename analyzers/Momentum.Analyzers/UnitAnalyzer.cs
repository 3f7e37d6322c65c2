using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using Momentum.Analyzers.Inference;
using Momentum.Analyzers.Rules;

namespace Momentum.Analyzers;

/// <summary>
/// Infers the unit, frame, reference point and sign convention of bare numbers, and reports where two that differ meet.
/// </summary>
/// <remarks>
/// One analyzer carries every rule that rests on inference, because inference is the cost: a body is analysed once and all
/// rules judge what it found. A body in which no name speaks of units is not bound at all.
/// </remarks>
[DiagnosticAnalyzer(LanguageNames.CSharp)]
public sealed class UnitAnalyzer : DiagnosticAnalyzer
{
    /// <inheritdoc/>
    public override ImmutableArray<DiagnosticDescriptor> SupportedDiagnostics { get; } = MeetingRules.All
        .Select(rule => rule.Descriptor)
        .Concat(MeetingRules.Contexts.Select(rule => rule.Descriptor))
        .Append(UnitTextRule.Descriptor)
        .Append(Descriptors.Setting)
        .Concat(ObservationRules.All.Select(rule => rule.Descriptor))
        .ToImmutableArray();

    /// <inheritdoc/>
    public override void Initialize(AnalysisContext context)
    {
        context.ConfigureGeneratedCodeAnalysis(GeneratedCodeAnalysisFlags.None);
        context.EnableConcurrentExecution();
        context.RegisterCompilationStartAction(Start);
    }

    private static void Start(CompilationStartAnalysisContext context)
    {
        Compilation compilation = context.Compilation;
        if (!Participation.Takes(compilation))
        {
            return;
        }

        Options options = new(context.Options.AnalyzerConfigOptionsProvider.GlobalOptions);
        SyntaxTree? first = compilation.SyntaxTrees.FirstOrDefault();
        if (first is not null)
        {
            options = new(context.Options.AnalyzerConfigOptionsProvider.GetOptions(first));
        }

        if (options.Unread.Count > 0)
        {
            context.RegisterCompilationEndAction(end => options.Unread.ForEach(s => end.ReportDiagnostic(Diagnostic.Create(Descriptors.Setting, Location.None, s.Key, s.Text, s.Allowed))));
        }

        if (options.FlowBlocks == 0)
        {
            return;
        }

        CompilationModel model = new(compilation, options, context.CancellationToken);
        Conversions conversions = new(compilation);
        Relevance relevance = new(compilation, context.CancellationToken);
        context.RegisterSyntaxNodeAction(UnitTextRule.Check, SyntaxKind.Attribute);
        context.RegisterCodeBlockAction(block => Analyze(block, model, conversions, relevance));
    }

    private static void Analyze(CodeBlockAnalysisContext context, CompilationModel model, Conversions conversions, Relevance relevance)
    {
        if (!relevance.Concerns(context.CodeBlock))
        {
            return;
        }

        model.Lend(context.SemanticModel);
        Summary summary = context.OwningSymbol is IMethodSymbol method && method.DeclaringSyntaxReferences.Length == 1 && context.CodeBlock == method.DeclaringSyntaxReferences[0].GetSyntax(context.CancellationToken)
            ? model.Of(method, model.Options.CallDepth)
            : model.Of(Executable(context.CodeBlock, context.OwningSymbol, context.CancellationToken), context.OwningSymbol, model.Options.CallDepth);
        foreach (Diagnostic diagnostic in Judge(summary, conversions))
        {
            context.ReportDiagnostic(diagnostic);
        }
    }

    // Of a field or property with an initializer the driver gives the whole declaration; what runs is the initializer.
    private static SyntaxNode Executable(SyntaxNode block, ISymbol owner, CancellationToken cancellation) => block switch
    {
        PropertyDeclarationSyntax { Initializer: { } initializer } => initializer,
        _ when owner is IFieldSymbol { DeclaringSyntaxReferences.Length: 1 } && owner.DeclaringSyntaxReferences[0].GetSyntax(cancellation) is VariableDeclaratorSyntax { Initializer: { } initializer } => initializer,
        _ => block,
    };

    private static IEnumerable<Diagnostic> Judge(Summary summary, Conversions conversions)
    {
        List<Diagnostic> found = summary.Meetings.SelectMany(meeting => MeetingRules.Judge(meeting, conversions)).ToList();
        foreach (Observation observation in summary.Observations)
        {
            found.AddRange(ObservationRules.All.Select(rule => rule.Judge(observation, conversions)).OfType<Diagnostic>());
        }

        // A lambda may have been gone through twice. Of a product in a product, the outer says the whole conversion.
        return found.GroupBy(d => (d.Id, d.Location.SourceTree, d.Location.SourceSpan)).Select(same => same.First()).Where(d => !found.Exists(outer => outer.Id == d.Id && outer.Id == Descriptors.ConversionByHand.Id
            && outer.Location.SourceSpan != d.Location.SourceSpan && outer.Location.SourceSpan.Contains(d.Location.SourceSpan)));
    }
}
