using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>A mass to be added at one station so that the body comes into balance.</summary>
/// <typeparam name="TFrame">The body's frame.</typeparam>
/// <param name="Mass">The mass; zero if the station needs none.</param>
/// <param name="At">Where it goes; treated as a point.</param>
/// <param name="Bearing">Its angle about the spin axis, right-handed from the balance's zero bearing, −180 to 180 degrees.</param>
public readonly record struct CorrectionMass<TFrame>(Mass Mass, Position<TFrame> At, Angle Bearing)
    where TFrame : struct, IFrame;
