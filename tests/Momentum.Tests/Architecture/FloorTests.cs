using Mono.Cecil;

namespace Momentum.Tests.Architecture;

/// <summary>How the library is laid out: a floor uses only those below it.</summary>
public sealed class FloorTests
{
    // The lowest first. The ground under all of them, the namespace Momentum itself, is for what every floor must know.
    private static readonly string[] _floors = ["", "Numerics", "Quantities", "Frames", "Inertia", "Motion", "Tethers", "Dispersion"];

    private static readonly string[] _allowedAssemblies = ["MathNet.Numerics", "UnitsNet"];

    [Fact]
    public void Every_type_stands_on_a_floor() =>
        Assert.Empty(Library.Module.Types.Where(type => type.IsPublic && Array.IndexOf(_floors, Library.Floor(type)) < 0).Select(type => type.FullName));

    [Fact]
    public void A_floor_uses_only_those_below_it()
    {
        IEnumerable<string> upward =
            from type in Library.Module.GetTypes()
            where Library.Floor(type) is not null
            from used in Library.Uses(type)
            where used.Scope == Library.Module && Library.Floor(used) is not null
            where Array.IndexOf(_floors, Library.Floor(used)) > Array.IndexOf(_floors, Library.Floor(type))
            select $"{type.FullName} uses {used.FullName}";
        Assert.True(!upward.Any(), string.Join('\n', upward.Distinct()));
    }

    [Fact]
    public void The_check_sees_a_use()
    {
        // The frames' rotation turns the vectors of the floor below; if that were not seen, nothing would be.
        TypeDefinition rotation = Library.Module.Types.Single(type => type.Name == "Rotation`2");
        Assert.Contains("Quantities", Library.Uses(rotation).Where(used => used.Scope == Library.Module).Select(Library.Floor));
    }

    [Fact]
    public void The_library_uses_the_runtime_and_two_numeric_libraries_and_nothing_else() =>
        Assert.Equal(
            _allowedAssemblies,
            Library.Module.AssemblyReferences.Select(a => a.Name).Where(name => !name.StartsWith("System", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
}
