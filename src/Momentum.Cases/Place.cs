namespace Momentum.Cases;

/// <summary>Where something stands in the case file: line and column, both counted from 1.</summary>
public readonly record struct Place(int Line, int Column);
