using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tests.Quantities;
using UnitsNet;

namespace Momentum.Tests.Frames;

[Properties(Arbitrary = [typeof(AnyTurn), typeof(Components)])]
public sealed class RotationTests
{
    private readonly struct Deck : IFrame;

    // Rounding of a turn: a dozen products and sums of numbers no larger than the vector.
    private static double Rounding(Components c) => 2e-15 * Vector<Force, Body>.FromSi(c.X, c.Y, c.Z).Magnitude.Newtons;

    [Fact]
    public void A_body_turned_a_quarter_about_z_has_its_x_axis_along_inertial_y()
    {
        var attitude = Rotation<Body, Inertial>.About(Direction<Body>.ZAxis, Angle.FromDegrees(90));
        Vector<Force, Inertial> force = attitude.Apply(Vector<Force, Body>.FromSi(1, 0, 0));
        Assert.True(force.EqualsWithin(Vector<Force, Inertial>.FromSi(0, 1, 0), Force.FromNewtons(1e-15)));
    }

    [Fact]
    public void Default_is_the_identity()
    {
        Rotation<Body, Inertial> identity = default;
        Vector<Force, Body> force = Vector<Force, Body>.FromSi(1, 2, 3);
        Assert.Equal(1, identity.W);
        Assert.Equal(Vector<Force, Inertial>.FromSi(1, 2, 3), identity.Apply(force));
        Assert.Equal(Rotation<Body, Deck>.Identity, identity.Then(Rotation<Inertial, Deck>.Identity));
        Assert.Equal(0, identity.Angle.Radians);
    }

    [Property]
    public bool Turning_there_and_back_gives_the_vector_again(AnyTurn turn, Components c)
    {
        Rotation<Body, Inertial> attitude = turn.To<Body, Inertial>();
        Vector<Force, Body> force = Vector<Force, Body>.FromSi(c.X, c.Y, c.Z);
        return attitude.Inverse().Apply(attitude.Apply(force)).EqualsWithin(force, Force.FromNewtons(2 * Rounding(c)));
    }

    [Property]
    public bool Turning_keeps_the_magnitude(AnyTurn turn, Components c)
    {
        Vector<Force, Body> force = Vector<Force, Body>.FromSi(c.X, c.Y, c.Z);
        double difference = turn.To<Body, Inertial>().Apply(force).Magnitude.Newtons - force.Magnitude.Newtons;
        return Math.Abs(difference) <= Rounding(c);
    }

    [Property]
    public bool One_turn_then_another_is_their_composition(AnyTurn first, AnyTurn second, Components c)
    {
        Rotation<Body, Deck> a = first.To<Body, Deck>();
        Rotation<Deck, Inertial> b = second.To<Deck, Inertial>();
        Vector<Force, Body> force = Vector<Force, Body>.FromSi(c.X, c.Y, c.Z);
        return a.Then(b).Apply(force).EqualsWithin(b.Apply(a.Apply(force)), Force.FromNewtons(3 * Rounding(c)));
    }

    [Property]
    public bool A_cross_product_turns_with_its_factors(AnyTurn turn, Components r, Components f)
    {
        Rotation<Body, Inertial> attitude = turn.To<Body, Inertial>();
        Vector<Length, Body> arm = Vector<Length, Body>.FromSi(r.X, r.Y, r.Z);
        Vector<Force, Body> force = Vector<Force, Body>.FromSi(f.X, f.Y, f.Z);
        Vector<Torque, Inertial> turnedAfter = attitude.Apply(arm.Cross(force));
        Vector<Torque, Inertial> turnedBefore = attitude.Apply(arm).Cross(attitude.Apply(force));
        double tolerance = 2e-14 * arm.Magnitude.Meters * force.Magnitude.Newtons;
        return turnedAfter.EqualsWithin(turnedBefore, Torque.FromNewtonMeters(tolerance));
    }

    [Property]
    public bool The_matrix_leads_back_to_the_same_turn(AnyTurn turn)
    {
        Rotation<Body, Inertial> attitude = turn.To<Body, Inertial>();
        Span<double> matrix = stackalloc double[9];
        attitude.CopyMatrixTo(matrix);
        return Rotation<Body, Inertial>.FromMatrix(matrix).EqualsWithin(attitude, Angle.FromRadians(1e-14));
    }

    [Property]
    public bool The_quaternion_leads_back_to_the_same_turn(AnyTurn turn)
    {
        Rotation<Body, Inertial> attitude = turn.To<Body, Inertial>();
        return Rotation<Body, Inertial>.FromQuaternion(attitude.X, attitude.Y, attitude.Z, attitude.W)
            .EqualsWithin(attitude, Angle.FromRadians(1e-15));
    }

    [Fact]
    public void A_long_chain_of_turns_stays_a_rotation()
    {
        var step = Rotation<Body, Body>.About(Direction<Body>.Of(1, 2, 3), Angle.FromDegrees(0.36));
        Rotation<Body, Body> chain = default;
        for (int i = 0; i < 100_000; i++)
        {
            chain = chain.Then(step);
        }

        // A hundred whole turns: back to the start, within a random walk of 1e5 roundings.
        Assert.True(chain.EqualsWithin(Rotation<Body, Body>.Identity, Angle.FromRadians(1e-10)));
        Assert.Equal(1, (chain.X * chain.X) + (chain.Y * chain.Y) + (chain.Z * chain.Z) + (chain.W * chain.W), 1e-15);
    }

    [Fact]
    public void A_quaternion_of_the_wrong_length_is_refused_with_its_length()
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Rotation<Body, Inertial>.FromQuaternion(1, 1, 0, 0));
        Assert.Contains("1.414", refusal.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Rotation<Body, Inertial>.FromQuaternion(double.NaN, 0, 0, 1));
    }

    [Fact]
    public void A_mirror_image_or_a_skewed_matrix_is_refused()
    {
        Assert.Contains("mirror", Assert.Throws<ArgumentException>(() => Rotation<Body, Inertial>.FromMatrix([1, 0, 0, 0, 1, 0, 0, 0, -1])).Message, StringComparison.Ordinal);
        Assert.Contains("Rows 1 and 2", Assert.Throws<ArgumentException>(() => Rotation<Body, Inertial>.FromMatrix([1, 0, 0, 0.1, 1, 0, 0, 0, 1])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Rotation<Body, Inertial>.FromMatrix([1, 0, 0]));
        Assert.Throws<ArgumentException>(() => Rotation<Body, Inertial>.FromMatrix([double.NaN, 0, 0, 0, 1, 0, 0, 0, 1]));
    }

    [Fact]
    public void A_default_direction_is_no_axis() =>
        Assert.Throws<ArgumentException>(() => Rotation<Body, Inertial>.About(default, Angle.FromDegrees(1)));
}
