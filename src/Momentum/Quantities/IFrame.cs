namespace Momentum.Quantities;

/// <summary>
/// Marks a type as the name of a set of axes. A frame carries no data: it exists so that components along different
/// axes are different types and cannot be mixed.
/// </summary>
/// <remarks>Declare your own with <c>public readonly struct Camera : IFrame;</c>.</remarks>
#pragma warning disable CA1040 // An empty interface is the point: it constrains type parameters at compile time.
public interface IFrame;
#pragma warning restore CA1040
