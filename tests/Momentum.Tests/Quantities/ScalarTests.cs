using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tests.Quantities;

public sealed class ScalarTests
{
    // NIST SP 811 (2008), appendix B: the foot, pound and standard acceleration are exact, so these are too
    // (entered as decimal expansions, independently of the factors in the code).
    [Fact]
    public void Customary_units_of_momentum_are_the_exact_ones()
    {
        Assert.Equal(1.3558179483314004, AngularMomentum.FromSlugSquareFeetPerSecond(1).NewtonMeterSeconds);
        Assert.Equal(0.3048 * 4.4482216152605, AngularMomentum.FromSlugSquareFeetPerSecond(1).KilogramSquareMetersPerSecond, 1e-15);
        Assert.Equal(4.4482216152605, LinearMomentum.FromPoundForceSeconds(1).NewtonSeconds);
        Assert.Equal(1, AngularMomentum.FromNewtonMeterSeconds(1.3558179483314004).SlugSquareFeetPerSecond);
    }

    // The same source. Each enters through a product with one of the SI unit, which is how users meet it; the last digit
    // is the rounding of the product.
    [Fact]
    public void Customary_units_of_rotating_things_enter_by_their_exact_factors()
    {
        RotationalSpeed radianPerSecond = RotationalSpeed.FromRadiansPerSecond(1);
        Duration second = Duration.FromSeconds(1);
        MassMomentOfInertia unitInertia = MassMomentOfInertia.FromKilogramSquareMeters(1);
        AssertExact(Math.PI / 30, (unitInertia * RotationalSpeed.FromRevolutionsPerMinute(1)).NewtonMeterSeconds);
        AssertExact(2 * Math.PI, (unitInertia * RotationalSpeed.FromRevolutionsPerSecond(1)).NewtonMeterSeconds);
        AssertExact(Math.PI / 180, (unitInertia * RotationalSpeed.FromDegreesPerSecond(1)).NewtonMeterSeconds);
        AssertExact(1.3558179483314004, (MassMomentOfInertia.FromSlugSquareFeet(1) * radianPerSecond).NewtonMeterSeconds);
        AssertExact(0.0094154024189680583, (MassMomentOfInertia.FromSlugSquareInches(1) * radianPerSecond).NewtonMeterSeconds);
        AssertExact(0.0421401100938048, (MassMomentOfInertia.FromPoundSquareFeet(1) * radianPerSecond).NewtonMeterSeconds);
        AssertExact(2.926396534292e-4, (MassMomentOfInertia.FromPoundSquareInches(1) * radianPerSecond).NewtonMeterSeconds);
        AssertExact(14.593902937206365, (Mass.FromSlugs(1) * Speed.FromMetersPerSecond(1)).NewtonSeconds);
        AssertExact(0.1129848290276167, (Torque.FromPoundForceInches(1) * second).NewtonMeterSeconds);
        AssertExact(0.00706155181422604375, (Torque.FromPoundForceInches(1) * second).NewtonMeterSeconds / 16);
        AssertExact(0.0980665, (Torque.FromKilogramForceCentimeters(1) * second).NewtonMeterSeconds);

        static void AssertExact(double expected, double actual) => Assert.Equal(expected, actual, expected * 5e-16);
    }

    [Fact]
    public void Line_densities_in_customary_units_enter_by_their_exact_factors()
    {
        Assert.Equal(1.4881639435695537, LinearDensity.FromPoundsPerFoot(1).ToSi(), 5e-16);
        Assert.Equal(17.857967322834646, LinearDensity.FromPoundsPerInch(1).ToSi(), 4e-15);
    }

    [Fact]
    public void Products_of_scalars_have_the_value_and_kind_of_the_physics()
    {
        AngularMomentum h = MassMomentOfInertia.FromKilogramSquareMeters(20) * RotationalSpeed.FromRadiansPerSecond(5);
        Assert.Equal(100, h.NewtonMeterSeconds);
        Assert.Equal(5, (h / MassMomentOfInertia.FromKilogramSquareMeters(20)).RadiansPerSecond);
        Assert.Equal(20, (h / RotationalSpeed.FromRadiansPerSecond(5)).KilogramSquareMeters);
        Assert.Equal(50, (h / Duration.FromSeconds(2)).NewtonMeters);
        Assert.Equal(6, (Torque.FromNewtonMeters(2) * Duration.FromSeconds(3)).NewtonMeterSeconds);
        Assert.Equal(8, (Torque.FromNewtonMeters(2) * RotationalSpeed.FromRadiansPerSecond(4)).Watts);
        Assert.Equal(0.5, (Torque.FromNewtonMeters(2) / MassMomentOfInertia.FromKilogramSquareMeters(4)).RadiansPerSecondSquared);
        Assert.Equal(8, (MassMomentOfInertia.FromKilogramSquareMeters(4) * RotationalAcceleration.FromRadiansPerSecondSquared(2)).NewtonMeters);
        Assert.Equal(1.5, (RotationalSpeed.FromRadiansPerSecond(3) * Length.FromMeters(0.5)).MetersPerSecond);
        LinearMomentum p = Mass.FromKilograms(2) * Speed.FromMetersPerSecond(3);
        Assert.Equal(6, p.NewtonSeconds);
        Assert.Equal(3, (p / Mass.FromKilograms(2)).MetersPerSecond);
    }

    [Fact]
    public void Revolutions_per_minute_become_radians_per_second_before_they_multiply()
    {
        AngularMomentum h = MassMomentOfInertia.FromKilogramSquareMeters(1) * RotationalSpeed.FromRevolutionsPerMinute(60);
        Assert.Equal(2 * Math.PI, h.NewtonMeterSeconds, 1e-14);
    }

    [Fact]
    public void Momenta_order_and_scale_like_numbers()
    {
        AngularMomentum one = AngularMomentum.FromNewtonMeterSeconds(1);
        AngularMomentum two = 2 * one;
        Assert.True(one < two && two > one && one <= two && two >= one && one != two && one == two / 2);
        Assert.Equal(2, two / one);
        Assert.Equal(-1, (-one).NewtonMeterSeconds);
        Assert.Equal(AngularMomentum.Zero, one - one);
        Assert.True(one.EqualsWithin(two, one));
        Assert.False(one.EqualsWithin(two, one * 0.999));
        Assert.Equal("2 kg·m²/s", two.ToString());
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void A_number_that_is_not_finite_does_not_come_in(double value)
    {
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(() => AngularMomentum.FromNewtonMeterSeconds(value));
        Assert.Equal("value", refusal.ParamName);
        Assert.Throws<ArgumentOutOfRangeException>(() => LinearMomentum.FromNewtonSeconds(value));
    }
}
