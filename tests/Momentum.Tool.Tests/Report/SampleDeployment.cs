using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tool.Tests.Report;

/// <summary>An invented stage in three dimensions, with the body axis of the spin to be chosen.</summary>
internal static class SampleDeployment
{
    private const double Rpm = Math.PI / 30;

    /// <summary>Unbalanced, wobbling, the drum above the centre of mass, the second weight late.</summary>
    public static CordDeployment Unbalanced(int spinAxis = 2) => Deployment(spinAxis, products: 1, wobble: 0.05, height: 0.02, late: 0.004);

    /// <summary>What the planar closed form takes for granted.</summary>
    public static CordDeployment PlanarAndSymmetric => Deployment(2, products: 0, wobble: 0, height: 0, late: 0);

    /// <summary>The same, let go at the tangent.</summary>
    public static CordDeployment Tangent => PlanarAndSymmetric with
    {
        Cords = [.. PlanarAndSymmetric.Cords.Select(c => c with { LetGo = LetGo.Tangent })],
    };

    /// <summary>One cord jams, and one weight is never set free.</summary>
    public static CordDeployment Stuck
    {
        get
        {
            CordDeployment whole = Unbalanced();
            return whole with
            {
                Cords = [whole.Cords[0] with { JamsAt = Length.FromMeters(1.2) }, whole.Cords[1] with { ReleasedAt = null }],
                Until = Duration.FromSeconds(0.8),
            };
        }
    }

    /// <summary>Under gravity, on a bearing that rubs, over a floor and inside walls.</summary>
    public static CordDeployment OnRig => Deployment(2, products: 0, wobble: 0, height: 0, late: 0) with
    {
        Rig = new BenchRig { CoulombFriction = Torque.FromNewtonMeters(0.4), FloorBelow = Length.FromMeters(1.5), Walls = Length.FromMeters(7) },
    };

    /// <summary>Cords of a third of the weights' mass, in four pieces.</summary>
    public static CordDeployment Heavy => Unbalanced() with
    {
        Cords = [.. Unbalanced().Cords.Select(c => c with { LineDensity = LinearDensity.FromGramsPerMeter(60), Segments = 4 })],
    };

    /// <summary>Eight cords of which no two are alike.</summary>
    public static CordDeployment Eight => Unbalanced() with
    {
        Cords = [.. Enumerable.Range(0, 8).Select(i => Unbalanced().Cords[0] with
        {
            StartAngle = Angle.FromDegrees(45 * i),
            WeightMass = Mass.FromKilograms(0.13 + (0.01 * ((5 * i) % 8))),
            ReleasedAt = Duration.FromSeconds(0.002 * ((3 * i) % 8)),
        })],
    };

    /// <summary><see cref="OnRig"/> with the centre of mass beside the bearing.</summary>
    public static CordDeployment OnUnbalancedRig => OnRig with { Hub = Unbalanced().Hub };

    /// <summary>With the edge of a deck under the cords.</summary>
    public static CordDeployment OverDeck => Unbalanced() with { Deck = new DeckEdge(Length.FromMillimeters(600), Length.FromMillimeters(-150)) };

    /// <summary>The motion that <see cref="PlanarAndSymmetric"/> makes, by the independent computation.</summary>
    public static PlanarMotion Planar { get; } = new(18.4, 1.24, 0.43, PlanarMotion.RadialLengthToZero(18.4, 1.24, 0.43), 72 * Rpm);

    private static CordDeployment Deployment(int spinAxis, double products, double wobble, double height, double late)
    {
        // In the order first, second, spin axis; then turned in a cycle to where the body's axes are.
        double[,] inertia =
        {
            { 31.5, 0.4 * products, -0.7 * products },
            { 0.4 * products, 33.1, 0.5 * products },
            { -0.7 * products, 0.5 * products, 18.4 },
        };
        double[] centre = [0.004 * products, -0.002 * products, 0];
        double[] rates = [wobble, -0.5 * wobble, 72 * Rpm];
        int[] place = [(0 - spinAxis + 5) % 3, (1 - spinAxis + 5) % 3, (2 - spinAxis + 5) % 3];
        double Inertia(int row, int column) => inertia[place[row], place[column]];
        return new CordDeployment
        {
            Hub = MassProperties<Body>.Of(
                Mass.FromKilograms(182),
                Position<Body>.Of(centre[place[0]], centre[place[1]], centre[place[2]], UnitsNet.Units.LengthUnit.Meter),
                InertiaTensor<Body>.Of(
                    Si(Inertia(0, 0)), Si(Inertia(1, 1)), Si(Inertia(2, 2)), Si(Inertia(0, 1)), Si(Inertia(0, 2)), Si(Inertia(1, 2)), ProductSign.TensorElement)),
            SpinAxis = spinAxis switch { 0 => Direction<Body>.XAxis, 1 => Direction<Body>.YAxis, _ => Direction<Body>.ZAxis },
            Rates = Vector<RotationalSpeed, Body>.FromSi(rates[place[0]], rates[place[1]], rates[place[2]]),
            Cords = [Cord(0, 0), Cord(180, late)],
            Until = Duration.FromSeconds(2.2),
        };

        Cord Cord(double angle, double freed) => new()
        {
            WeightMass = Mass.FromKilograms(0.62),
            Length = Length.FromMeters(PlanarMotion.RadialLengthToZero(18.4, 1.24, 0.43)),
            HubRadius = Length.FromMillimeters(430),
            PlaneHeight = Length.FromMeters(height),
            StartAngle = Angle.FromDegrees(angle),
            ReleasedAt = Duration.FromSeconds(freed),
            LetGo = LetGo.Radial,
        };

        static MassMomentOfInertia Si(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
    }
}
