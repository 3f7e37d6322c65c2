namespace Momentum.Cases.Syntax;

/// <summary>A table with its keys in file order; <see cref="TomlNode.Place"/> is its header's or its brace's.</summary>
internal sealed record TomlTable(Place Place) : TomlNode(Place)
{
    private readonly OrderedDictionary<string, TomlEntry> _entries = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, TomlEntry> Entries => _entries;

    public override string What => "a table";

    public override string Quoted => "{…}";

    /// <summary>False if the key is there already.</summary>
    public bool TryAdd(string key, TomlEntry entry) => _entries.TryAdd(key, entry);
}
