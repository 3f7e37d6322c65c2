using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.FlowAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// What one compilation's methods and fields do with units, found on demand and remembered.
/// </summary>
/// <remarks>
/// A summary at level n rests on summaries of callees at level n − 1, and at level 0 on none: so recursion ends, the work
/// is bounded, and the answer does not depend on which thread asked first.
/// </remarks>
internal sealed class CompilationModel(Compilation compilation, Options options, CancellationToken cancellation)
{
    private readonly ConcurrentDictionary<(IMethodSymbol Method, int Level), Summary> _methods = new();
    private readonly ConcurrentDictionary<(INamedTypeSymbol Type, int Level), ImmutableDictionary<IFieldSymbol, Inferred>> _fields = new();
    private readonly ConcurrentDictionary<SyntaxTree, SemanticModel> _semantics = new();

    internal Options Options { get; } = options;

    internal Declarations Declarations { get; } = new(options.ReadNames);

    internal CancellationToken Cancellation { get; } = cancellation;

    /// <summary>Lends the model that the driver has bound already.</summary>
    internal void Lend(SemanticModel semantics) => _semantics.TryAdd(semantics.SyntaxTree, semantics);

    /// <summary>The summary of a method of this compilation; empty where there is no body to look into.</summary>
    /// <param name="method">The method.</param>
    /// <param name="level">How many calls deep to look.</param>
    /// <param name="given">Arguments that are more than numbers: tuples, delegates, records. With them the summary is of this call only.</param>
    internal Summary Of(IMethodSymbol method, int level, IReadOnlyDictionary<IParameterSymbol, Inferred>? given = null)
    {
        method = method.PartialImplementationPart ?? method.OriginalDefinition;
        if (level < 0 || method.IsAbstract || method.IsExtern || method.DeclaringSyntaxReferences.Length != 1 || !SymbolEqualityComparer.Default.Equals(method.ContainingAssembly, compilation.Assembly))
        {
            return Summary.Empty;
        }

        return given is null ? _methods.GetOrAdd((method, level), key => Find(key.Method, key.Level, null)) : Find(method, level, given);
    }

    /// <summary>The summary of one body: a method's, an accessor's, an initializer's, a program's.</summary>
    internal Summary Of(SyntaxNode body, ISymbol owner, int level, IReadOnlyDictionary<IParameterSymbol, Inferred>? given = null)
    {
        IOperation? root = Semantics(body.SyntaxTree).GetOperation(body, Cancellation);
        if (StraightLine.Of(root) is { } statements)
        {
            return new Flow(this, null, owner, level, given: given).Run(statements);
        }

        ControlFlowGraph? graph = Graph(root, Cancellation);
        return graph is null || graph.Blocks.Length > Options.FlowBlocks ? Summary.Empty : new Flow(this, graph, owner, level, given: given).Run();
    }

    /// <summary>What a private or read-only field holds, from every assignment to it in its type.</summary>
    internal Inferred Of(IFieldSymbol field, int level)
    {
        field = field.OriginalDefinition;
        bool closed = field.AssociatedSymbol is IPropertySymbol property
            ? property.SetMethod is null || property.SetMethod.DeclaredAccessibility == Accessibility.Private
            : field.IsReadOnly || field.DeclaredAccessibility == Accessibility.Private;
        return level < 0 || !closed || !(Types.BearsNumbers(field.Type) || field.Type.TypeKind == TypeKind.Delegate) || (field.AssociatedSymbol ?? field).DeclaringSyntaxReferences.IsEmpty
            || !SymbolEqualityComparer.Default.Equals(field.ContainingAssembly, compilation.Assembly)
            ? Inferred.Unknown
            : _fields.GetOrAdd((field.ContainingType, level), key => Fields(key.Type, key.Level)).TryGetValue(field, out Inferred? found) ? found : Inferred.Unknown;
    }

    /// <summary>The field behind a property that the compiler implements; null behind any other.</summary>
    internal static IFieldSymbol? Backing(IPropertySymbol property) => property.IsIndexer || property.IsVirtual || property.IsAbstract || property.IsOverride
        ? null
        : property.ContainingType?.GetMembers().OfType<IFieldSymbol>().FirstOrDefault(f => SymbolEqualityComparer.Default.Equals(f.AssociatedSymbol, property.OriginalDefinition));

    private static ControlFlowGraph? Graph(IOperation? root, CancellationToken cancellation) => root switch
    {
        Microsoft.CodeAnalysis.Operations.IMethodBodyOperation body => ControlFlowGraph.Create(body, cancellation),
        Microsoft.CodeAnalysis.Operations.IConstructorBodyOperation body => ControlFlowGraph.Create(body, cancellation),
        Microsoft.CodeAnalysis.Operations.IFieldInitializerOperation body => ControlFlowGraph.Create(body, cancellation),
        Microsoft.CodeAnalysis.Operations.IPropertyInitializerOperation body => ControlFlowGraph.Create(body, cancellation),
        Microsoft.CodeAnalysis.Operations.IParameterInitializerOperation body => ControlFlowGraph.Create(body, cancellation),
        Microsoft.CodeAnalysis.Operations.IBlockOperation { Parent: null } body => ControlFlowGraph.Create(body, cancellation),
        _ => null,
    };

    private SemanticModel Semantics(SyntaxTree tree)
    {
#pragma warning disable RS1030 // One model a tree, kept for the compilation, and only for trees that a summary is asked of.
        return _semantics.GetOrAdd(tree, t => compilation.GetSemanticModel(t));
#pragma warning restore RS1030
    }

    private Summary Find(IMethodSymbol method, int level, IReadOnlyDictionary<IParameterSymbol, Inferred>? given)
    {
        SyntaxNode syntax = method.DeclaringSyntaxReferences[0].GetSyntax(Cancellation);
        SyntaxNode? body = syntax switch
        {
            BaseMethodDeclarationSyntax declaration when declaration.Body is not null || declaration.ExpressionBody is not null => declaration,
            AccessorDeclarationSyntax accessor when accessor.Body is not null || accessor.ExpressionBody is not null => accessor,
            ArrowExpressionClauseSyntax arrow => arrow,
            CompilationUnitSyntax topLevelStatements => topLevelStatements,
            _ => null,
        };
        return body is null ? Summary.Empty : Of(body, method, level, given);
    }

    private ImmutableDictionary<IFieldSymbol, Inferred> Fields(INamedTypeSymbol type, int level)
    {
        HashSet<string> names = new(type.GetMembers().OfType<IFieldSymbol>().Select(f => (f.AssociatedSymbol ?? f).Name), StringComparer.Ordinal);
        Dictionary<IFieldSymbol, Inferred> set = new(SymbolEqualityComparer.Default);
        Dictionary<IFieldSymbol, Inferred> updated = new(SymbolEqualityComparer.Default);
        foreach (SyntaxReference reference in type.DeclaringSyntaxReferences)
        {
            foreach (SyntaxNode body in Bodies(reference.GetSyntax(Cancellation), names))
            {
                SemanticModel semantics = Semantics(body.SyntaxTree);
                ISymbol owner = semantics.GetEnclosingSymbol(body.SpanStart, Cancellation) ?? type;
                foreach (FieldWrite write in Of(body, owner, level - 1).Writes)
                {
                    Dictionary<IFieldSymbol, Inferred> found = write.IsUpdate ? updated : set;
                    Inferred value = write.Value is Measured { Parameters.IsEmpty: false } ? Inferred.Unknown : write.Value;
                    found[write.Field] = found.TryGetValue(write.Field, out Inferred? before) ? Inferred.Join(before, value) : value;
                }
            }
        }

        // What a field is set to says what it holds; what is added to it, only where nothing but a literal is set.
        foreach (KeyValuePair<IFieldSymbol, Inferred> update in updated)
        {
            if (!set.TryGetValue(update.Key, out Inferred? start))
            {
                set.Add(update.Key, update.Value);
            }
            else if (start.IsNumber)
            {
                set[update.Key] = Inferred.Join(start, update.Value);
            }
        }

        return set.ToImmutableDictionary<IFieldSymbol, Inferred>(SymbolEqualityComparer.Default);
    }

    // The bodies and initializers of a type in which one of the names is written.
    private static IEnumerable<SyntaxNode> Bodies(SyntaxNode type, HashSet<string> names)
    {
        foreach (SyntaxNode node in type.DescendantNodes(n => n is not BlockSyntax and not ArrowExpressionClauseSyntax and not EqualsValueClauseSyntax))
        {
            switch (node)
            {
                case BaseMethodDeclarationSyntax or AccessorDeclarationSyntax when Writes(node, names):
                    yield return node;
                    break;
                case EqualsValueClauseSyntax { Parent: VariableDeclaratorSyntax { Parent.Parent: FieldDeclarationSyntax } or PropertyDeclarationSyntax }:
                    yield return node;
                    break;
            }
        }
    }

    private static bool Writes(SyntaxNode body, HashSet<string> names) => body.DescendantNodes().Any(node => node switch
    {
        AssignmentExpressionSyntax assignment => assignment.Left is TupleExpressionSyntax || Name(assignment.Left) is { } name && names.Contains(name),
        ArgumentSyntax { RefKindKeyword.RawKind: not (int)SyntaxKind.None } argument => Name(argument.Expression) is { } name && names.Contains(name),
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.ValueText: "Add" or "Enqueue" or "Push" or "Insert" or "Fill" } call } =>
            Name(call.Expression) is { } name && names.Contains(name),
        _ => false,
    });

    private static string? Name(ExpressionSyntax expression) => expression switch
    {
        IdentifierNameSyntax name => name.Identifier.ValueText,
        MemberAccessExpressionSyntax member => member.Name.Identifier.ValueText,
        ElementAccessExpressionSyntax element => Name(element.Expression),
        _ => null,
    };
}
