using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tests.Quantities;

[Properties(Arbitrary = [typeof(Components)])]
public sealed class VectorTests
{
    private static Vector<TQuantity, Body> Make<TQuantity>(Components c)
        where TQuantity : struct => Vector<TQuantity, Body>.FromSi(c.X, c.Y, c.Z);

    [Fact]
    public void Components_come_back_in_the_unit_they_were_given_in()
    {
        var force = Vector<Force, Body>.Of(Force.FromPoundsForce(1), Force.FromKilonewtons(2), Force.Zero);
        Assert.Equal(4.4482216152605, force.X.Newtons, 1e-14);
        Assert.Equal(2, force.Y.Kilonewtons, 1e-15);
        Assert.Equal(0, force.Z.Newtons);
    }

    [Fact]
    public void Every_vector_quantity_goes_in_and_out_unchanged()
    {
        Check(Vector<Length, Body>.Of(Length.FromMeters(1), Length.FromMeters(2), Length.FromMeters(3)), "m");
        Check(Vector<Speed, Body>.Of(Speed.FromMetersPerSecond(1), Speed.FromMetersPerSecond(2), Speed.FromMetersPerSecond(3)), "m/s");
        Check(Vector<Acceleration, Body>.Of(Acceleration.FromMetersPerSecondSquared(1), Acceleration.FromMetersPerSecondSquared(2), Acceleration.FromMetersPerSecondSquared(3)), "m/s²");
        Check(Vector<Force, Body>.Of(Force.FromNewtons(1), Force.FromNewtons(2), Force.FromNewtons(3)), "N");
        Check(Vector<Torque, Body>.Of(Torque.FromNewtonMeters(1), Torque.FromNewtonMeters(2), Torque.FromNewtonMeters(3)), "N·m");
        Check(Vector<RotationalSpeed, Body>.Of(RotationalSpeed.FromRadiansPerSecond(1), RotationalSpeed.FromRadiansPerSecond(2), RotationalSpeed.FromRadiansPerSecond(3)), "rad/s");
        Check(Vector<RotationalAcceleration, Body>.Of(RotationalAcceleration.FromRadiansPerSecondSquared(1), RotationalAcceleration.FromRadiansPerSecondSquared(2), RotationalAcceleration.FromRadiansPerSecondSquared(3)), "rad/s²");
        Check(Vector<LinearMomentum, Body>.Of(LinearMomentum.FromNewtonSeconds(1), LinearMomentum.FromNewtonSeconds(2), LinearMomentum.FromNewtonSeconds(3)), "kg·m/s");
        Check(Vector<AngularMomentum, Body>.Of(AngularMomentum.FromNewtonMeterSeconds(1), AngularMomentum.FromNewtonMeterSeconds(2), AngularMomentum.FromNewtonMeterSeconds(3)), "kg·m²/s");

        static void Check<TQuantity>(Vector<TQuantity, Body> vector, string unit)
            where TQuantity : struct
        {
            Assert.Equal(Vector<TQuantity, Body>.FromSi(1, 2, 3), vector);
            Assert.Equal(vector, Vector<TQuantity, Body>.Of(vector.X, vector.Y, vector.Z));
            Assert.Equal($"(1, 2, 3) {unit} [Body]", vector.ToString());
        }
    }

    [Fact]
    public void A_quantity_that_has_no_direction_is_refused()
    {
        NotSupportedException refusal = Assert.Throws<NotSupportedException>(
            () => Vector<Temperature, Body>.Of(Temperature.Zero, Temperature.Zero, Temperature.Zero));
        Assert.Contains("Temperature", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(double.NaN, "y")]
    [InlineData(double.PositiveInfinity, "y")]
    public void A_component_that_is_not_finite_is_refused_by_name(double value, string name) =>
        Assert.Equal(name, Assert.Throws<ArgumentOutOfRangeException>(() => Vector<Force, Body>.FromSi(0, value, 0)).ParamName);

    // B. N. Taylor's right-hand rule and the scalar triple product: common practice.
    [Fact]
    public void Products_follow_the_right_hand_rule()
    {
        Vector<Length, Body> x = Vector<Length, Body>.FromSi(2, 0, 0);
        Assert.Equal(Vector<Torque, Body>.FromSi(0, 0, 6), x.Cross(Vector<Force, Body>.FromSi(0, 3, 0)));
        Assert.Equal(Vector<AngularMomentum, Body>.FromSi(0, 0, 6), x.Cross(Vector<LinearMomentum, Body>.FromSi(0, 3, 0)));
        Assert.Equal(Vector<Speed, Body>.FromSi(0, 10, 0), Vector<RotationalSpeed, Body>.FromSi(0, 0, 5).Cross(x));
        Assert.Equal(Vector<Acceleration, Body>.FromSi(-50, 0, 0), Vector<RotationalSpeed, Body>.FromSi(0, 0, 5).Cross(Vector<Speed, Body>.FromSi(0, 10, 0)));
        Assert.Equal(Vector<Acceleration, Body>.FromSi(0, 10, 0), Vector<RotationalAcceleration, Body>.FromSi(0, 0, 5).Cross(x));
        Assert.Equal(Vector<Torque, Body>.FromSi(0, 7, 0), Vector<RotationalSpeed, Body>.FromSi(0, 0, 1).Cross(Vector<AngularMomentum, Body>.FromSi(7, 0, 0)));
    }

    [Fact]
    public void Products_with_scalars_and_projections_have_the_value_of_the_physics()
    {
        Vector<Speed, Body> v = Vector<Speed, Body>.FromSi(1, 2, 3);
        Vector<Acceleration, Body> a = Vector<Acceleration, Body>.FromSi(1, 2, 3);
        Vector<Force, Body> f = Vector<Force, Body>.FromSi(2, 4, 6);
        Assert.Equal(Vector<LinearMomentum, Body>.FromSi(2, 4, 6), Mass.FromKilograms(2) * v);
        Assert.Equal(f, Mass.FromKilograms(2) * a);
        Assert.Equal(a, f / Mass.FromKilograms(2));
        Assert.Equal(v, a * Duration.FromSeconds(1));
        Assert.Equal(Vector<Length, Body>.FromSi(2, 4, 6), v * Duration.FromSeconds(2));
        Assert.Equal(Vector<LinearMomentum, Body>.FromSi(1, 2, 3), f * Duration.FromSeconds(0.5));
        Assert.Equal(28, f.Dot(v).Watts);
        Assert.Equal(28, f.Dot(Vector<Length, Body>.FromSi(1, 2, 3)).Joules);
        Assert.Equal(28, Vector<AngularMomentum, Body>.FromSi(2, 4, 6).Dot(Vector<RotationalSpeed, Body>.FromSi(1, 2, 3)).Joules);
        Assert.Equal(4, f.ComponentAlong(Direction<Body>.YAxis).Newtons);
        Assert.Equal(f.Magnitude.Newtons, f.ComponentAlong(f.Direction()).Newtons, 1e-14);
    }

    [Property]
    public bool A_torque_is_square_to_its_arm_and_its_force(Components r, Components f)
    {
        Vector<Length, Body> arm = Make<Length>(r);
        Vector<Force, Body> force = Make<Force>(f);
        Vector<Torque, Body> torque = arm.Cross(force);

        // Rounding of each product is eps times |r||f|; three of them and the projection: 8 eps is ample.
        double tolerance = 8 * double.BitIncrement(1) * 2.3e-16 * arm.Magnitude.Meters * force.Magnitude.Newtons;
        return arm.Magnitude.Meters == 0 || Math.Abs(torque.ComponentAlong(arm.Direction()).NewtonMeters) <= tolerance;
    }

    [Property]
    public bool Addition_commutes_and_subtraction_undoes_it_exactly_for_equal_vectors(Components a, Components b)
    {
        Vector<Force, Body> x = Make<Force>(a);
        Vector<Force, Body> y = Make<Force>(b);
        return x + y == y + x && x - x == Vector<Force, Body>.Zero && x + Vector<Force, Body>.Zero == x && -(-x) == x && 2 * x == x + x;
    }

    [Property]
    public bool The_magnitude_neither_overflows_nor_vanishes(Components c)
    {
        double magnitude = Make<Length>(c).Magnitude.Meters;
        double largest = Math.Max(Math.Abs(c.X), Math.Max(Math.Abs(c.Y), Math.Abs(c.Z)));
        return magnitude >= largest * (1 - 4e-16) && magnitude <= largest * 1.7320508075688776;
    }

    [Fact]
    public void Tiny_and_huge_components_keep_their_magnitude()
    {
        Assert.Equal(5e-180, Vector<Length, Body>.FromSi(3e-180, 4e-180, 0).Magnitude.Meters, 1e-194);
        Assert.Equal(5e180, Vector<Length, Body>.FromSi(3e180, 4e180, 0).Magnitude.Meters, 1e166);
        Assert.Equal(0.6, Vector<Length, Body>.FromSi(3e-180, 4e-180, 0).Direction().X, 1e-15);
    }

    [Fact]
    public void The_zero_vector_has_no_direction() =>
        Assert.Throws<InvalidOperationException>(() => Vector<Force, Body>.Zero.Direction());

    [Fact]
    public void Tolerance_of_a_comparison_is_a_quantity_of_the_same_kind()
    {
        Vector<Length, Body> a = Vector<Length, Body>.FromSi(1, 0, 0);
        Vector<Length, Body> b = Vector<Length, Body>.FromSi(1, 0.003, 0);
        Assert.True(a.EqualsWithin(b, Length.FromMillimeters(3.0000001)));
        Assert.False(a.EqualsWithin(b, Length.FromMillimeters(2.9)));
    }

    [Fact]
    public void Vector_arithmetic_allocates_nothing()
    {
        Vector<Length, Body> arm = Vector<Length, Body>.FromSi(1, 2, 3);
        Vector<Force, Body> force = Vector<Force, Body>.FromSi(3, 2, 1);
        var attitude = Rotation<Body, Inertial>.About(Direction<Body>.Of(1, 1, 0), Angle.FromDegrees(30));
        Vector<Torque, Inertial> sum = default;
        Assert.Equal(0, Allocation.Of(Work));
        Assert.NotEqual(default, sum);

        void Work()
        {
            sum = default;
            for (int i = 0; i < 1000; i++)
            {
                sum += attitude.Apply(arm.Cross(force)) * 0.5;
                sum -= Vector<Torque, Inertial>.Of(sum.X * 0.1, sum.Y, sum.Magnitude);
            }
        }
    }

    public static TheoryData<double> DividingNothing => [0.0, double.NaN, double.NegativeInfinity];

    [Theory]
    [MemberData(nameof(DividingNothing))]
    public void A_vector_is_not_divided_by_what_divides_nothing(double divisor)
    {
        var vector = Vector<Force, Body>.FromSi(1, 0, -2);
        Assert.Throws<ArgumentOutOfRangeException>(() => vector / divisor);
        Assert.Throws<ArgumentOutOfRangeException>(() => AngularMomentum.FromNewtonMeterSeconds(1) / divisor);
        if (divisor != 0)
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => vector * divisor);
            Assert.Throws<ArgumentOutOfRangeException>(() => divisor * vector);
        }
    }

    [Fact]
    public void By_no_time_and_no_mass_nothing_is_divided()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Vector<Speed, Body>.FromSi(1, 0, 0) / Duration.Zero);
        Assert.Throws<ArgumentOutOfRangeException>(() => Vector<Force, Body>.FromSi(1, 0, 0) / Mass.Zero);
        Assert.Throws<ArgumentOutOfRangeException>(() => AngularMomentum.FromNewtonMeterSeconds(1) / AngularMomentum.Zero);
    }

    [Fact]
    public void What_points_nowhere_makes_no_vector_and_no_angle()
    {
        Assert.Throws<ArgumentException>(() => Vector<Force, Body>.Along(default, Force.FromNewtons(1)));
        Assert.Throws<ArgumentException>(() => Vector<Force, Body>.FromSi(1, 0, 0).ComponentAlong(default));
        Assert.Throws<ArgumentException>(() => Direction<Body>.XAxis.AngleTo(default));
        Assert.Throws<ArgumentException>(() => default(Direction<Body>).AngleTo(Direction<Body>.XAxis));
    }

    [Fact]
    public void An_overflowed_component_is_shown_as_text_and_read_by_nobody()
    {
        Vector<Force, Body> vector = Vector<Force, Body>.FromSi(1e308, -1e308, 0) * 10;
        Assert.Contains("Infinity", vector.ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => vector.X);
        Assert.Contains("NaN", (vector - vector).ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => (vector - vector).X);
        Assert.Throws<InvalidOperationException>(() => vector.Direction());
    }
}
