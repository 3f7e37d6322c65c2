using Microsoft.CodeAnalysis;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>Members whose unit their type or the framework's contract fixes.</summary>
internal static class Sources
{
    private static readonly Dictionary<string, string> _framework = new(StringComparer.Ordinal)
    {
        ["TimeSpan.TotalSeconds"] = "s",
        ["TimeSpan.TotalMilliseconds"] = "ms",
        ["TimeSpan.TotalMinutes"] = "min",
        ["TimeSpan.TotalHours"] = "h",
        ["TimeSpan.TotalDays"] = "d",
        ["Stopwatch.ElapsedMilliseconds"] = "ms",
        ["Environment.TickCount"] = "ms",
        ["Environment.TickCount64"] = "ms",
    };

    private static readonly Dictionary<string, string> _frameworkParameters = new(StringComparer.Ordinal)
    {
        ["TimeSpan.FromSeconds"] = "s",
        ["TimeSpan.FromMilliseconds"] = "ms",
        ["TimeSpan.FromMinutes"] = "min",
        ["TimeSpan.FromHours"] = "h",
        ["TimeSpan.FromDays"] = "d",
        ["Thread.Sleep"] = "ms",
        ["Task.Delay"] = "ms",
        ["DateTime.AddSeconds"] = "s",
        ["DateTime.AddMilliseconds"] = "ms",
        ["DateTime.AddMinutes"] = "min",
        ["DateTime.AddHours"] = "h",
        ["DateTime.AddDays"] = "d",
        ["DateTimeOffset.AddSeconds"] = "s",
        ["DateTimeOffset.AddMilliseconds"] = "ms",
        ["DateTimeOffset.AddMinutes"] = "min",
        ["DateTimeOffset.AddHours"] = "h",
        ["DateTimeOffset.AddDays"] = "d",
        ["DateTimeOffset.FromUnixTimeSeconds"] = "s",
        ["DateTimeOffset.FromUnixTimeMilliseconds"] = "ms",
    };

    /// <summary>The unit that a parameter of the framework takes its number in; null where it takes none.</summary>
    internal static Unit? Parameter(IParameterSymbol parameter)
    {
        if (!Types.IsNumeric(parameter.Type) || parameter.ContainingSymbol is not IMethodSymbol { ContainingType: { } type } method || !FromFramework(type) || !parameter.DeclaringSyntaxReferences.IsEmpty)
        {
            return null;
        }

        string? unit = parameter.Name switch
        {
            "millisecondsTimeout" or "millisecondsDelay" or "milliseconds" or "millisecondsDueTime" => "ms",
            "dueTime" or "period" or "interval" when type.Name == "Timer" => "ms",
            "timeout" or "timeoutMilliseconds" when type.Name is "Process" or "WaitHandle" or "Thread" => "ms",
            "radians" or "angle" or "yaw" or "pitch" or "roll" or "fieldOfView" when type.ContainingNamespace.Name == "Numerics" => "rad",
            "phase" when type.Name == "Complex" => "rad",
            _ => null,
        };
        return unit is not null ? UnitText.Read(unit) : _frameworkParameters.TryGetValue($"{type.Name}.{method.Name}", out string? text) && parameter.Ordinal == 0 ? UnitText.Read(text) : null;
    }

    /// <summary>The unit of a number that a method of the framework gives; null where it gives none.</summary>
    internal static Unit? Given(IMethodSymbol method) => method.Name switch
    {
        "ToUnixTimeSeconds" => UnitText.Read("s"),
        "ToUnixTimeMilliseconds" => UnitText.Read("ms"),
        _ => null,
    };

    /// <summary>The unit of a number read from a property of a quantity or of the framework; null where it has none.</summary>
    internal static Unit? Property(IPropertySymbol property)
    {
        INamedTypeSymbol type = property.ContainingType;
        if (Types.IsNumeric(property.Type) && IsQuantityMember(type, property.Name))
        {
            return QuantityMembers.Read(type.Name, property.Name);
        }

        return FromFramework(type) && _framework.TryGetValue($"{type.Name}.{property.Name}", out string? text) ? UnitText.Read(text) : null;
    }

    /// <summary>The unit that a factory of a quantity, or a framework method, takes its first number in; null where none.</summary>
    internal static Unit? Factory(IMethodSymbol method)
    {
        INamedTypeSymbol type = method.ContainingType;
        if (method.IsStatic && method.Parameters.Length >= 1 && method.Name.StartsWith("From", StringComparison.Ordinal) && method.Name.Length > 4
            && SymbolEqualityComparer.Default.Equals(method.ReturnType, type) && (Types.IsQuantity(type) || HasProperty(type, method.Name.Substring(4))))
        {
            return QuantityMembers.Read(type.Name, method.Name.Substring(4));
        }

        return FromFramework(type) && _frameworkParameters.TryGetValue($"{type.Name}.{method.Name}", out string? text) && Types.IsNumeric(method.Parameters.FirstOrDefault()?.Type)
            ? UnitText.Read(text)
            : null;
    }

    /// <summary>The unit that a member of a unit enumeration names, such as <c>ForceUnit.PoundForce</c>.</summary>
    internal static Unit? UnitOf(IFieldSymbol member) =>
        member.ContainingType is { TypeKind: TypeKind.Enum } type && type.Name.EndsWith("Unit", StringComparison.Ordinal)
            ? QuantityMembers.Read(type.Name.Substring(0, type.Name.Length - 4), member.Name)
            : null;

    /// <summary>The SI unit of a scalar quantity type.</summary>
    internal static Unit? Si(ITypeSymbol quantity) => SiUnits.OfQuantity.TryGetValue(quantity.Name, out string? member) ? QuantityMembers.Read(quantity.Name, member) : null;

    internal static bool FromFramework(ITypeSymbol type) =>
        type.ContainingNamespace is { } space && (space.Name == "System" || space.ContainingNamespace?.Name == "System" || space.ContainingNamespace?.ContainingNamespace?.Name == "System");

    private static bool IsQuantityMember(INamedTypeSymbol type, string name) =>
        Types.IsQuantity(type) || (!FromFramework(type) && type.GetMembers("From" + name).Any(m => m is IMethodSymbol { IsStatic: true }));

    private static bool HasProperty(INamedTypeSymbol type, string name) => type.GetMembers(name).Any(m => m is IPropertySymbol property && Types.IsNumeric(property.Type));
}
