using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>The orbit at release.</summary>
internal sealed record OrbitSection : Section
{
    [Key("Height of the perigee above the mean equatorial radius.", Example = "\"310 km\"", Required = true, MoreThan = "0 km")]
    public Stated<Length> PerigeeHeight { get; init; } = null!;

    [Key("Height of the apogee.", Example = "\"540 km\"", Required = true, MoreThan = "0 km")]
    public Stated<Length> ApogeeHeight { get; init; } = null!;

    [Key("Inclination.", Example = "\"51.6 deg\"", AtLeast = "0 deg", AtMost = "180 deg")]
    public Stated<Angle>? Inclination { get; init; }

    /// <inheritdoc/>
    public override void Judge(Findings findings)
    {
        if (ApogeeHeight.Value.Meters < PerigeeHeight.Value.Meters)
        {
            findings.Error(this, nameof(ApogeeHeight), "it is lower than the perigee", "at least perigee_height", "Exchange the two.");
        }
    }
}
