using FsCheck;
using FsCheck.Fluent;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Tests.Frames;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Inertia;

/// <summary>
/// A physical body by construction: second moments a, b, c of mass about the principal planes are never negative, and
/// the principal moments are b + c, a + c, a + b. One of them zero is a lamina, two are a rod; equal ones, nearly equal
/// ones and tiny and huge ratios are favoured.
/// </summary>
public sealed record AnyBody(double Mass, double A, double B, double C, AnyTurn Turn, double X, double Y, double Z)
{
    internal double Largest => A + B + C - Math.Min(A, Math.Min(B, C));

    internal double Smallest => A + B + C - Math.Max(A, Math.Max(B, C));

    internal InertiaTensor<Principal> Untouched => InertiaTensor<Principal>.Diagonal(
        MassMomentOfInertia.FromKilogramSquareMeters(B + C),
        MassMomentOfInertia.FromKilogramSquareMeters(A + C),
        MassMomentOfInertia.FromKilogramSquareMeters(A + B));

    internal InertiaTensor<Body> Inertia => Untouched.ExpressedIn(Turn.To<Principal, Body>());

    internal Position<Body> Centre => Position<Body>.Of(X, Y, Z, LengthUnit.Meter);

    internal MassProperties<Body> Properties =>
        MassProperties<Body>.Of(UnitsNet.Mass.FromKilograms(Mass), Centre, Inertia);

    public static Arbitrary<AnyBody> Bodies()
    {
        Gen<double> number = Gen.Choose(1, 100_000).Select(n => n / 997.0);
        Gen<(double, double, double)> moments = Gen.OneOf(
            from a in number from b in number from c in number select (a, b, c),
            from a in number select (a, a, a),
            from a in number from b in number select (a, a, b),
            from a in number from b in number from gap in Gen.Elements(1e-15, 1e-13, 1e-11, 1e-7, 1e-3) select (a, a * (1 + gap), b),
            from a in number from b in number select (0.0, a, b),
            from a in number from gap in Gen.Elements(1e-15, 1e-12, 1e-8) select (a * gap, a, a),
            from a in number from ratio in Gen.Elements(1e-6, 1e-3, 1e3, 1e6) from b in number select (a, a * ratio, b));
        return (
            from scale in Gen.Frequency((4, Gen.Constant(1.0)), (1, Gen.Elements(1e-12, 1e-6, 1e6, 1e12)))
            from abc in moments
            from turn in AnyTurn.Turns().Generator
            from mass in number
            from x in Gen.Choose(-3000, 3000)
            from y in Gen.Choose(-3000, 3000)
            from z in Gen.Choose(-3000, 3000)
            select new AnyBody(mass, abc.Item1 * scale, abc.Item2 * scale, abc.Item3 * scale, turn, x / 1000.0, y / 1000.0, z / 1000.0)).ToArbitrary();
    }
}
