using Momentum.Cases.Keys;
using Momentum.Cases.Quantities;
using UnitsNet;

namespace Momentum.Cases.Sections;

/// <summary>A rig on a bearing.</summary>
internal sealed record BenchSection : Section
{
    [Key("Constant friction torque of the bearing.", Example = "\"0.02 N*m\"", AtLeast = "0 N*m")]
    public Stated<Torque>? FrictionTorque { get; init; }

    [Key("Time in which the free rig loses 63 per cent of its rate by viscous friction.", Example = "\"240 s\"", MoreThan = "0 s")]
    public Stated<Duration>? SpinDownTime { get; init; }

    [Key("Local gravity.", Example = "\"9.81 m/s^2\"", AtLeast = "0 m/s^2")]
    public Stated<Acceleration>? Gravity { get; init; }

    [Key("Height of the cord plane above the floor.", Example = "\"1.1 m\"", MoreThan = "0 m", NoTolerance = "it is for the safety of people and rig, where the worst value is stated and not a likely one")]
    public Stated<Length>? CordHeight { get; init; }

    [Key("Distance from the axis to the nearest wall or net.", Example = "\"3.5 m\"", MoreThan = "0 m", NoTolerance = "it is for the safety of people and rig, where the worst value is stated and not a likely one")]
    public Stated<Length>? WallDistance { get; init; }
}
