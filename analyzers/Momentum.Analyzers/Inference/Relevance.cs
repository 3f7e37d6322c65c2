using System.Collections.Concurrent;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>
/// Tells by the names in a body, before anything is bound, whether it can say anything of units. Most bodies cannot, and
/// cost no more than this look.
/// </summary>
internal sealed class Relevance
{
    private static readonly ConcurrentDictionary<string, bool> _speaking = new(StringComparer.Ordinal);

    private static readonly HashSet<string> _members = new(StringComparer.Ordinal)
    {
        "As", "Of", "FromSi", "CopySiTo", "Sin", "Cos", "Tan", "SinCos", "Atan2", "DegreesToRadians", "RadiansToDegrees",
        "Apply", "Then", "Inverse", "Cross", "ToUnit", "ExpressedIn", "Solve", "Along", "ComponentAlong",
        "Diagonal", "InertiaAbout", "Xx", "Yy", "Zz", "Xy", "Xz", "Yz",
    };

    // Quantities that people compare for equality; a body that names none of them and no unit does not.
    private static readonly HashSet<string> _quantities = new(StringComparer.Ordinal)
    {
        "Length", "Mass", "Duration", "Angle", "RotationalSpeed", "Speed", "Acceleration", "RotationalAcceleration", "Force", "Torque", "Energy", "Power", "Pressure", "Impulse",
        "MassMomentOfInertia", "Area", "Volume", "Frequency", "Temperature", "AngularMomentum", "LinearMomentum", "Vector", "Position", "Direction", "Rotation", "InertiaTensor",
    };

    private readonly HashSet<string> _attributed;

    internal Relevance(Compilation compilation, CancellationToken cancellation)
    {
        _attributed = Attributed(compilation, cancellation);
    }

    internal bool Concerns(SyntaxNode body)
    {
        bool equality = false;
        bool quantity = false;
        foreach (SyntaxToken token in body.DescendantTokens())
        {
            equality |= token.RawKind is (int)SyntaxKind.EqualsEqualsToken or (int)SyntaxKind.ExclamationEqualsToken;
            quantity |= token.RawKind == (int)SyntaxKind.IdentifierToken && _quantities.Contains(token.ValueText);
            if (token.RawKind == (int)SyntaxKind.IdentifierToken
                && (_speaking.GetOrAdd(token.ValueText, Speaks) || _attributed.Contains(token.ValueText)))
            {
                return true;
            }
        }

        return equality && quantity;
    }

    private static bool Speaks(string name) =>
        _members.Contains(name)
        || UnitWords.Read(name) is not null
        || (name.StartsWith("From", StringComparison.Ordinal) && UnitWords.Read(name.Substring(4)) is not null)
        || NameUnits.Read(name) is not null
        || NameUnits.Read(name, isMethod: true) is not null;

    // Every name that carries one of our attributes, by syntax alone.
    private static HashSet<string> Attributed(Compilation compilation, CancellationToken cancellation)
    {
        HashSet<string> names = new(StringComparer.Ordinal);
        foreach (SyntaxTree tree in compilation.SyntaxTrees)
        {
            foreach (SyntaxNode node in tree.GetRoot(cancellation).DescendantNodes(n => n is not BlockSyntax and not ArrowExpressionClauseSyntax and not EqualsValueClauseSyntax))
            {
                if (node is AttributeSyntax { Name: var name, Parent.Parent: { } owner } && Last(name) is "Unit" or "UnitAttribute" or "Frame" or "FrameAttribute" or "About" or "AboutAttribute" or "ProductSign" or "ProductSignAttribute")
                {
                    names.UnionWith(Names(owner));
                }
            }
        }

        return names;
    }

    private static string Last(NameSyntax name) => name switch
    {
        QualifiedNameSyntax qualified => qualified.Right.Identifier.ValueText,
        AliasQualifiedNameSyntax alias => alias.Name.Identifier.ValueText,
        SimpleNameSyntax simple => simple.Identifier.ValueText,
        _ => string.Empty,
    };

    private static IEnumerable<string> Names(SyntaxNode owner) => owner switch
    {
        // The name of the method as well: its callers pass to the attributed parameter.
        ParameterSyntax { Parent.Parent: { } declaration } parameter => Names(declaration).Append(parameter.Identifier.ValueText),
        BaseFieldDeclarationSyntax field => field.Declaration.Variables.Select(v => v.Identifier.ValueText),
        MethodDeclarationSyntax method => [method.Identifier.ValueText],
        PropertyDeclarationSyntax property => [property.Identifier.ValueText],
        AccessorDeclarationSyntax { Parent.Parent: { } declaration } => Names(declaration),
        TypeDeclarationSyntax type => [type.Identifier.ValueText],
        ConstructorDeclarationSyntax constructor => [constructor.Identifier.ValueText],
        DelegateDeclarationSyntax @delegate => [@delegate.Identifier.ValueText],
        _ => [],
    };
}
