using Momentum.Quantities;

namespace Momentum.Inertia;

/// <summary>The axes in which a solid is described, before it is turned and placed in an assembly.</summary>
public readonly struct Part : IFrame;
