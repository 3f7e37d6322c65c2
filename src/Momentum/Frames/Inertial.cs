using Momentum.Quantities;

namespace Momentum.Frames;

/// <summary>Axes that do not turn, in which Newton's laws hold.</summary>
public readonly struct Inertial : IFrame;
