using Microsoft.CodeAnalysis;

namespace Momentum.Analyzers.Inference;

/// <summary>What matters here about types.</summary>
internal static class Types
{
    internal static bool IsNumeric(ITypeSymbol? type) => type?.SpecialType is
        SpecialType.System_Double or SpecialType.System_Single or SpecialType.System_Decimal
        or SpecialType.System_Int32 or SpecialType.System_Int64 or SpecialType.System_Int16 or SpecialType.System_UInt32
        or SpecialType.System_UInt64 or SpecialType.System_UInt16 or SpecialType.System_Byte or SpecialType.System_SByte;

    internal static bool IsInteger(ITypeSymbol? type) =>
        IsNumeric(type) && type!.SpecialType is not (SpecialType.System_Double or SpecialType.System_Single or SpecialType.System_Decimal);

    /// <summary>A number, or a nullable, array, span, sequence, task or short vector of numbers.</summary>
    internal static bool BearsNumbers(ITypeSymbol? type) => IsNumeric(type) || IsNumeric(Element(type)) || IsNumeric(Element(Element(type)));

    /// <summary>The element of an array, span, sequence, task or nullable; null where there is none.</summary>
    internal static ITypeSymbol? Element(ITypeSymbol? type) => type switch
    {
        IArrayTypeSymbol array => array.ElementType,
        INamedTypeSymbol { TypeArguments.Length: 1, Name: "Nullable" or "Span" or "ReadOnlySpan" or "Memory" or "ReadOnlyMemory" or "List" or "IList" or "IReadOnlyList" or "IEnumerable" or "ICollection" or "IReadOnlyCollection" or "ImmutableArray" or "Task" or "ValueTask" or "Vector" } named
            when named.ContainingNamespace?.Name is not "Quantities" => named.TypeArguments[0],
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
        type is INamedTypeSymbol { TypeArguments.Length: > 0 } named && IsOurs(named) && named.Name is "Vector" or "Position" or "Direction" or "InertiaTensor"
            && ((INamedTypeSymbol)type).TypeArguments.Last() is INamedTypeSymbol frame ? frame.Name : null;
}
