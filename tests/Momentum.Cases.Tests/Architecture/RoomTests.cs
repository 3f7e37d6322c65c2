using System.Reflection;
using Momentum.Tests.Architecture;
using Mono.Cecil;

namespace Momentum.Cases.Tests.Architecture;

/// <summary>How the way from a case to its answer is laid out: a room uses only those before it.</summary>
public sealed class RoomTests
{
    // The first first: what a case is and how it is read; what runs the library; what writes answers; the verbs with their files.
    private static readonly string[] _rooms = ["Cases", "Answers", "Report", "Tool"];

    // Sizing, deploying, integrating, drawing cases: everything that may take long or be refused is asked for in one room.
    private static readonly string[] _runs = ["Deploy", "Integrate", "Sensitivity", "ExplainFinalSpin", "Run", "SizeCordLength", "SizeWeightMass", "SizeSpringCord", "Carrying"];

    private static readonly ModuleDefinition[] _modules =
    [
        ModuleDefinition.ReadModule(typeof(CaseReader).Assembly.Location),
        ModuleDefinition.ReadModule(Assembly.Load("Momentum.Tool").Location),
    ];

    [Fact]
    public void A_room_uses_only_those_before_it()
    {
        IEnumerable<string> backward =
            from type in _modules.SelectMany(m => m.GetTypes())
            where Room(type) is not null
            from used in Library.Uses(type)
            where Room(used) is not null
            where Array.IndexOf(_rooms, Room(used)) > Array.IndexOf(_rooms, Room(type))
            select $"{type.FullName} uses {used.FullName}";
        Assert.True(!backward.Any(), string.Join('\n', backward.Distinct()));
    }

    [Fact]
    public void Every_type_is_in_a_room()
    {
        Assert.Empty(_modules.SelectMany(m => m.Types).Where(type => type.Namespace.StartsWith("Momentum", StringComparison.Ordinal) && Array.IndexOf(_rooms, Room(type)) < 0).Select(type => type.FullName));
        Assert.All(_rooms, room => Assert.Contains(_modules.SelectMany(m => m.Types), type => Room(type) == room));
    }

    [Fact]
    public void The_library_is_run_in_the_room_of_answers_alone()
    {
        IEnumerable<string> found =
            from type in _modules.SelectMany(m => m.GetTypes())
            where Room(type) is not null and not "Answers"
            from method in type.Methods
            where method.HasBody
            from mention in Library.Mentions(method)
            where mention.StartsWith("Momentum.Tethers.", StringComparison.Ordinal) || mention.StartsWith("Momentum.Dispersion.", StringComparison.Ordinal)
            where _runs.Contains(mention.Split("::")[1])
            select $"{method.FullName} calls {mention}";
        Assert.True(!found.Any(), string.Join('\n', found.Distinct()));
    }

    private static string? Room(TypeReference type)
    {
        while (type.DeclaringType is not null)
        {
            type = type.DeclaringType;
        }

        return type.Namespace.Split('.') switch
        {
            ["Momentum", "Cases", "Answers", ..] => "Answers",
            ["Momentum", "Cases", "Report", ..] => "Report",
            ["Momentum", "Cases", ..] => "Cases",
            ["Momentum", "Tool", ..] => "Tool",
            _ => null,
        };
    }
}
