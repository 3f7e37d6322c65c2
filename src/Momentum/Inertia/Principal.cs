using Momentum.Quantities;

namespace Momentum.Inertia;

/// <summary>
/// The principal axes of a body: first the axis of the smallest moment of inertia, last that of the largest.
/// </summary>
public readonly struct Principal : IFrame;
