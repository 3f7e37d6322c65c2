using System.Globalization;
using Mono.Cecil;
using Mono.Cecil.Cil;

namespace Momentum.Tests.Architecture;

/// <summary>The same input gives the same output: the library reads no culture, clock, environment, chance or console.</summary>
public sealed class SurroundingsTests
{
    // What the compiler writes into every iterator, to tell whether one may be used again.
    private const string IteratorsOwn = "System.Environment::get_CurrentManagedThreadId";

    private static readonly HashSet<string> _forbiddenTypes =
    [
        "System.Console", "System.Environment", "System.AppContext", "System.TimeProvider", "System.TimeZoneInfo",
        "System.Diagnostics.Stopwatch", "System.Diagnostics.Process", "System.Diagnostics.Trace", "System.Diagnostics.Debug",
        "System.Net.Http.HttpClient", "System.IO.File", "System.IO.Directory", "System.Threading.Thread",
    ];

    private static readonly HashSet<string> _forbiddenMembers =
    [
        "System.Globalization.CultureInfo::get_CurrentCulture", "System.Globalization.CultureInfo::get_CurrentUICulture",
        "System.Globalization.NumberFormatInfo::get_CurrentInfo", "System.Globalization.DateTimeFormatInfo::get_CurrentInfo",
        "System.DateTime::get_Now", "System.DateTime::get_UtcNow", "System.DateTime::get_Today",
        "System.DateTimeOffset::get_Now", "System.DateTimeOffset::get_UtcNow",
        "System.Guid::NewGuid", "System.Random::get_Shared", "System.Threading.Thread::get_CurrentThread",
    ];

    // Their text is the same in every culture.
    private static readonly HashSet<string> _textIsFixed =
    [
        "System.String", "System.Char", "System.Boolean", "System.Byte", "System.UInt16", "System.UInt32", "System.UInt64", "System.Int32", "System.Type",
    ];

    [Fact]
    public void No_code_reads_culture_clock_environment_chance_or_console()
    {
        IEnumerable<string> found =
            from method in Library.Methods
            from mention in Library.Mentions(method)
            where mention != IteratorsOwn
            where _forbiddenMembers.Contains(mention) || _forbiddenTypes.Contains(mention.Split("::")[0]) || mention == "System.Random::.ctor" && !IsSeeded(method)
            select $"{method.FullName} uses {mention}";
        Assert.True(!found.Any(), string.Join('\n', found.Distinct()));
    }

    [Fact]
    public void No_text_is_made_in_the_current_culture()
    {
        IEnumerable<string> found = Library.Methods.Where(method => !IsPrintedByNobody(method)).SelectMany(CultureBoundTexts);
        Assert.True(!found.Any(), string.Join('\n', found.Distinct()));
    }

    [Fact]
    public void The_check_of_texts_sees_one_made_in_the_current_culture()
    {
        using ModuleDefinition tests = ModuleDefinition.ReadModule(typeof(SurroundingsTests).Assembly.Location);
        TypeDefinition samples = tests.GetTypes().Single(type => type.Name == nameof(Samples));
        Assert.NotEmpty(CultureBoundTexts(samples.Methods.Single(m => m.Name == nameof(Samples.Interpolated))));
        Assert.NotEmpty(CultureBoundTexts(samples.Methods.Single(m => m.Name == nameof(Samples.Plain))));
        Assert.Empty(CultureBoundTexts(samples.Methods.Single(m => m.Name == nameof(Samples.Invariant))));
    }

    // A record that writes its own ToString() leaves behind the printer of members that the compiler made for it; and
    // nobody prints one that is not public.
    private static bool IsPrintedByNobody(MethodDefinition method) =>
        method.Name == "PrintMembers" && (!method.DeclaringType.IsPublic || method.DeclaringType.Methods.Single(m => m.Name == "ToString" && m.Parameters.Count == 0).Body.Instructions
            .All(i => i.Operand is not MethodReference { Name: "PrintMembers" }));

    private static bool IsSeeded(MethodDefinition method) =>
        method.Body.Instructions.Where(i => i.OpCode == OpCodes.Newobj).Select(i => i.Operand).OfType<MethodReference>()
            .Where(m => m.DeclaringType.FullName == "System.Random").All(m => m.Parameters.Count == 1);

    // Two ways in which C# makes text in the current culture without saying so: x.ToString() on a number or quantity
    // (record types do it for each of their members), and a number in a $"..." that is not given a culture.
    private static IEnumerable<string> CultureBoundTexts(MethodDefinition method)
    {
        bool handlerWithoutCulture = false;
        foreach (Instruction instruction in method.Body.Instructions)
        {
            if (instruction.Operand is not MethodReference called)
            {
                continue;
            }

            if (called.Name == "ToString" && called.Parameters.Count == 0)
            {
                TypeReference on = instruction.Previous?.OpCode == OpCodes.Constrained ? (TypeReference)instruction.Previous.Operand : called.DeclaringType;
                if (IsCultureBound(on))
                {
                    yield return $"{method.FullName} calls {on.FullName}.ToString() without a culture";
                }
            }

            if (called.DeclaringType.Name != "DefaultInterpolatedStringHandler")
            {
                continue;
            }

            if (called.Name == ".ctor")
            {
                handlerWithoutCulture = called.Parameters.Count == 2;
            }
            else if (handlerWithoutCulture && called is GenericInstanceMethod { Name: "AppendFormatted" } format && IsCultureBound(format.GenericArguments[0]))
            {
                yield return $"{method.FullName} puts a {format.GenericArguments[0].FullName} into a text without a culture";
            }
        }
    }

    private static bool IsCultureBound(TypeReference type)
    {
        if (type is GenericParameter or ArrayType || _textIsFixed.Contains(type.FullName))
        {
            return type is GenericParameter;
        }

        // Our own types say in their documentation that ToString() is invariant; that is tested with them.
        TypeDefinition? definition = type.Resolve();
        return definition is { IsEnum: false } && definition.Module != Library.Module && definition.Interfaces.Any(i => i.InterfaceType.FullName == "System.IFormattable");
    }

    private static class Samples
    {
        internal static string Interpolated(double x) => $"is {x}";

#pragma warning disable CA1305 // What the check has to find.
        internal static string Plain(double x) => x.ToString();
#pragma warning restore CA1305

        internal static string Invariant(double x) => string.Create(CultureInfo.InvariantCulture, $"is {x}");
    }
}
