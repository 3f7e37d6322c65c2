namespace Momentum.Cases.Syntax;

/// <summary>A key's own place and its value.</summary>
internal readonly record struct TomlEntry(Place KeyPlace, TomlNode Value);
