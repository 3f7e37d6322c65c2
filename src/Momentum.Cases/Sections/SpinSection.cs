using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>The motion before release.</summary>
internal sealed record SpinSection : Section
{
    [Key("Spin rate before release, about the spin axis.", Example = "\"60 rpm +/- 2 %\"", Required = true, InStarter = true, MoreThan = "0 rpm")]
    public Stated<RotationalSpeed> Rate { get; init; } = null!;

    [Key("Nutation half-angle before release: between spin axis and angular momentum.", Example = "\"0.8 deg\"", AtLeast = "0 deg", AtMost = "90 deg", Was = "wobble")]
    public Stated<Angle>? Nutation { get; init; }
}
