using FsCheck;
using FsCheck.Fluent;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests.Tethers.Springs;

/// <summary>
/// Spring-cord designs of every proportion that comes to let-go more often than not: weights from a tenth to a ten-thousandth
/// of the hub's inertia, springs from such that stretch a cord to its double to such that hardly give, with and without damping.
/// Half of the time from special values.
/// </summary>
public static class AnySpringCordDesign
{
    public static Arbitrary<SpringCordDesign> Designs() => Arb.From(
        from hub in Ratio(1e-3, 1, 1e6)
        from radius in Ratio(1e-3, 1, 1e3)
        from spin in Ratio(1e-3, 5, 1e4)
        from weights in Gen.Elements(2, 3, 7)
        from mass in Ratio(1e-4, 1e-3, 0.02, 0.1)
        from reach in Ratio(0.1, 0.7, 1, 1.2)
        from spring in Ratio(3, 5, 20, 300)
        from damping in Gen.OneOf(Gen.Constant(0.0), Ratio(1e-3, 0.05, 0.3, 1))
        from angle in Gen.OneOf(Gen.Elements(0, 1e-9, 0.01, Math.PI / 2), Gen.Choose(0, 1000).Select(i => i * Math.PI / 2000))
        select Make(hub, radius, spin, weights, mass, reach, spring, damping, angle));

    /// <summary>What a sizing is asked: hub inertia over that of the weights, ratio of the spins, let-go angle (rad), damping ratio.</summary>
    public static Arbitrary<SpringCordWish> Wishes() => Arb.From(
        from inertia in Ratio(0.05, 1, 20, 300)
        from ratio in Ratio(0.01, 0.1, 0.2, 0.5, 0.95)
        from angle in Gen.OneOf(Gen.Elements(0, Math.PI / 2), Gen.Choose(0, 1000).Select(i => i * Math.PI / 1000))
        from damping in Gen.OneOf(Gen.Constant(0.0), Ratio(1e-3, 0.05, 1))
        select new SpringCordWish(inertia, ratio, angle, damping));

    private static SpringCordDesign Make(
        double hub, double radius, double spin, int weights, double mass, double reach, double spring, double damping, double angle)
    {
        double each = mass * hub / (radius * radius) / weights;
        return new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(hub), Length.FromMeters(radius), RotationalSpeed.FromRadiansPerSecond(spin))
            .CarryingOnSprings(
                Mass.FromKilograms(each),
                Length.FromMeters(reach * radius / Math.Sqrt(mass)),
                ForcePerLength.FromNewtonsPerMeter(spring * each * spin * spin),
                LetGo.AtCordAngle(Angle.FromRadians(angle)),
                damping,
                weights);
    }

    // A special value, or anything between the first and the last on a logarithmic scale.
    private static Gen<double> Ratio(params double[] special) => Gen.OneOf(
        Gen.Elements(special),
        Gen.Choose(0, 1_000_000).Select(i => special[0] * Math.Pow(special[^1] / special[0], i / 1e6)));
}

/// <summary>What a sizing is asked.</summary>
public sealed record SpringCordWish(double Inertia, double Ratio, double Angle, double DampingRatio);
