using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>The round edge of a deck that a cord swinging out of the drum's plane may touch. Equality is by both members.</summary>
/// <param name="Radius">From the drums' axis; at least the radius of every drum.</param>
/// <param name="Height">Along the spin axis, from the body origin; not that of a drum.</param>
public readonly record struct DeckEdge(Length Radius, Length Height);
