using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Motion;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tests.Motion;

public class TorqueFreeMotionTests
{
    private static readonly InertiaTensor<Body> _oneTwoThree = InertiaTensor<Body>.Diagonal(
        MassMomentOfInertia.FromKilogramSquareMeters(1), MassMomentOfInertia.FromKilogramSquareMeters(2), MassMomentOfInertia.FromKilogramSquareMeters(3));

    [Theory]
    [InlineData(1.0, 5.0, -0.1643504298, -0.9864020155, 0.8219916998)]
    [InlineData(1.0, 10.0, -0.9210699984, 0.3893970441, 0.9744006606)]
    [InlineData(0.5, 5.0, 0.0879283789, -0.4922078831, 0.9587720271)]
    public void Rates_of_the_body_1_2_3_are_the_Jacobi_functions(double first, double seconds, double x, double y, double z)
    {
        // Landau and Lifshitz, Mechanics, section 37; own evaluation to ten digits.
        var motion = TorqueFreeMotion<Body>.From(_oneTwoThree, Vector<RotationalSpeed, Body>.FromSi(first, 0, 1), Rotation<Body, Inertial>.Identity);
        Vector<RotationalSpeed, Body> rate = motion.At(Duration.FromSeconds(seconds)).Rate;
        Assert.Equal(x, rate.X.RadiansPerSecond, 1e-10);
        Assert.Equal(y, rate.Y.RadiansPerSecond, 1e-10);
        Assert.Equal(z, rate.Z.RadiansPerSecond, 1e-10);
    }

    [Fact]
    public void The_state_at_time_zero_is_the_one_given_and_the_momentum_is_what_it_says_at_any_time()
    {
        InertiaTensor<Body> inertia = InertiaTensor<Body>.Of(
            MassMomentOfInertia.FromKilogramSquareMeters(31.5), MassMomentOfInertia.FromKilogramSquareMeters(32.1), MassMomentOfInertia.FromKilogramSquareMeters(18.4),
            MassMomentOfInertia.FromKilogramSquareMeters(0.08), MassMomentOfInertia.FromKilogramSquareMeters(-0.11), MassMomentOfInertia.FromKilogramSquareMeters(0.05),
            ProductSign.TensorElement);
        var rate = Vector<RotationalSpeed, Body>.FromSi(0.1, -0.05, 7.5);
        Rotation<Body, Inertial> attitude = Rotation<Body, Inertial>.About(Direction<Body>.Of(1, 2, 3), Angle.FromDegrees(40));
        var motion = TorqueFreeMotion<Body>.From(inertia, rate, attitude);
        RotationState<Body> start = motion.At(Duration.Zero);
        Assert.True(start.Rate.EqualsWithin(rate, RotationalSpeed.FromRadiansPerSecond(1e-14)));
        Assert.True(start.Attitude.EqualsWithin(attitude, Angle.FromRadians(1e-14)));

        RotationState<Body> later = motion.At(Duration.FromDays(365));
        Vector<AngularMomentum, Inertial> momentum = later.Attitude.Apply(inertia * later.Rate);
        Assert.True(momentum.EqualsWithin(motion.AngularMomentum, AngularMomentum.FromKilogramSquareMetersPerSecond(3e-12)));
        Assert.Equal(0.5 * (inertia * rate).Dot(rate).Joules, motion.KineticEnergy.Joules, 1e-11);
    }

    [Fact]
    public void Turning_the_frames_turns_the_motion_with_them()
    {
        Rotation<Body, Deck> toDeck = Rotation<Body, Deck>.About(Direction<Body>.Of(-2, 1, 0.5), Angle.FromDegrees(77));
        var rate = Vector<RotationalSpeed, Body>.FromSi(1.0, 0.2, 1.0);
        var motion = TorqueFreeMotion<Body>.From(_oneTwoThree, rate, Rotation<Body, Inertial>.Identity);
        var turned = TorqueFreeMotion<Deck>.From(_oneTwoThree.ExpressedIn(toDeck), toDeck.Apply(rate), toDeck.Inverse().Then(Rotation<Body, Inertial>.Identity));
        RotationState<Body> a = motion.At(Duration.FromSeconds(20));
        RotationState<Deck> b = turned.At(Duration.FromSeconds(20));

        // Turning the tensor rounds it, and 20 s near this state magnify that by some hundreds.
        Assert.True(toDeck.Apply(a.Rate).EqualsWithin(b.Rate, RotationalSpeed.FromRadiansPerSecond(1e-12)));
        Assert.True(a.Attitude.EqualsWithin(toDeck.Then(b.Attitude), Angle.FromRadians(1e-12)));
    }

    [Fact]
    public void A_steady_rotation_has_no_period_and_a_circling_one_has()
    {
        var steady = TorqueFreeMotion<Body>.From(_oneTwoThree, Vector<RotationalSpeed, Body>.FromSi(0, 0, 2), default);
        Assert.Null(steady.RatePeriod);

        // A small nutation about 3 circles at w sqrt((I3 - I1)(I3 - I2)/(I1 I2)) = w in the body, so at 2 w in space.
        Assert.Equal(4.0, steady.MeanPrecessionRate.RadiansPerSecond, 1e-15);
        var circling = TorqueFreeMotion<Body>.From(_oneTwoThree, Vector<RotationalSpeed, Body>.FromSi(1, 0, 1), default);
        Assert.Equal(6.9356675410317, circling.RatePeriod!.Value.Seconds, 1e-12);
    }

    [Fact]
    public void Asking_for_a_state_allocates_nothing()
    {
        var motion = TorqueFreeMotion<Body>.From(_oneTwoThree, Vector<RotationalSpeed, Body>.FromSi(1, 0, 1), default);
        Duration time = Duration.FromSeconds(1e6);
        Assert.Equal(0, Allocation.Of(() => motion.At(time)));
    }

    [Theory]
    [InlineData(0.1, 0.2, 1.0, 0, 0, 1)]
    [InlineData(0.4, -0.1, 0.9, 0.1, 0.2, 1)]
    [InlineData(1.0, 0.2, 0.3, 1, -0.3, 0.2)]
    [InlineData(0.02, 1.0, 0.05, -0.2, 1, 0.4)]
    [InlineData(1.0, 1e-4, 0.57740, 0, 0, 1)]
    public void What_is_largest_over_all_time_is_what_a_long_look_at_the_motion_finds(
        double x, double y, double z, double axisX, double axisY, double axisZ)
    {
        var motion = TorqueFreeMotion<Body>.From(_oneTwoThree, Vector<RotationalSpeed, Body>.FromSi(x, y, z), default);
        Direction<Body> axis = Direction<Body>.Of(axisX, axisY, axisZ);
        double nutation = 0;
        double across = 0;
        double along = 0;
        const int Looks = 20_000;
        for (int i = 0; i < Looks; i++)
        {
            Vector<RotationalSpeed, Body> rate = motion.At(motion.RatePeriod!.Value * ((double)i / Looks)).Rate;
            Direction<Body> momentum = (_oneTwoThree * rate).Direction();
            double angle = momentum.AngleTo(axis).Radians;
            nutation = Math.Max(nutation, Math.Min(angle, Math.PI - angle));
            double about = rate.ComponentAlong(axis).RadiansPerSecond;
            across = Math.Max(across, (rate - Vector<RotationalSpeed, Body>.Along(axis, RotationalSpeed.FromRadiansPerSecond(about))).Magnitude.RadiansPerSecond);
            along = Math.Max(along, Math.Abs(about));
        }

        // A look every 3e-4 of a turn misses a top by the square of that, an angle that passes 90 degrees by its slope.
        Assert.InRange(motion.LargestNutation(axis).Radians, nutation - 1e-13, nutation + 1e-3);
        Assert.InRange(motion.LargestRateAcross(axis).RadiansPerSecond, across - 1e-13, across + 1e-6);
        Assert.InRange(motion.LargestRateAlong(axis).RadiansPerSecond, along - 1e-13, along + 1e-6);
    }

    [Fact]
    public void A_symmetric_body_keeps_its_nutation_and_its_rates_for_ever()
    {
        InertiaTensor<Body> inertia = InertiaTensor<Body>.Diagonal(
            MassMomentOfInertia.FromKilogramSquareMeters(20), MassMomentOfInertia.FromKilogramSquareMeters(20), MassMomentOfInertia.FromKilogramSquareMeters(12));
        var motion = TorqueFreeMotion<Body>.From(inertia, Vector<RotationalSpeed, Body>.FromSi(0.3, -0.4, -6), default);

        Assert.Equal(Math.Atan2(20 * 0.5, 12 * 6), motion.LargestNutation(Direction<Body>.ZAxis).Radians, 1e-15);
        Assert.Equal(0.5, motion.LargestRateAcross(Direction<Body>.ZAxis).RadiansPerSecond, 1e-15);
        Assert.Equal(6, motion.LargestRateAlong(Direction<Body>.ZAxis).RadiansPerSecond, 1e-14);
    }

    [Fact]
    public void A_stage_that_is_left_turning_across_its_axis_finds_spin_again_and_tumbles()
    {
        InertiaTensor<Body> inertia = InertiaTensor<Body>.Diagonal(
            MassMomentOfInertia.FromKilogramSquareMeters(24.6), MassMomentOfInertia.FromKilogramSquareMeters(25.1), MassMomentOfInertia.FromKilogramSquareMeters(11.9));
        var hardly = TorqueFreeMotion<Body>.From(inertia, Vector<RotationalSpeed, Body>.FromSi(0.1, 0, 0.001), default);

        // Energy and momentum where the rate about the intermediate axis x vanishes (own derivation).
        double energy = (24.6 * 0.01) + (11.9 * 1e-6);
        double square = Math.Pow(24.6 * 0.1, 2) + Math.Pow(11.9 * 0.001, 2);
        double spin = Math.Sqrt(((energy * 25.1) - square) / (11.9 * (25.1 - 11.9)));
        Assert.Equal(spin, hardly.LargestRateAlong(Direction<Body>.ZAxis).RadiansPerSecond, 1e-13);
        Assert.True(spin > 0.027);
        Assert.Equal(Math.Atan2(24.6 * 0.1, 11.9 * 0.001), hardly.LargestNutation(Direction<Body>.ZAxis).Radians, 1e-13);

        // With the hair across instead, it circles about y, and z points both ways in turn.
        var across = TorqueFreeMotion<Body>.From(inertia, Vector<RotationalSpeed, Body>.FromSi(0.1, 0.001, 0), default);
        Assert.Equal(90, across.LargestNutation(Direction<Body>.ZAxis).Degrees, 1e-13);
    }

    [Fact]
    public void A_steady_rotation_has_its_own_nutation_and_no_rotation_has_none()
    {
        Direction<Body> axis = Direction<Body>.Of(0, 3, 4);
        var steady = TorqueFreeMotion<Body>.From(_oneTwoThree, Vector<RotationalSpeed, Body>.FromSi(0, 0, -2), default);
        Assert.Equal(Math.Atan2(3, 4), steady.LargestNutation(axis).Radians, 1e-15);
        Assert.Equal(1.6, steady.LargestRateAlong(axis).RadiansPerSecond, 1e-15);
        Assert.Equal(1.2, steady.LargestRateAcross(axis).RadiansPerSecond, 1e-15);

        var still = TorqueFreeMotion<Body>.From(_oneTwoThree, default, default);
        Assert.Equal(0, still.LargestNutation(axis).Radians);
        Assert.Throws<ArgumentException>(() => still.LargestNutation(default));
    }

    [Fact]
    public void A_thin_rod_is_refused()
    {
        var rod = InertiaTensor<Body>.Diagonal(MassMomentOfInertia.Zero, MassMomentOfInertia.FromKilogramSquareMeters(1), MassMomentOfInertia.FromKilogramSquareMeters(1));
        ArgumentException refused = Assert.Throws<ArgumentException>(() => TorqueFreeMotion<Body>.From(rod, Vector<RotationalSpeed, Body>.FromSi(0, 1, 0), default));
        Assert.Contains("thin rod", refused.Message, StringComparison.Ordinal);
    }

    private readonly struct Deck : IFrame;

    [Theory]
    [InlineData(0.0)]
    [InlineData(double.NaN)]
    public void A_rate_that_was_divided_by_zero_is_refused(double divisor)
    {
        // Made by hand: the operator refuses such a divisor itself.
        var rate = new Vector<RotationalSpeed, Body>(1 / divisor, 0 / divisor, 1 / divisor);
        Bounded.Run(() => Assert.Contains("finite", Assert.Throws<ArgumentOutOfRangeException>(
            () => TorqueFreeMotion<Body>.From(_oneTwoThree, rate, default)).Message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(5e-324)]
    [InlineData(1e-310)]
    [InlineData(1e-160)]
    [InlineData(1e-3)]
    public void A_slow_body_moves_like_a_fast_one_in_its_own_time(double factor)
    {
        // Scaling all rates and dividing all times by one factor changes nothing (Euler's equations have no time of their own).
        var rate = Vector<RotationalSpeed, Body>.FromSi(1, 0.5, 1);
        var slow = Vector<RotationalSpeed, Body>.FromSi(factor, 0.5 * factor, factor);
        Bounded.Run(() =>
        {
            var motion = TorqueFreeMotion<Body>.From(_oneTwoThree, slow, default);
            foreach (double time in new[] { 0, 1e-160, 1e-3, 1, 1e6 })
            {
                RotationState<Body> state = motion.At(Duration.FromSeconds(time));
                RotationState<Body> alike = TorqueFreeMotion<Body>.From(_oneTwoThree, rate, default).At(Duration.FromSeconds(time * factor));
                Assert.True(state.Attitude.EqualsWithin(alike.Attitude, Angle.FromRadians(factor < 1e-300 ? 1e-8 : 1e-13)));
                Assert.Equal(alike.Rate.X.RadiansPerSecond, state.Rate.X.RadiansPerSecond / factor, factor < 1e-300 ? 0.51 : 1e-13);
            }
        });
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(5e-324)]
    [InlineData(1e-310)]
    [InlineData(1e-160)]
    [InlineData(-1e-160)]
    [InlineData(1e-9)]
    public void A_moment_after_the_start_the_body_is_where_it_was(double seconds)
    {
        foreach ((double x, double y, double z) in new[] { (1.0, 0.0, 1.0), (0.0, 1.0, 0.0), (1.0, 0.0, Math.Sqrt(1.0 / 3)), (1e-160, 0.0, 1.0), (1.0, 1.0, 1e-120) })
        {
            var rate = Vector<RotationalSpeed, Body>.FromSi(x, y, z);
            Bounded.Run(() =>
            {
                RotationState<Body> state = TorqueFreeMotion<Body>.From(_oneTwoThree, rate, default).At(Duration.FromSeconds(seconds));
                Assert.True(state.Rate.EqualsWithin(rate, RotationalSpeed.FromRadiansPerSecond(1e-8)));
                Assert.True(state.Attitude.EqualsWithin(Rotation<Body, Inertial>.Identity, Angle.FromRadians(1e-8)));
            });
        }
    }

    [Fact]
    public void A_rate_whose_energy_no_number_holds_is_refused()
    {
        var rate = Vector<RotationalSpeed, Body>.FromSi(1e200, 0, 1e200);
        Assert.Throws<ComputationRefusedException>(() => TorqueFreeMotion<Body>.From(_oneTwoThree, rate, default));
    }
}
