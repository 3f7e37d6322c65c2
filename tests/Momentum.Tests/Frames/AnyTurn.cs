using FsCheck;
using FsCheck.Fluent;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tests.Frames;

/// <summary>An axis and an angle, the quarter and half turns where quaternion code breaks included.</summary>
public sealed record AnyTurn(int X, int Y, int Z, double Degrees)
{
    internal Rotation<TFrom, TTo> To<TFrom, TTo>()
        where TFrom : struct, IFrame
        where TTo : struct, IFrame =>
        Rotation<TFrom, TTo>.About(Direction<TFrom>.Of(X, Y, Z), Angle.FromDegrees(Degrees));

    public static Arbitrary<AnyTurn> Turns() => (
        from x in Gen.Choose(-5, 5)
        from y in Gen.Choose(-5, 5)
        from z in Gen.Choose(-5, 5)
        where x != 0 || y != 0 || z != 0
        from degrees in Gen.Frequency((1, Gen.Elements(0.0, 90, 180, 270, 360, -180, 1e-9, 179.999999)), (3, Gen.Choose(-720, 720).Select(d => d + 0.37)))
        select new AnyTurn(x, y, z, degrees)).ToArbitrary();
}
