using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>An invented upper stage with two cords; the tests change what they are about.</summary>
internal static class Invented
{
    internal static MassProperties<Body> Stage(double xy = 0.08, double xz = -0.11, double yz = 0.05, double x = 0.001, double height = 0.412) =>
        MassProperties<Body>.Of(
            Mass.FromKilograms(182),
            Position<Body>.Of(Length.FromMeters(x), Length.Zero, Length.FromMeters(height)),
            InertiaTensor<Body>.Of(
                Inertia(31.5), Inertia(32.1), Inertia(18.4), Inertia(xy), Inertia(xz), Inertia(yz), ProductSign.TensorElement));

    internal static Cord Cord(double at) => new()
    {
        WeightMass = Mass.FromGrams(620),
        Length = Length.FromMeters(1.9),
        HubRadius = Length.FromMillimeters(430),
        PlaneHeight = Length.FromMillimeters(427),
        StartAngle = Angle.FromDegrees(at),
        LetGo = LetGo.Radial,
    };

    internal static CordDeployment Deployment => new()
    {
        Hub = Stage(),
        Cords = [Cord(0), Cord(180)],
        Rates = Rates(0.05, 0, 7.5),
        Until = Duration.FromSeconds(1.5),
    };

    internal static Vector<RotationalSpeed, Body> Rates(double x, double y, double z) =>
        Vector<RotationalSpeed, Body>.FromSi(x, y, z);

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
