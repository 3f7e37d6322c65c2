using System.Globalization;
using Momentum.Quantities;
using Momentum.Tethers.Deployment.Mechanics;
using UnitsNet;

namespace Momentum.Tethers.Deployment;

/// <summary>One cord with its weight and its drum. Immutable; equality is by value. Checked when it is deployed.</summary>
public sealed record Cord
{
    /// <summary>Mass of the weight at the cord's end, positive.</summary>
    public required Mass WeightMass { get; init; }

    /// <summary>Unstretched length from the weight to the end on the hub, positive.</summary>
    public required Length Length { get; init; }

    /// <summary>Hub radius: from the spin axis to the centreline of the wound cord, positive.</summary>
    public required Length HubRadius { get; init; }

    /// <summary>Height of the cord's plane along the spin axis, from the body origin.</summary>
    public Length PlaneHeight { get; init; }

    /// <summary>
    /// Where the cord leaves the drum while the weight is held, counter-clockwise about the spin axis from the body axis
    /// that follows it in cyclic order (x for spin about z).
    /// </summary>
    public Angle StartAngle { get; init; }

    /// <summary>Which way round the cord is wound.</summary>
    public Winding Winding { get; init; }

    /// <summary>How the wound part lies on the drum.</summary>
    public DrumSurface Surface { get; init; }

    /// <summary>Length between the drum and the held weight's centre of mass, tangent to the drum; zero or positive.</summary>
    public Length Hanging { get; init; }

    /// <summary>Mass of the cord a length; zero or positive.</summary>
    public LinearDensity LineDensity { get; init; }

    /// <summary>
    /// Straight pieces that a cord with mass is cut into, 1 to 64; the mass sits in the joints, half a piece's at either end.
    /// Not used for a cord without mass.
    /// </summary>
    public int Segments { get; init; } = 4;

    /// <summary>Young's modulus times cross-section, E·A; null for a cord that does not stretch.</summary>
    public Force? Stiffness { get; init; }

    /// <summary>Damping of the stretch, as a fraction of the critical damping of the weight on the whole cord.</summary>
    public double DampingRatio { get; init; }

    /// <summary>
    /// Resistance to being peeled off the drum: a moment about the tangent point of this fraction of tension times drum
    /// radius; zero or positive, below 1.
    /// </summary>
    public double DrumFriction { get; init; }

    /// <summary>Tension at which the cord breaks; null if it is not to be watched. The computation does not break it.</summary>
    public Force? BreakingLoad { get; init; }

    /// <summary>When the weight is released: set free from its holder; null if never.</summary>
    public Duration? ReleasedAt { get; init; } = Duration.Zero;

    /// <summary>Free length at which the drum jams; null if it does not. A jammed cord hinges there and lets go by the clock only.</summary>
    public Length? JamsAt { get; init; }

    /// <summary>What makes the cord let go of the hub.</summary>
    public LetGo LetGo { get; init; } = LetGo.Never;

    /// <summary>Straight pieces that the cord is computed in: <see cref="Segments"/>, or one if it has no mass.</summary>
    public int Pieces => LineDensity > LinearDensity.Zero ? Segments : 1;

    /// <summary>+1: its tangent point runs counter-clockwise about the axis as it unwinds; −1: clockwise.</summary>
    /// <param name="spin">Spin about the axis at the start.</param>
    internal double Sense(double spin) => (spin < 0) == (Winding == Winding.OpposesSpin) ? -1 : 1;

    internal CordConstants Check(string name, double spin)
    {
        Allowed.Positive(WeightMass.ToSi(), WeightMass, $"{name}.{nameof(WeightMass)}", "Give the mass of one weight.");
        double length = Allowed.Positive(Length.Meters, Length, $"{name}.{nameof(Length)}", "Give the length of one cord.");
        double radius = Allowed.Positive(HubRadius.Meters, HubRadius, $"{name}.{nameof(HubRadius)}", "Give the radius to the cord's centreline.");
        double hanging = Allowed.ZeroOrPositive(Hanging.Meters, Hanging, $"{name}.{nameof(Hanging)}", "Leave it out if the weight sits on the drum.");
        double density = Allowed.ZeroOrPositive(
            LineDensity.ToSi(), LineDensity, $"{name}.{nameof(LineDensity)}", "Leave it out for a cord without mass.");
        Allowed.Require(double.IsFinite(PlaneHeight.Meters), $"{name}.{nameof(PlaneHeight)}", PlaneHeight, "a finite height");
        Allowed.Require(double.IsFinite(StartAngle.Radians), $"{name}.{nameof(StartAngle)}", StartAngle, "a finite angle");
        Allowed.Require(Segments is >= 1 and <= 64, $"{name}.{nameof(Segments)}", Segments, "1 to 64");
        Allowed.Require(DampingRatio is >= 0 and <= 10, $"{name}.{nameof(DampingRatio)}", DampingRatio, "0 to 10, a fraction of critical damping");
        Allowed.Require(DrumFriction is >= 0 and < 1, $"{name}.{nameof(DrumFriction)}", DrumFriction, "0 or more and below 1, a fraction of the tension");
        double stiffness = Stiffness is { } given
            ? Allowed.Positive(given.Newtons, given, $"{name}.{nameof(Stiffness)}", "Leave it out for a cord that does not stretch.")
            : 0;
        int segments = Pieces;
        Allowed.Require(hanging < length / segments, $"{name}.{nameof(Hanging)}", Hanging, "shorter than the cord, and than one segment of a cord with mass");
        double jams = double.PositiveInfinity;
        if (JamsAt is { } jam)
        {
            jams = jam.Meters;
            Allowed.Require(jams > hanging && jams < length, $"{name}.{nameof(JamsAt)}", jam, "more than what hangs at the start and less than the cord");
        }

        double freed = double.PositiveInfinity;
        if (ReleasedAt is { } time)
        {
            freed = time.Seconds;
            Allowed.Require(freed >= 0 && double.IsFinite(freed), $"{name}.{nameof(ReleasedAt)}", time, "zero or later, or null for never");
        }

        Allowed.Require(Surface == DrumSurface.Grooved || segments == 1, $"{name}.{nameof(Surface)}", Surface, "grooved for a cord with mass in more than one segment");
        Allowed.Require(
            LetGo.Si.Kind != LetGoKind.SpinRate || LetGo.Si.Value < Math.Abs(spin),
            $"{name}.{nameof(LetGo)}",
            LetGo,
            "a spin rate below the initial one");
        Allowed.Require(
            LetGo.Si.Kind != LetGoKind.CordAngle || LetGo.Si.Value > CordConstants.NeverWound - ((length - hanging) / radius),
            $"{name}.{nameof(LetGo)}",
            LetGo,
            "a cord angle after the start, where the whole cord but what hangs is still wound");
        return new CordConstants
        {
            Weight = WeightMass.ToSi(),
            Length = length,
            FreeAtStart = hanging,
            LineDensity = density,
            Segments = segments,
            Stiffness = stiffness,
            DampingRatio = DampingRatio,
            Friction = DrumFriction,
            FrictionSpeed = 1e-3 * radius * Math.Abs(spin),
            Radius = radius,
            Height = PlaneHeight.Meters,
            StartAngle = StartAngle.Radians,
            Sense = Sense(spin),
            Smooth = Surface == DrumSurface.Smooth,
            FreedAt = freed,
            JamsAt = jams,
            LetGo = JamsAt is null || LetGo.Si.Kind is LetGoKind.Time ? LetGo.Si : default,
        };
    }

    /// <summary>Weight, length, hub radius and line density, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"weight {WeightMass}, length {Length}, hub radius {HubRadius}, line density {LineDensity}");
}
