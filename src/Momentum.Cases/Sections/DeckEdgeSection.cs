using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>The round edge of a deck that a cord swinging out of its plane may touch.</summary>
internal sealed record DeckEdgeSection : Section
{
    [Key("Radius of the edge about the spin axis, at least the hub radius.", Example = "\"420 mm\"", Required = true, MoreThan = "0 mm")]
    public Stated<Length> Radius { get; init; } = null!;

    [Key("Height of the edge above the cord plane, along the spin axis; negative below it.", Example = "\"60 mm\"", Required = true)]
    public Stated<Length> Height { get; init; } = null!;

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        if (Height.Value.Meters == 0)
        {
            findings.Error(
                this, nameof(Height), "the edge would lie in the cord plane, where every cord touches it",
                "more or less than 0 mm", "Give the height above the cord plane, or negative below it.");
        }
    }
}
