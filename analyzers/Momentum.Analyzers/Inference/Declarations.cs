using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>What declarations state of their own unit, frame, point and sign: by attribute, else by name.</summary>
internal sealed class Declarations(bool readNames)
{
    internal const string AttributeNamespace = "Momentum.Quantities";

    private readonly ConcurrentDictionary<ISymbol, Measured?> _known = new(SymbolEqualityComparer.Default);

    /// <summary>What a field, property, parameter, local or method (of what it returns) states; null where nothing.</summary>
    /// <remarks>A local is asked of in its own body only and has nothing but its name: it is not remembered.</remarks>
    internal Measured? Of(ISymbol symbol) => symbol is ILocalSymbol ? Named(symbol) : _known.GetOrAdd(symbol.OriginalDefinition, Find);

    private Measured? Find(ISymbol symbol)
    {
        Unit? contract = symbol switch
        {
            IParameterSymbol parameter => Sources.Parameter(parameter),
            IMethodSymbol { DeclaringSyntaxReferences.IsEmpty: true } framework when Sources.FromFramework(framework.ContainingType) => Sources.Given(framework),
            _ => null,
        };
        if (contract is not null)
        {
            return Inferred.In(contract, Evidence.Typed, new Origin(Location.None, OriginKind.Contract));
        }

        ImmutableArray<AttributeData> attributes = symbol is IMethodSymbol method
            ? method.GetReturnTypeAttributes().AddRange(method.AssociatedSymbol?.GetAttributes() ?? method.GetAttributes())
            : symbol is ILocalSymbol ? ImmutableArray<AttributeData>.Empty : symbol.GetAttributes();
        Measured? stated = Stated(symbol, attributes) ?? Inherited(symbol);
        return stated is { Unit: not null } ? stated : Named(symbol) is { } named ? stated is null ? named : named.WithContext(stated.Context, Place(symbol, OriginKind.Attribute)) : stated;
    }

    // An override or implementation without attributes of its own means what the member it stands for says.
    private Measured? Inherited(ISymbol symbol) => symbol switch
    {
        IParameterSymbol { ContainingSymbol: IMethodSymbol { MethodKind: MethodKind.PropertySet, AssociatedSymbol: { } property } } => Of(property),
        IParameterSymbol { ContainingSymbol: IMethodSymbol method } parameter =>
            Original(method) is IMethodSymbol original && Of(original.Parameters[parameter.Ordinal]) is { Evidence: Evidence.Typed } found ? found : null,
        IMethodSymbol or IPropertySymbol => Original(symbol) is { } original && Of(original) is { Evidence: Evidence.Typed } found ? found : null,
        _ => null,
    };

    // The member that this one overrides, or of an interface that it implements.
    private static ISymbol? Original(ISymbol member) => member switch
    {
        IMethodSymbol { OverriddenMethod: { } overridden } => overridden,
        IPropertySymbol { OverriddenProperty: { } overridden } => overridden,
        { IsStatic: false, ContainingType: { TypeKind: TypeKind.Class or TypeKind.Struct } type } => type.AllInterfaces
            .SelectMany(i => i.GetMembers(member.Name))
            .FirstOrDefault(m => SymbolEqualityComparer.Default.Equals(type.FindImplementationForInterfaceMember(m), member)),
        _ => null,
    };

    private static Measured? Stated(ISymbol symbol, ImmutableArray<AttributeData> attributes)
    {
        Unit? unit = null;
        string? frame = null;
        string? point = null;
        string? sign = null;
        foreach (AttributeData attribute in attributes)
        {
            if (attribute.AttributeClass is not { } type || type.ContainingNamespace?.ToDisplayString() != AttributeNamespace || attribute.ConstructorArguments.Length != 1)
            {
                continue;
            }

            TypedConstant argument = attribute.ConstructorArguments[0];
            switch (type.Name)
            {
                case "UnitAttribute" when argument.Value is string text:
                    unit = UnitText.Read(text);
                    break;
                case "FrameAttribute" when argument.Value is ITypeSymbol marker:
                    frame = marker.Name;
                    break;
                case "AboutAttribute" when argument.Value is string about:
                    point = about;
                    break;
                case "ProductSignAttribute":
                    sign = argument.Value as string;
                    break;
            }
        }

        Context context = new(frame, point, sign);
        return unit is null && context.IsNone
            ? null
            : unit is null
                ? Measured.Within(context, Place(symbol, OriginKind.Attribute))
                : Inferred.In(unit, Evidence.Typed, Place(symbol, OriginKind.Attribute), context);
    }

    private Measured? Named(ISymbol symbol)
    {
        if (!readNames || symbol.IsImplicitlyDeclared)
        {
            return null;
        }

        bool isMethod = symbol is IMethodSymbol { AssociatedSymbol: null };
        ISymbol bearer = symbol is IMethodSymbol { AssociatedSymbol: { } associated } ? associated : symbol;
        return NameUnits.Reading(bearer.Name, isMethod) is { } reading && BearsNumbers(symbol) && !FromFramework(symbol) && !IsSelected(symbol)
            ? Inferred.In(reading.Unit, reading.Evidence, Place(bearer, OriginKind.Name))
            : null;
    }

    /// <summary>Whether another parameter says what unit the number is in: <c>Rotate(double angle, bool isDegrees)</c>.</summary>
    internal static bool IsSelected(ISymbol symbol) => symbol is IParameterSymbol { ContainingSymbol: IMethodSymbol method } parameter
        && method.Parameters.Any(other => other.Ordinal != parameter.Ordinal
            && (other.Type.SpecialType == SpecialType.System_Boolean || other.Type.TypeKind == TypeKind.Enum)
            && (NameUnits.Selects(other.Name) || (other.Type.TypeKind == TypeKind.Enum && NameUnits.Selects(other.Type.Name))));

    private static bool BearsNumbers(ISymbol symbol) => symbol switch
    {
        ILocalSymbol local => Types.BearsNumbers(local.Type),
        IParameterSymbol parameter => Types.BearsNumbers(parameter.Type),
        IFieldSymbol { IsImplicitlyDeclared: false, ContainingType.TypeKind: not TypeKind.Enum } field => Types.BearsNumbers(field.Type),
        IPropertySymbol property => Types.BearsNumbers(property.Type),
        IMethodSymbol method => Types.BearsNumbers(method.ReturnType),
        _ => false,
    };

    // TimeSpan.Seconds is a component, not a time in seconds; quantity members are read with their type.
    private static bool FromFramework(ISymbol symbol)
    {
        INamespaceSymbol? space = symbol.ContainingNamespace;
        while (space is { ContainingNamespace: { IsGlobalNamespace: false } outer })
        {
            space = outer;
        }

        return space?.Name is "System" or "Microsoft" or "UnitsNet" && symbol.DeclaringSyntaxReferences.IsEmpty;
    }

    private static Origin Place(ISymbol symbol, OriginKind kind) => new(symbol.Locations.FirstOrDefault() ?? Location.None, kind);
}
