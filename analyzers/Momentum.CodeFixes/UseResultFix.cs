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
public sealed class UseResultFix : ExpressionFix
{
    /// <summary>Creates the fix.</summary>
    public UseResultFix()
        : base(Descriptors.ResultUnused)
    {
    }

    private protected override (string Title, SyntaxNode Old, SyntaxNode Mended)? Mend(
        ExpressionSyntax marked, Diagnostic diagnostic, SemanticModel semantics, CancellationToken cancellation)
    {
        if (marked is not InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax receiver } } call)
        {
            return null;
        }

        ITypeSymbol? given = semantics.GetTypeInfo(call, cancellation).Type;
        ITypeSymbol? held = semantics.GetTypeInfo(receiver, cancellation).Type;
        bool assignable = semantics.GetSymbolInfo(receiver, cancellation).Symbol
            is ILocalSymbol { IsConst: false, IsForEach: false, IsUsing: false, RefKind: not RefKind.RefReadOnly }
            or IParameterSymbol { RefKind: RefKind.None or RefKind.Ref }
            or IFieldSymbol { IsReadOnly: false }
            or IPropertySymbol { IsReadOnly: false };
        return assignable && SymbolEqualityComparer.Default.Equals(given, held)
            ? ($"Keep the result in '{receiver.Identifier.ValueText}'", call, SyntaxFactory.ParseExpression($"{receiver.WithoutTrivia()} = {call.WithoutTrivia()}"))
            : null;
    }
}
