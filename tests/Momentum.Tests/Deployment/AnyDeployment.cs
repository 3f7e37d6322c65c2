using FsCheck;
using FsCheck.Fluent;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>
/// Deployments of every kind that is offered: one to four cords, equal and unequal, with and without wobble and unbalance,
/// hanging cord, stretch, damping, friction, late, jammed, stuck and never released ones, either sense of spin.
/// </summary>
public sealed record AnyDeployment(CordDeployment Deployment)
{
    public static Arbitrary<AnyDeployment> Deployments()
    {
        Gen<double> unit = Gen.Frequency(
            (4, Gen.Choose(-1000, 1000).Select(n => n / 1000.0)), (1, Gen.Elements(0.0, 1.0, -1.0, 1e-6)));
        Gen<double> part = unit.Select(Math.Abs);
        Gen<LetGo> release = Gen.OneOf(
            Gen.Constant(LetGo.Radial),
            Gen.Constant(LetGo.Tangent),
            Gen.Constant(LetGo.Never),
            part.Select(p => LetGo.AtCordAngle(Angle.FromDegrees(120 * p))),
            part.Select(p => LetGo.AtCordAngle(Angle.FromDegrees(-30 * p))),
            part.Select(p => LetGo.Radial.Delayed(Duration.FromMilliseconds(20 * p))),
            part.Select(p => LetGo.AtCordAngle(Angle.FromDegrees(-20)).Delayed(Duration.FromMilliseconds(80 * p))),
            part.Select(p => LetGo.AtTime(Duration.FromSeconds(0.2 + (0.5 * p)))),
            from p in part
            from l in part
            select LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(1 + (2 * p))).Delayed(Duration.FromMilliseconds(20 * l)));
        Gen<Cord> cord =
            from weight in part
            from length in part
            from height in unit
            from angle in unit
            from hanging in part
            from surface in Gen.Elements(DrumSurface.Grooved, DrumSurface.Smooth)
            from stiffness in Gen.Frequency((2, Gen.Constant<Force?>(null)), (1, Gen.Elements<Force?>(Force.FromKilonewtons(2), Force.FromKilonewtons(60))))
            from damping in Gen.Elements(0, 0, 0.02, 0.3)
            from friction in Gen.Elements(0, 0, 0.03, 0.2)
            from winding in Gen.Frequency((8, Gen.Constant(Winding.OpposesSpin)), (1, Gen.Constant(Winding.FollowsSpin)))
            from late in Gen.Frequency((4, Gen.Constant<Duration?>(Duration.Zero)), (1, Gen.Constant<Duration?>(Duration.FromMilliseconds(40))), (1, Gen.Constant<Duration?>(null)))
            from jam in Gen.Frequency((6, Gen.Constant(false)), (1, Gen.Constant(true)))
            from rule in release
            select new Cord
            {
                WeightMass = Mass.FromKilograms(0.2 + weight),
                Length = Length.FromMeters(0.8 + (1.5 * length)),
                HubRadius = Length.FromMeters(0.4),
                PlaneHeight = Length.FromMeters(0.05 * height),
                StartAngle = Angle.FromDegrees(10 * angle),
                Hanging = Length.FromMeters(0.05 * hanging),
                Surface = surface,
                Stiffness = stiffness,
                DampingRatio = damping,
                DrumFriction = friction,
                Winding = winding,
                ReleasedAt = late,
                JamsAt = jam ? Length.FromMeters(0.5) : null,
                LetGo = rule,
            };
        return (
            from count in Gen.Elements(1, 2, 2, 3, 4)
            from cords in cord.ArrayOf(count)
            from equal in Gen.Elements(true, false)
            from xx in part
            from yy in unit
            from zz in part
            from xy in unit
            from offset in unit
            from height in unit
            from wx in unit
            from wy in unit
            from sense in Gen.Elements(1, -1)
            let x = 12 + (8 * xx)
            let y = x * (1 + (0.2 * yy))
            let z = (0.5 + (0.4 * zz)) * (x + y)
            select new AnyDeployment(new CordDeployment
            {
                Hub = MassProperties<Body>.Of(
                    Mass.FromKilograms(120),
                    Position<Body>.Of(Length.FromMeters(0.005 * offset), Length.Zero, Length.FromMeters(0.1 * height)),
                    InertiaTensor<Body>.Of(
                        Inertia(x), Inertia(y), Inertia(z), Inertia(0.02 * x * xy), Inertia(0.02 * x * offset), Inertia(0), ProductSign.TensorElement)),
                Cords = [.. cords.Select((c, i) => (equal ? cords[0] : c) with
                {
                    StartAngle = (equal ? Angle.Zero : c.StartAngle) + Angle.FromDegrees(360.0 * i / count),
                })],
                Rates = Vector<RotationalSpeed, Body>.FromSi(0.15 * wx, 0.15 * wy, 7 * sense),
                Until = Duration.FromSeconds(1),
            })).ToArbitrary();
    }

    public override string ToString() =>
        $"{Deployment}\n{string.Join("\n", Deployment.Cords.Select(c => c.ToString()))}";

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
