namespace Momentum.Cases.Syntax;

/// <summary>Where something stands in the case file: line and column, both counted from 1.</summary>
internal readonly record struct Place(int Line, int Column);
