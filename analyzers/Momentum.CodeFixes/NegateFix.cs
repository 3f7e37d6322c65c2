using System.Collections.Immutable;
using System.Composition;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CodeFixes;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers;
using Momentum.Analyzers.Inference;
using Momentum.Analyzers.Rules;

namespace Momentum.CodeFixes;

/// <summary>
/// Turns one product of inertia from one sign convention into the other: by its sign. Only where it is passed or stored alone;
/// of an array, only the products change sign, and not the moments.
/// </summary>
[ExportCodeFixProvider(LanguageNames.CSharp)]
[Shared]
public sealed class NegateFix : CodeFixProvider
{
    /// <inheritdoc/>
    public override ImmutableArray<string> FixableDiagnosticIds { get; } = ImmutableArray.Create(Descriptors.Signs.Id);

    /// <inheritdoc/>
    public override FixAllProvider GetFixAllProvider() => WellKnownFixAllProviders.BatchFixer;

    /// <inheritdoc/>
    public override async Task RegisterCodeFixesAsync(CodeFixContext context)
    {
        foreach (Diagnostic diagnostic in context.Diagnostics)
        {
            if (await Mend.Find(context, diagnostic).ConfigureAwait(false) is ({ } root, { } expression)
                && await context.Document.GetSemanticModelAsync(context.CancellationToken).ConfigureAwait(false) is { } semantics
                && Types.IsNumeric(semantics.GetTypeInfo(expression, context.CancellationToken).Type)
                && diagnostic.Properties.TryGetValue(Conversions.RoleKey, out string? role) && role is nameof(Role.Argument) or nameof(Role.Assign) or nameof(Role.Return) or nameof(Role.Sum))
            {
                Mend.Replace(context, diagnostic, "Change its sign", root, expression, Negated(expression));
            }
        }
    }

    private static ExpressionSyntax Negated(ExpressionSyntax expression)
    {
        ExpressionSyntax negative = SyntaxFactory.PrefixUnaryExpression(SyntaxKind.UnaryMinusExpression, Mend.Whole(expression));
        return expression.Parent is BinaryExpressionSyntax ? SyntaxFactory.ParenthesizedExpression(negative) : negative;
    }
}
