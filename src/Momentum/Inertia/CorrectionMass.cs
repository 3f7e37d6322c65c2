using System.Globalization;
using System.Numerics;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>A mass to be added at one station so that the body comes into balance.</summary>
/// <remarks><c>default</c> is no mass, at the origin. Equality is by all members.</remarks>
/// <typeparam name="TFrame">The body's frame.</typeparam>
/// <param name="Mass">The mass; zero if the station needs none.</param>
/// <param name="At">Where it goes; treated as a point.</param>
/// <param name="Bearing">Its angle about the spin axis, right-handed from the balance's zero bearing, −180 to 180 degrees.</param>
public readonly record struct CorrectionMass<TFrame>(Mass Mass, Position<TFrame> At, Angle Bearing)
    : IEqualityOperators<CorrectionMass<TFrame>, CorrectionMass<TFrame>, bool>
    where TFrame : struct, IFrame
{
    /// <summary>Mass, place and bearing, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Mass} at {At}, bearing {Bearing}");
}
