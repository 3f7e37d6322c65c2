using System.Globalization;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Inertia;

/// <summary>What one part contributes to an assembly: a row of its mass table.</summary>
/// <typeparam name="TFrame">The assembly's frame.</typeparam>
/// <param name="Name">The part's name.</param>
/// <param name="Shape">The shape of its solid.</param>
/// <param name="IsSubtracted">Whether it is a hole: its figures are then to be taken away.</param>
/// <param name="BasicMass">The mass as stated, without growth; positive, also for a hole.</param>
/// <param name="Growth">The growth allowance, a part of the basic mass.</param>
/// <param name="PredictedMass">The basic mass and its growth: what the assembly counts; positive, also for a hole.</param>
/// <param name="CentreOfMass">The part's centre of mass.</param>
/// <param name="Inertia">The part's inertia, growth included, about the assembly's centre of mass.</param>
public sealed record PartContribution<TFrame>(
    string Name,
    string Shape,
    bool IsSubtracted,
    Mass BasicMass,
    Ratio Growth,
    Mass PredictedMass,
    Position<TFrame> CentreOfMass,
    PointInertia<TFrame> Inertia)
    where TFrame : struct, IFrame
{
    /// <summary>The name, shape, mass and growth, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Name} ({Shape}{(IsSubtracted ? ", subtracted" : "")}): {PredictedMass}, of which {Growth} growth, centre of mass {CentreOfMass}");
}
