namespace Momentum.Cases.Syntax;

/// <summary>A value of the case file with the place where it stands.</summary>
internal abstract record TomlNode(Place Place)
{
    /// <summary>What the value is, in the words a message uses: "a number", "a table".</summary>
    public abstract string What { get; }

    /// <summary>The value as a message quotes it, shortened if long.</summary>
    public abstract string Quoted { get; }
}
