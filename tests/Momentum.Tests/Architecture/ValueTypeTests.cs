using System.Numerics;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Xml.Linq;
using Momentum.Quantities;

namespace Momentum.Tests.Architecture;

/// <summary>All value types behave alike, and each says in its documentation what a user of one must know.</summary>
public sealed class ValueTypeTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Assembly _library = typeof(IFrame).Assembly;

    private static readonly Dictionary<string, XElement> _documentation = XDocument
        .Load(Path.ChangeExtension(_library.Location, ".xml"))
        .Descendants("member")
        .ToDictionary(member => (string)member.Attribute("name")!);

    /// <summary>Every public struct but the frames, which carry no data, and those that live on the stack only.</summary>
    public static TheoryData<string> ValueTypes =>
        [.. _library.GetExportedTypes().Where(t => t.IsValueType && !t.IsEnum && !t.IsByRefLike && !IsFrame(t)).Select(t => t.FullName!)];

    [Fact]
    public void Frames_carry_no_data() =>
        Assert.Empty(_library.GetTypes().Where(t => t.IsValueType && IsFrame(t)).SelectMany(t => t.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic)));

    [Theory]
    [MemberData(nameof(ValueTypes))]
    public void A_value_type_cannot_be_changed(string name) =>
        Assert.NotNull(Find(name).GetCustomAttribute<IsReadOnlyAttribute>());

    [Theory]
    [MemberData(nameof(ValueTypes))]
    public void A_value_type_compares_by_value_in_every_way_that_the_language_has(string name)
    {
        Type type = Find(name);
        Assert.True(Implements(type, typeof(IEquatable<>)), "does not implement IEquatable");
        Assert.True(Implements(type, typeof(IEqualityOperators<,,>)), "does not implement IEqualityOperators");
        Assert.NotNull(type.GetMethod("op_Equality", Declared));
        Assert.NotNull(type.GetMethod("op_Inequality", Declared));
        Assert.NotNull(type.GetMethod(nameof(Equals), Declared, [typeof(object)]));
        Assert.NotNull(type.GetMethod(nameof(GetHashCode), Declared, Type.EmptyTypes));
    }

    [Theory]
    [MemberData(nameof(ValueTypes))]
    public void A_value_type_prints_itself(string name) =>
        Assert.NotNull(Find(name).GetMethod(nameof(ToString), Declared, Type.EmptyTypes));

    [Theory]
    [MemberData(nameof(ValueTypes))]
    public void A_value_type_that_is_ordered_is_ordered_in_every_way_that_the_language_has(string name)
    {
        Type type = Find(name);
        Assert.Equal(Implements(type, typeof(IComparable<>)), Implements(type, typeof(IComparisonOperators<,,>)));
    }

    [Theory]
    [MemberData(nameof(ValueTypes))]
    public void A_value_type_says_what_default_means_and_how_equality_is_decided(string name)
    {
        XElement member = _documentation["T:" + name];
        string text = member.Value + string.Concat(member.Descendants("c").Select(c => c.Value));
        Assert.Contains("default", text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("equal", text, StringComparison.OrdinalIgnoreCase);
    }

    private static bool Implements(Type type, Type genericInterface) =>
        type.GetInterfaces().Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == genericInterface);

    private static bool IsFrame(Type type) => typeof(IFrame).IsAssignableFrom(type);

    private static Type Find(string name) => _library.GetType(name, throwOnError: true)!;
}
