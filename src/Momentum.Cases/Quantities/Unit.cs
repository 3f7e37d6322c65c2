namespace Momentum.Cases.Quantities;

/// <summary>A unit found by its spelling: one of UnitsNet's, or a trade unit given by its exact factor to SI.</summary>
/// <param name="Known">UnitsNet's unit; null for a unit that UnitsNet lacks.</param>
/// <param name="SiFactor">SI value of one unit; used where <paramref name="Known"/> is null.</param>
internal readonly record struct Unit(Enum? Known, double SiFactor);
