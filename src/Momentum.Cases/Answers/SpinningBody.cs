using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Cases.Answers;

/// <summary>The spinning body of a case, without the de-spin weights and cords.</summary>
/// <param name="Mass">Its mass.</param>
/// <param name="CentreOfMass">Its centre of mass from the body origin.</param>
/// <param name="SpinAxis">The axis about which it spins.</param>
/// <param name="SpinInertia">Its moment of inertia about the spin axis through its centre of mass.</param>
/// <param name="Inertia">Its inertia about its centre of mass; null if only the moment about the spin axis is stated.</param>
internal sealed record SpinningBody(
    Mass Mass, Position<Body> CentreOfMass, Direction<Body> SpinAxis, MassMomentOfInertia SpinInertia, InertiaTensor<Body>? Inertia)
{
    /// <summary>What each part contributes; empty for a stated tensor.</summary>
    public IReadOnlyList<PartContribution<Body>> Parts { get; init; } = [];

    /// <summary>The mesh of each part, null where it has none; as many as parts.</summary>
    public IReadOnlyList<TriangleMesh?> Meshes { get; init; } = [];

    /// <summary>How it is balanced about the spin axis through the body origin; null if only the moment about the spin axis is stated.</summary>
    public Balance<Body>? Balance => Inertia is { } inertia
        ? Balance<Body>.Of(MassProperties<Body>.Of(Mass, CentreOfMass, inertia), Position<Body>.Origin, SpinAxis)
        : null;

    /// <summary>Distance of the centre of mass from the spin axis through the body origin.</summary>
    public Length CentreOffset
    {
        get
        {
            double[] centre = [CentreOfMass.X.Meters, CentreOfMass.Y.Meters, CentreOfMass.Z.Meters];
            double[] axis = [SpinAxis.X, SpinAxis.Y, SpinAxis.Z];
            double along = centre.Zip(axis, (c, a) => c * a).Sum();
            return Length.FromMeters(Math.Sqrt(centre.Zip(axis, (c, a) => Math.Pow(c - (along * a), 2)).Sum()));
        }
    }
}
