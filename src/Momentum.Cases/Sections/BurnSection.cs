using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>The powered, spinning phase before release.</summary>
internal sealed record BurnSection : Section
{
    [Key("Mean thrust.", Example = "\"9.5 kN\"", Required = true, MoreThan = "0 N")]
    public Stated<Force> Thrust { get; init; } = null!;

    [Key("Burning time.", Example = "\"18 s\"", Required = true, MoreThan = "0 s")]
    public Stated<Duration> Duration { get; init; } = null!;

    [Key("Propellant burnt.", Example = "\"61 kg\"", MoreThan = "0 kg")]
    public Stated<Mass>? PropellantMass { get; init; }

    [Key("Angle between the thrust line and the spin axis.", Example = "\"0.1 deg\"", AtMost = "90 deg")]
    public Stated<Angle>? ThrustMisalignment { get; init; }

    [Key("Distance of the thrust line from the centre of mass.", Example = "\"0.5 mm\"")]
    public Stated<Length>? ThrustOffset { get; init; }
}
