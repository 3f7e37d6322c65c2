using FsCheck;
using FsCheck.Fluent;

namespace Momentum.Tests.Quantities;

/// <summary>Three components that favour the special values where vector code breaks.</summary>
public sealed record Components(double X, double Y, double Z)
{
    public static Arbitrary<Components> Arbitrary()
    {
        Gen<double> special = Gen.Elements(0.0, 1.0, -1.0, 1e-12, 1e12, -1e-150, 1e150, 0.1, -3.0);
        Gen<double> ordinary = Gen.Choose(-1_000_000, 1_000_000).Select(n => n / 997.0);
        Gen<double> one = Gen.Frequency((1, special), (3, ordinary));
        return (from x in one from y in one from z in one select new Components(x, y, z)).ToArbitrary();
    }
}
