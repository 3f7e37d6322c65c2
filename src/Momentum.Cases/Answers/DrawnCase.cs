using Momentum.Cases.Sections;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>A case with drawn values in place of the uncertain ones.</summary>
/// <param name="Case">The case, with what all weights and cords share.</param>
/// <param name="Cords">For each cord the section of weights and cords with what that cord has of its own.</param>
/// <param name="NutationDirection">To which side of the spin axis the angular momentum leans before release, which nobody knows.</param>
/// <param name="LateCord">Which weight is the one that lets go late.</param>
internal sealed record DrawnCase(Case Case, IReadOnlyList<DespinSection> Cords, Angle NutationDirection, int LateCord);
