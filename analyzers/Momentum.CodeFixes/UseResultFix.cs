using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;

namespace Momentum.CodeFixes;

/// <summary>Puts a computed quantity back where it came from, where that can hold it: <c>a.ToUnit(u);</c> becomes <c>a = a.ToUnit(u);</c></summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class UseResultFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(Descriptors.ResultUnused.Id);

    /// <inheritdoc/>
    public override FixAllProvider GetFixAllProvider() => WellKnownFixAllProviders.BatchFixer;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            if (await Mend.Find(context, diagnostic).ConfigureAwait(false) is not ({ } root, InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax receiver } } call)
                || await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is not { } semantics)
            {
                continue;
            }

            ITypeSymbol? given = semantics.GetTypeInfo(call, context.CancellationToken).Type;
            ITypeSymbol? held = semantics.GetTypeInfo(receiver, context.CancellationToken).Type;
            bool assignable = semantics.GetSymbolInfo(receiver, context.CancellationToken).Symbol
                is ILocalSymbol { IsConst: false, IsForEach: false, IsUsing: false, RefKind: not RefKind.RefReadOnly }
                or IParameterSymbol { RefKind: RefKind.None or RefKind.Ref }
                or IFieldSymbol { IsReadOnly: false }
                or IPropertySymbol { IsReadOnly: false };
            if (assignable && SymbolEqualityComparer.Default.Equals(given, held))
            {
                ExpressionSyntax assignment = SyntaxFactory.ParseExpression($"{receiver.WithoutTrivia()} = {call.WithoutTrivia()}");
                Mend.Replace(context, diagnostic, $"Keep the result in '{receiver.Identifier.ValueText}'", root, call, assignment);
            }
        }
    }
}
