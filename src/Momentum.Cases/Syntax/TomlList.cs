namespace Momentum.Cases.Syntax;

internal sealed record TomlList(IReadOnlyList<TomlNode> Items, Place Place) : TomlNode(Place)
{
    public override string What => $"a list of {Items.Count}";

    public override string Quoted => "[…]";
}
