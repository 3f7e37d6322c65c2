namespace Momentum.Cases.Keys;

/// <summary>Lets a whole section be written as one text, which stands for the named property.</summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class ShorthandAttribute(string property) : Attribute
{
    public string Property => property;
}
