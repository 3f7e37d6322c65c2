using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>What matters here about types.</summary>
internal static class Types
{
    private static readonly HashSet<string> _holders = new(StringComparer.Ordinal)
    {
        "Nullable", "Span", "ReadOnlySpan", "Memory", "ReadOnlyMemory", "List", "IList", "IReadOnlyList", "IEnumerable", "ICollection", "IReadOnlyCollection", "ImmutableArray",
        "Queue", "Stack", "HashSet", "LinkedList", "IAsyncEnumerable", "IAsyncEnumerator", "IEnumerator", "IGrouping", "IOrderedEnumerable", "Lazy", "Task", "ValueTask", "Vector",
    };

    internal static bool IsNumeric(ITypeSymbol? type) => type?.SpecialType is
        SpecialType.System_Double or SpecialType.System_Single or SpecialType.System_Decimal
        or SpecialType.System_Int32 or SpecialType.System_Int64 or SpecialType.System_Int16 or SpecialType.System_UInt32
        or SpecialType.System_UInt64 or SpecialType.System_UInt16 or SpecialType.System_Byte or SpecialType.System_SByte;

    internal static bool IsInteger(ITypeSymbol? type) =>
        IsNumeric(type) && type!.SpecialType is not (SpecialType.System_Double or SpecialType.System_Single or SpecialType.System_Decimal);

    /// <summary>A number, or a nullable, array, span, collection, task or short vector of numbers; or what a caller may make a number.</summary>
    internal static bool BearsNumbers(ITypeSymbol? type) => type is ITypeParameterSymbol || IsNumeric(type) || IsNumeric(Element(type)) || IsNumeric(Element(Element(type)));

    /// <summary>The element of an array, span, collection, task or nullable (of a dictionary, its values); null where there is none.</summary>
    internal static ITypeSymbol? Element(ITypeSymbol? type) => type switch
    {
        IArrayTypeSymbol array => array.ElementType,
        INamedTypeSymbol { TypeArguments.Length: 1, ContainingNamespace.Name: not "Quantities" } named when _holders.Contains(named.Name) => named.TypeArguments[0],
        INamedTypeSymbol { TypeArguments.Length: 2, Name: "Dictionary" or "SortedDictionary" or "IDictionary" or "IReadOnlyDictionary" or "ConcurrentDictionary" } named => named.TypeArguments[1],
        _ => null,
    };

    /// <summary>Whether the type is a quantity: it, or the library that it is from, keeps its unit.</summary>
    internal static bool IsQuantity(ITypeSymbol? type) =>
        type is INamedTypeSymbol { TypeKind: TypeKind.Struct or TypeKind.Class or TypeKind.Interface } named
        && (named.ContainingNamespace is { Name: "UnitsNet", ContainingNamespace.IsGlobalNamespace: true }
            ? named.Name is not ("UnitConverter" or "UnitMath" or "QuantityValue" or "Quantity")
            : IsOurs(named) || named.AllInterfaces.Any(i => i is { Name: "IQuantity", ContainingNamespace.Name: "UnitsNet" }));

    /// <summary>Whether the type is one of this library's.</summary>
    internal static bool IsOurs(ITypeSymbol? type)
    {
        INamespaceSymbol? space = type?.ContainingNamespace;
        return space is { Name: "Quantities" or "Frames" or "Inertia", ContainingNamespace: { Name: "Momentum", ContainingNamespace.IsGlobalNamespace: true } };
    }

    /// <summary>The frame of a vector, point or direction of this library; null for a frame that is a type parameter.</summary>
    internal static string? Frame(ITypeSymbol? type) =>
        type is INamedTypeSymbol { TypeArguments.Length: > 0 } named && IsOurs(named) && named.Name is "Vector" or "Position" or "Direction" or "InertiaTensor" or "PointInertia"
            && ((INamedTypeSymbol)type).TypeArguments.Last() is INamedTypeSymbol frame ? frame.Name : null;
}
