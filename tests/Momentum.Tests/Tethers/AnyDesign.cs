using FsCheck;
using FsCheck.Fluent;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>
/// Designs of every physical proportion, and a good way past: cords to 200 hub radii (32 turns), weights to ten times the hub's inertia. Ratios rather than sizes decide the motion, so these are drawn, half of the time
/// from special values: cords far shorter and far longer than the hub, weights far lighter and far heavier than it, cords
/// without mass and heavier than the weights, let-go at and beside tangent and radial.
/// </summary>
public static class AnyDesign
{
    public static Arbitrary<DespinDesign> Designs() => Arb.From(
        from hub in Ratio(1e-3, 1, 1e6)
        from radius in Ratio(1e-3, 1, 1e3)
        from spin in Ratio(1e-3, 5, 1e4)
        from weights in Gen.Elements(2, 3, 4, 7)
        from mass in Ratio(1e-6, 1e-3, 0.02, 1, 10)
        from length in Ratio(1e-5, 1e-2, 1, 5, 200)
        from cord in Gen.OneOf(Gen.Constant(0.0), Ratio(1e-6, 0.1, 1, 100))
        from angle in Gen.OneOf(
            Gen.Elements(0, 1e-9, 0.01, Math.PI / 2, (Math.PI / 2) - 1e-7, (Math.PI / 2) + 1e-7, Math.PI),
            Uniform(0, Math.PI))
        select Make(hub, radius, spin, weights, mass, length, cord, angle));

    private static DespinDesign Make(
        double hub, double radius, double spin, int weights, double mass, double length, double cord, double angle)
    {
        double all = mass * hub / (radius * radius);
        double long1 = length * radius;
        return new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(hub), Length.FromMeters(radius), RotationalSpeed.FromRadiansPerSecond(spin))
            .Carrying(
                Mass.FromKilograms(all / weights),
                Length.FromMeters(long1),
                LetGo.AtCordAngle(Angle.FromRadians(angle)),
                LinearDensity.FromKilogramsPerMeter(cord * all / weights / long1),
                weights);
    }

    // A special value, or anything between the first and the last on a logarithmic scale.
    private static Gen<double> Ratio(params double[] special) => Gen.OneOf(
        Gen.Elements(special),
        Uniform(Math.Log(special[0]), Math.Log(special[^1])).Select(Math.Exp));

    private static Gen<double> Uniform(double low, double high) =>
        Gen.Choose(0, 1_000_000).Select(i => low + ((high - low) * i / 1e6));
}
