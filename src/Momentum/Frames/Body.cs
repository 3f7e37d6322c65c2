using Momentum.Quantities;

namespace Momentum.Frames;

/// <summary>Axes fixed in the spinning body. By custom of this library the third axis is near the spin axis.</summary>
public readonly struct Body : IFrame;
