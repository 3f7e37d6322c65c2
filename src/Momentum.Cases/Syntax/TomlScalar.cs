namespace Momentum.Cases.Syntax;

/// <summary>A number, a truth value or a date, kept as written.</summary>
internal sealed record TomlScalar(TomlScalarKind Kind, string Text, Place Place) : TomlNode(Place)
{
    public override string What => Kind switch
    {
        TomlScalarKind.Whole or TomlScalarKind.Decimal => "a bare number",
        TomlScalarKind.Truth => "a truth value",
        _ => "a date",
    };

    public override string Quoted => TomlText.Glimpse(Text);
}
