using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Operations;
using Momentum.Analyzers.Algebra;

namespace Momentum.Analyzers.Inference;

/// <summary>What this library's two inertia types say of the numbers read from them: frame, point, sign of the products.</summary>
internal static class Tensors
{
    /// <summary>The point of an <c>InertiaTensor</c>.</summary>
    internal const string CentreOfMass = "centre of mass";

    /// <summary>The point of a <c>PointInertia</c>: another than the centre of mass, which is all that its type says.</summary>
    internal const string Stated = "the point that it states";

    /// <summary>The sign convention of both types' products.</summary>
    internal const string TensorElement = "tensor element";
    private const string PositiveIntegral = "positive integral";

    internal static Unit Si { get; } = QuantityMembers.Read("MassMomentOfInertia", "KilogramSquareMeters")!;

    /// <summary>A moment or product of inertia read from a tensor; null for any other property.</summary>
    internal static Inferred? Component(IPropertySymbol property, Inferred instance, Origin origin)
    {
        INamedTypeSymbol type = property.ContainingType;
        if (property.Name.Length != 2 || property.Name[0] is < 'X' or > 'Z' || type.Name is not ("InertiaTensor" or "PointInertia") || !Types.IsOurs(type))
        {
            return null;
        }

        string point = type.Name == "InertiaTensor" ? CentreOfMass : instance.Context.Point ?? Stated;
        return Measured.Within(new Context(Types.Frame(type), point, IsProduct(property.Name) ? TensorElement : null), origin);
    }

    /// <summary>An inertia about a point: of the centre of mass where the point's expression speaks of it.</summary>
    internal static Inferred About(ITypeSymbol type, IOperation point, Origin origin) =>
        Measured.Within(new Context(Types.Frame(type), Context.IsCentreOfMass(point.Syntax.ToString()) ? CentreOfMass : Stated), origin);

    /// <summary>Whether a component's name, <c>xy</c> or <c>Xy</c>, is that of a product.</summary>
    internal static bool IsProduct(string name) => name.Length == 2 && char.ToLowerInvariant(name[0]) != name[1];

    /// <summary>The sign convention that an argument of a call names; null where none does.</summary>
    internal static string? SignArgument(IInvocationOperation call) => call.Arguments
        .Select(a => a.Value)
        .OfType<IFieldReferenceOperation>()
        .Where(f => f.Field.ContainingType.Name == "ProductSign")
        .Select(f => f.Field.Name == "PositiveIntegral" ? PositiveIntegral : TensorElement)
        .FirstOrDefault();
}
