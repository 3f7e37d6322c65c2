using System.Globalization;
using UnitsNet;

namespace Momentum.Dispersion;

/// <summary>What is uncertain about a de-spin, and by how much. Everything left out is exact.</summary>
/// <remarks>
/// The inputs scatter independently of one another. Mass, length and line density scatter alike for all weights and cords,
/// as from one batch or one set-up, which for the spin is the worse case: independent errors of the weights would partly
/// cancel. Immutable; equality is by value.
/// </remarks>
public sealed record DespinUncertainty
{
    /// <summary>Of the hub's spin inertia.</summary>
    public Scatter<MassMomentOfInertia> SpinInertia { get; init; }

    /// <summary>Of the spin rate before release.</summary>
    public Scatter<RotationalSpeed> InitialSpin { get; init; }

    /// <summary>Of the radius to the centreline of the wound cord.</summary>
    public Scatter<Length> HubRadius { get; init; }

    /// <summary>Of the mass of each weight.</summary>
    public Scatter<Mass> WeightMass { get; init; }

    /// <summary>Of the length of each cord.</summary>
    public Scatter<Length> CordLength { get; init; }

    /// <summary>Of the mass per length of each cord.</summary>
    public Scatter<LinearDensity> CordLineDensity { get; init; }

    /// <summary>
    /// Of the cord's direction at let-go, in hub axes. Late is positive. Early of the tangent means still unwinding, by that
    /// angle short of full unwinding; with let-go at a spin rate it adds to where the rate is met.
    /// </summary>
    public Scatter<Angle> LetGoAngle { get; init; }

    /// <summary>Of the time between the others' let-go and that of the last weight; either may be the late one, so the size counts.</summary>
    public Scatter<Duration> SecondWeightDelay { get; init; }

    /// <summary>
    /// Of the nutation angle before the first weight is free; a negative draw counts by its size, since the direction is drawn
    /// all round anyway. For a deployment in three dimensions: the planar de-spin has no nutation.
    /// </summary>
    public Scatter<Angle> Nutation { get; init; }

    /// <summary>Mass of the hub without weights and cords; needed by the planar de-spin with <see cref="SecondWeightDelay"/>, since one weight pulls the hub aside.</summary>
    public Mass? HubMass { get; init; }

    /// <summary>What scatters and how, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"spin inertia {SpinInertia}; initial spin {InitialSpin}; hub radius {HubRadius}; weight mass {WeightMass}; cord length {CordLength}; cord line density {CordLineDensity}; let-go angle {LetGoAngle}; second weight delay {SecondWeightDelay}; nutation {Nutation}");
}
