using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>When a cord lets go of the hub.</summary>
[Shorthand(nameof(Rule))]
internal sealed record LetGoSection : Section
{
    [Key("The moment by its name.", Example = "\"radial\"")]
    public LetGoRule? Rule { get; init; }

    [Key("The cord's angle from the tangent: 0 deg is tangent, 90 deg is radial, beyond it the cord pulls the spin up again.", Example = "\"60 deg\"", AtLeast = "0 deg", AtMost = "180 deg", OfEachCord = true)]
    public Stated<Angle>? Angle { get; init; }

    [Key("The spin rate that a sensor lets go at.", Example = "\"10 rpm\"", OfEachCord = true)]
    public Stated<RotationalSpeed>? Rate { get; init; }

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        int given = (Rule is null ? 0 : 1) + (Angle is null ? 0 : 1) + (Rate is null ? 0 : 1);
        if (given != 1)
        {
            findings.Error(
                this, null, given == 0 ? "it says no moment" : "it says more than one moment",
                "\"tangent\", \"radial\", { angle = … } or { rate = … }", "Write for example let_go = \"radial\" or let_go = { angle = \"60 deg\" }.");
        }
    }
}
