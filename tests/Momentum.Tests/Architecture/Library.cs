using Momentum.Quantities;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace Momentum.Tests.Architecture;

/// <summary>The compiled library, read as data: which type uses which other, and which member calls which other.</summary>
internal static class Library
{
    internal static ModuleDefinition Module { get; } = ModuleDefinition.ReadModule(typeof(Vector<,>).Assembly.Location);

    /// <summary>Every method that has a body, nested and generated ones too.</summary>
    internal static IEnumerable<MethodDefinition> Methods => Module.GetTypes().SelectMany(type => type.Methods).Where(method => method.HasBody);

    /// <summary>
    /// The folder, and so the floor, of a type: the second part of its namespace; empty in the namespace Momentum itself;
    /// null for what is not ours or was made by the compiler.
    /// </summary>
    internal static string? Floor(TypeReference type)
    {
        while (type.DeclaringType is not null)
        {
            type = type.DeclaringType;
        }

        string[] parts = type.Namespace.Split('.');
        return parts is ["Momentum", ..] ? parts.ElementAtOrDefault(1) ?? "" : null;
    }

    /// <summary>Every type that a type's declaration or code names, of whatever assembly.</summary>
    internal static IEnumerable<TypeReference> Uses(TypeDefinition type)
    {
        HashSet<TypeReference> found = [];
        Add(found, type.BaseType);
        AddAll(found, type.Interfaces.Select(i => i.InterfaceType));
        AddAll(found, type.CustomAttributes.Select(a => a.AttributeType));
        AddAll(found, type.GenericParameters.SelectMany(p => p.Constraints).Select(c => c.ConstraintType));
        AddAll(found, type.Fields.Select(f => f.FieldType));
        foreach (MethodDefinition method in type.Methods)
        {
            Add(found, method.ReturnType);
            AddAll(found, method.Parameters.Select(p => p.ParameterType));
            AddAll(found, method.GenericParameters.SelectMany(p => p.Constraints).Select(c => c.ConstraintType));
            AddAll(found, method.CustomAttributes.Select(a => a.AttributeType));
            if (method.HasBody)
            {
                AddAll(found, method.Body.Variables.Select(v => v.VariableType));
                foreach (Instruction instruction in method.Body.Instructions)
                {
                    AddOperand(found, instruction.Operand);
                }
            }
        }

        return found;
    }

    /// <summary>Every member that a method calls or reads, by its full name such as <c>System.DateTime::get_Now</c>.</summary>
    internal static IEnumerable<string> Mentions(MethodDefinition method) =>
        method.Body.Instructions.Select(i => i.Operand).OfType<MemberReference>().Where(m => m is not TypeReference)
            .Select(m => $"{m.DeclaringType.GetElementType().FullName}::{m.Name}");

    private static void AddOperand(HashSet<TypeReference> found, object? operand)
    {
        switch (operand)
        {
            case TypeReference type:
                Add(found, type);
                break;
            case FieldReference field:
                Add(found, field.DeclaringType);
                Add(found, field.FieldType);
                break;
            case MethodReference method:
                Add(found, method.DeclaringType);
                Add(found, method.ReturnType);
                AddAll(found, method.Parameters.Select(p => p.ParameterType));
                if (method is GenericInstanceMethod generic)
                {
                    AddAll(found, generic.GenericArguments);
                }

                break;
            default:
                break;
        }
    }

    private static void AddAll(HashSet<TypeReference> found, IEnumerable<TypeReference> types)
    {
        foreach (TypeReference type in types)
        {
            Add(found, type);
        }
    }

    private static void Add(HashSet<TypeReference> found, TypeReference? type)
    {
        switch (type)
        {
            case null or GenericParameter:
                return;
            case GenericInstanceType generic:
                AddAll(found, generic.GenericArguments);
                Add(found, generic.ElementType);
                return;
            case IModifierType modified:
                Add(found, modified.ModifierType);
                Add(found, modified.ElementType);
                return;
            case TypeSpecification specification:
                Add(found, specification.ElementType);
                return;
            default:
                found.Add(type);
                return;
        }
    }
}
