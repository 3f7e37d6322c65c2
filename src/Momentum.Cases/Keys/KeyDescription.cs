using System.Reflection;
using System.Text;
using Momentum.Cases.Quantities;

namespace Momentum.Cases.Keys;

/// <summary>What is known of one key, read from its property.</summary>
internal sealed class KeyDescription
{
    private readonly PropertyInfo _property;
    private readonly KeyAttribute _attribute;

    public KeyDescription(PropertyInfo property, KeyAttribute attribute)
    {
        _property = property;
        _attribute = attribute;
        Name = SpellingOf(property.Name);
        Type type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
        {
            type = type.GetGenericArguments()[0];
            (Form, Length) = typeof(Section).IsAssignableFrom(type) ? (KeyForm.Sections, 0) : type == typeof(string) ? (KeyForm.Texts, 0) : (KeyForm.Triple, 3);
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() is { } open && (open == typeof(Stated<>) || open == typeof(Limit<>)))
        {
            Form = Form == KeyForm.Triple ? KeyForm.Triple : open == typeof(Limit<>) ? KeyForm.Limit : KeyForm.Quantity;
            Quantity = QuantityKinds.ByType[type.GetGenericArguments()[0]];
        }
        else if (Form is not (KeyForm.Sections or KeyForm.Texts))
        {
            Form = type == typeof(string) ? KeyForm.Text
                : type == typeof(int) ? KeyForm.Count
                : type == typeof(bool) ? KeyForm.Truth
                : type.IsEnum ? KeyForm.Choice
                : typeof(Section).IsAssignableFrom(type) ? KeyForm.Section
                : throw new NotSupportedException($"{property.DeclaringType}.{property.Name}: no key has values of type {type}.");
        }

        ValueType = type;
        Choices = type.IsEnum ? [.. Enum.GetNames(type).Select(Phrase)] : [];
    }

    public string Name { get; }

    /// <summary>The name of the property.</summary>
    public string Property => _property.Name;

    public KeyForm Form { get; }

    /// <summary>Number of items of a triple.</summary>
    public int Length { get; }

    /// <summary>The kind of quantity, where the key has one.</summary>
    public QuantityKind? Quantity { get; }

    /// <summary>The type of one value: the quantity's record, the enumeration, the section.</summary>
    public Type ValueType { get; }

    /// <summary>The words allowed, where the key is a choice.</summary>
    public IReadOnlyList<string> Choices { get; }

    public string Doc => _attribute.Doc;

    public string Example => _attribute.Example;

    public bool Required => _attribute.Required;

    public bool InStarter => _attribute.InStarter;

    public bool NotUsedYet => _attribute.NotUsedYet;

    /// <summary>The name that the key had before, if it had another.</summary>
    public string? Was => _attribute.Was;

    public string? NoTolerance => _attribute.NoTolerance ?? (NotUsedYet ? "nothing is computed from it yet, so that a tolerance cannot act" : null);

    public bool AllowsBand => _attribute.AllowsBand;

    public bool IsScatter => _attribute.IsScatter;

    public bool OfEachCord => _attribute.OfEachCord;

    /// <summary>The least value that may be drawn, SI.</summary>
    public double Least => IsScatter ? double.NegativeInfinity
        : MoreThan is { } more ? Si(more) + Quantity!.Smallest
        : AtLeast is { } least ? Si(least)
        : double.NegativeInfinity;

    /// <summary>The largest value that may be drawn, SI.</summary>
    public double Most => !IsScatter && AtMost is { } most ? Si(most) : double.PositiveInfinity;

    public string? MoreThan => _attribute.MoreThan;

    public string? AtLeast => _attribute.AtLeast;

    public string? AtMost => _attribute.AtMost;

    /// <summary>What may stand there, in words: for messages and the schema.</summary>
    public string Allowed => Form switch
    {
        KeyForm.Quantity => $"{Quantity!.OneOf} with its unit{Bounds}",
        KeyForm.Limit => $"<, <=, > or >= and {Quantity!.OneOf} with its unit{(AllowsBand ? ", or a band from the smaller to the larger" : "")}",
        KeyForm.Triple => $"a list of three: x, y and z, each {Quantity!.OneOf} with its unit{Bounds}",
        KeyForm.Choice => string.Join(" or ", Choices.Select(c => $"\"{c}\"")),
        KeyForm.Count => $"a whole number without a unit{Bounds}",
        KeyForm.Texts => "a list of texts in double quotes",
        KeyForm.Truth => "true or false",
        KeyForm.Text => "a text in double quotes",
        KeyForm.Sections => "a list of tables",
        _ => SectionDescription.Of(ValueType).Shorthand is { } shorthand ? $"{shorthand.Allowed} or a table" : "a table",
    };

    /// <summary>The range in words, beginning with a comma, or nothing.</summary>
    public string Bounds => string.Concat(
        MoreThan is null ? "" : $", more than {MoreThan}",
        AtLeast is null ? "" : $", at least {AtLeast}",
        AtMost is null ? "" : $", at most {AtMost}");

    /// <summary>How to write it right.</summary>
    /// <param name="path">The key with the sections that it is in.</param>
    public string Remedy(string path) => Form == KeyForm.Sections ? $"Write a [[{path}]] header for each."
        : Example.Length == 0 ? $"Begin the section with [{path}] on a line of its own."
        : $"Write for example {Name} = {Example}.";

    public object? Get(Section section) => _property.GetValue(section);

    public void Set(Section section, object? value) => _property.SetValue(section, value);

    /// <summary>Snake case of a property's name.</summary>
    public static string SpellingOf(string property) => Split(property, '_');

    /// <summary>Words of an enumeration's member.</summary>
    public static string Phrase(string member) => Split(member, ' ');

    public static string Join(string path, string key) => path.Length == 0 ? key : $"{path}.{key}";

    private double Si(string bound) => QuantityText.Parse(bound, Quantity!, out _)!.Si;

    private static string Split(string pascal, char separator)
    {
        var text = new StringBuilder();
        foreach (char c in pascal)
        {
            if (char.IsUpper(c) && text.Length > 0)
            {
                text.Append(separator);
            }

            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }
}
