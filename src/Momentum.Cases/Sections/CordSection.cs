using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>The cords, all alike.</summary>
internal sealed record CordSection : Section
{
    [Key("Mass of the cord a length. Left out: without mass.", Example = "\"5.2 g/m\"", MoreThan = "0 g/m", OfEachCord = true)]
    public Stated<LinearDensity>? LineDensity { get; init; }

    [Key("Axial stiffness E*A of one cord; leave it out for a cord that does not stretch.", Example = "\"85 kN\"", MoreThan = "0 N", OfEachCord = true)]
    public Stated<Force>? Stiffness { get; init; }

    [Key("Whether to size the cords as springs, so that the final spin forgives an error of the spin-up: stiffness is then solved for, with cord_length or weight_mass. Needs a final_rate above zero, and neither stiffness nor line_density.", Example = "true")]
    public bool ForgiveSpinUp { get; init; }

    [Key("Breaking load of one cord with its end fittings, from the supplier or a pull test.", Example = "\"1.6 kN\"", InStarter = true, MoreThan = "0 N", OfEachCord = true)]
    public Stated<Force>? BreakingLoad { get; init; }

    [Key("Damping of the cord's stretch, as a fraction of the critical damping of the weight on the whole cord.", Example = "\"0.02\"", AtLeast = "0", AtMost = "10", OfEachCord = true)]
    public Stated<Ratio>? Damping { get; init; }

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        if (ForgiveSpinUp && Stiffness is not null)
        {
            findings.Error(
                this, nameof(Stiffness), "forgive_spin_up = true solves for it, so that it cannot be stated as well",
                "stiffness or forgive_spin_up = true", "Remove stiffness, or keep it and remove forgive_spin_up.");
        }

        if (ForgiveSpinUp && LineDensity is not null)
        {
            findings.Error(
                this, nameof(LineDensity), "with forgive_spin_up = true the cords are sized as springs without mass",
                "line_density or forgive_spin_up = true", "Remove line_density, or remove forgive_spin_up and state a stiffness.");
        }

        if (Damping is not null && Stiffness is null && !ForgiveSpinUp)
        {
            findings.Warn(this, nameof(Damping), "without stiffness the cord does not stretch, and its damping has no effect", "Add stiffness, or remove damping.");
        }
    }
}
