using System.Collections.Concurrent;
using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using Momentum.Cases.Sections;

namespace Momentum.Cases.Keys;

/// <summary>The keys of one kind of section, in the order in which its type declares them.</summary>
internal sealed class SectionDescription
{
    private static readonly ConcurrentDictionary<Type, SectionDescription> _known = new();

    // Trimming does not see that the keys are found by reflection; every kind of section is named here, which a test holds.
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(Case))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(BenchSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(BurnSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(CordSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(DeckEdgeSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(DespinSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(InertiaSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(LetGoSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(OrbitSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(PartSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(RequireSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(SpinSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(VehicleSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(SpreadSection))]
    [DynamicDependency(DynamicallyAccessedMemberTypes.All, typeof(CorrelatedSection))]
    [UnconditionalSuppressMessage("Trimming", "IL2070", Justification = "Every kind of section is kept whole by the dependencies above.")]
    private SectionDescription(Type type)
    {
        Type = type;
        Keys = [.. from property in type.GetProperties(BindingFlags.Instance | BindingFlags.Public)
                   let attribute = property.GetCustomAttribute<KeyAttribute>()
                   where attribute is not null
                   orderby attribute.Line
                   select new KeyDescription(property, attribute)];
        string? shorthand = type.GetCustomAttribute<ShorthandAttribute>()?.Property;
        Shorthand = shorthand is null ? null : Keys.Single(k => k.Name == KeyDescription.SpellingOf(shorthand));
    }

    public Type Type { get; }

    /// <summary>A section without any value.</summary>
    [UnconditionalSuppressMessage("Trimming", "IL2072", Justification = "Every kind of section is kept whole by the constructor's dependencies.")]
    public Section Blank() => (Section)Activator.CreateInstance(Type, nonPublic: true)!;

    public IReadOnlyList<KeyDescription> Keys { get; }

    /// <summary>The key for which a bare text may stand in place of the table.</summary>
    public KeyDescription? Shorthand { get; }

    public static SectionDescription Of(Type section) => _known.GetOrAdd(section, type => new SectionDescription(type));

    /// <summary>Every key in the file format with the path of its section, for "it belongs to".</summary>
    public IEnumerable<(string Section, string Key)> Everywhere(string path = "")
    {
        foreach (KeyDescription key in Keys)
        {
            yield return (path, key.Name);
            if (key.Form is KeyForm.Section or KeyForm.Sections)
            {
                foreach ((string Section, string Key) inner in Of(key.ValueType).Everywhere(KeyDescription.Join(path, key.Name)))
                {
                    yield return inner;
                }
            }
        }
    }
}
