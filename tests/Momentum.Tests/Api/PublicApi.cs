using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Momentum.Tests.Api;

/// <summary>A library's public surface as text: a sorted line for each type and member that a user can name.</summary>
internal static class PublicApi
{
    private static readonly SymbolDisplayFormat _whole = new(
        globalNamespaceStyle: SymbolDisplayGlobalNamespaceStyle.Omitted,
        typeQualificationStyle: SymbolDisplayTypeQualificationStyle.NameAndContainingTypes,
        genericsOptions: SymbolDisplayGenericsOptions.IncludeTypeParameters | SymbolDisplayGenericsOptions.IncludeTypeConstraints | SymbolDisplayGenericsOptions.IncludeVariance,
        memberOptions: SymbolDisplayMemberOptions.IncludeAccessibility | SymbolDisplayMemberOptions.IncludeConstantValue |
            SymbolDisplayMemberOptions.IncludeExplicitInterface | SymbolDisplayMemberOptions.IncludeModifiers | SymbolDisplayMemberOptions.IncludeParameters |
            SymbolDisplayMemberOptions.IncludeRef | SymbolDisplayMemberOptions.IncludeType,
        kindOptions: SymbolDisplayKindOptions.IncludeTypeKeyword | SymbolDisplayKindOptions.IncludeMemberKeyword,
        parameterOptions: SymbolDisplayParameterOptions.IncludeName | SymbolDisplayParameterOptions.IncludeType | SymbolDisplayParameterOptions.IncludeDefaultValue |
            SymbolDisplayParameterOptions.IncludeParamsRefOut | SymbolDisplayParameterOptions.IncludeModifiers,
        propertyStyle: SymbolDisplayPropertyStyle.ShowReadWriteDescriptor,
        miscellaneousOptions: SymbolDisplayMiscellaneousOptions.UseSpecialTypes | SymbolDisplayMiscellaneousOptions.IncludeNullableReferenceTypeModifier);

    private static readonly SymbolDisplayFormat _name = new(
        typeQualificationStyle: SymbolDisplayTypeQualificationStyle.NameAndContainingTypesAndNamespaces,
        genericsOptions: SymbolDisplayGenericsOptions.IncludeTypeParameters);

    // A constant is shown with its value; a type with what it derives from and implements.
    internal static string Text(Assembly library)
    {
        MetadataReference reference = MetadataReference.CreateFromFile(library.Location);
        CSharpCompilation compilation = CSharpCompilation.Create(
            "Surface",
            references: ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator)
                .Where(path => path != library.Location)
                .Select(path => (MetadataReference)MetadataReference.CreateFromFile(path))
                .Append(reference));
        IAssemblySymbol assembly = (IAssemblySymbol)compilation.GetAssemblyOrModuleSymbol(reference)!;
        IEnumerable<string> lines = Types(assembly.GlobalNamespace).SelectMany(Lines);
        return string.Concat(lines.Order(StringComparer.Ordinal).Select(line => line + "\n"));
    }

    private static IEnumerable<INamedTypeSymbol> Types(INamespaceOrTypeSymbol scope)
    {
        foreach (INamespaceOrTypeSymbol member in scope.GetMembers().OfType<INamespaceOrTypeSymbol>())
        {
            if (member is INamedTypeSymbol type && IsSeen(type))
            {
                yield return type;
            }

            if (member is INamespaceSymbol || IsSeen(member))
            {
                foreach (INamedTypeSymbol inner in Types(member))
                {
                    yield return inner;
                }
            }
        }
    }

    private static IEnumerable<string> Lines(INamedTypeSymbol type)
    {
        // An extension block has no name of its own: its members stand under the static class that holds it.
        string name = type.IsExtension
            ? $"{type.ContainingType.ToDisplayString(_name)} extends {type.ExtensionParameter!.Type.ToDisplayString(_whole.WithKindOptions(SymbolDisplayKindOptions.None))}"
            : type.ToDisplayString(_name);
        if (!type.IsExtension)
        {
            yield return $"{name}: {Modifiers(type)}{type.ToDisplayString(_whole)}{Bases(type)}";
        }

        foreach (ISymbol member in type.GetMembers().Where(IsSeen))
        {
            bool isListedOtherwise = member is INamedTypeSymbol or IMethodSymbol { MethodKind: MethodKind.PropertyGet or MethodKind.PropertySet or MethodKind.EventAdd or MethodKind.EventRemove };
            if (!isListedOtherwise && !member.IsImplicitlyDeclared && !member.Name.StartsWith('<'))
            {
                yield return $"{name}: {member.ToDisplayString(_whole)}";
            }
        }
    }

    private static string Modifiers(INamedTypeSymbol type) =>
        type.TypeKind != TypeKind.Class ? "" : type.IsStatic ? "static " : type.IsSealed ? "sealed " : type.IsAbstract ? "abstract " : "";

    private static string Bases(INamedTypeSymbol type)
    {
        string[] bases =
        [
            .. new[] { type.BaseType }.Concat(type.Interfaces)
                .Where(t => t is not null && t.SpecialType is not (SpecialType.System_Object or SpecialType.System_ValueType or SpecialType.System_Enum))
                .Select(t => t!.ToDisplayString(_whole.WithKindOptions(SymbolDisplayKindOptions.None)))
                .Order(StringComparer.Ordinal),
        ];
        return bases.Length == 0 ? "" : " : " + string.Join(", ", bases);
    }

    private static bool IsSeen(ISymbol symbol) =>
        symbol.DeclaredAccessibility is Accessibility.Public or Accessibility.Protected or Accessibility.ProtectedOrInternal || symbol is INamedTypeSymbol { IsExtension: true };
}
