using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Motion;
using Momentum.Quantities;
using UnitsNet;

namespace Momentum.Tests.Motion;

public class ForcedMotionTests
{
    private static MassProperties<Body> BodyOf(double mass, double xx, double yy, double zz)
    {
        return MassProperties<Body>.Of(
            Mass.FromKilograms(mass),
            Position<Body>.Origin,
            InertiaTensor<Body>.Diagonal(
                MassMomentOfInertia.FromKilogramSquareMeters(xx),
                MassMomentOfInertia.FromKilogramSquareMeters(yy),
                MassMomentOfInertia.FromKilogramSquareMeters(zz)));
    }

    private static BodyState<Body> Spinning(double x, double y, double z)
    {
        return new BodyState<Body>(Position<Inertial>.Origin, default, Vector<RotationalSpeed, Body>.FromSi(x, y, z), default);
    }

    private static Duration Seconds(double value)
    {
        return Duration.FromSeconds(value);
    }

    private readonly record struct Constant(BodyLoads<Body> Loads) : ILoads<Body>
    {
        public BodyLoads<Body> At(Duration time, in BodyState<Body> state)
        {
            return Loads;
        }
    }

    [Property(MaxTest = 30)]
    public void Without_loads_it_is_the_torque_free_motion(byte x, byte y, byte z)
    {
        MassProperties<Body> mass = BodyOf(10, 1, 2, 2.5);
        BodyState<Body> start = Spinning((x / 100.0) - 1, (y / 100.0) - 1, (z / 100.0) - 1.001);
        var forced = ForcedMotion<Body, Constant>.Of(mass, default, default, Duration.Zero, start);
        var exact = TorqueFreeMotion<Body>.From(mass.Inertia, start.Rate, start.Attitude);
        BodyState<Body> a = forced.AdvanceTo(Seconds(10));
        RotationState<Body> b = exact.At(Seconds(10));

        // The error of the steps, 1e-12 in all, is magnified as by the separatrix of the same momentum H in ten seconds: there
        // neighbours part at the rate (H/I2) sqrt((I2 - I1)(I3 - I2)/(I1 I3)).
        double parting = exact.AngularMomentum.Magnitude.KilogramSquareMetersPerSecond / 2 * Math.Sqrt((2 - 1) * (2.5 - 2) / (1 * 2.5));
        double allowed = 1e-12 * Math.Exp(10 * parting);
        Assert.True(a.Rate.EqualsWithin(b.Rate, RotationalSpeed.FromRadiansPerSecond(allowed)));
        Assert.True(a.Attitude.EqualsWithin(b.Attitude, Angle.FromRadians(allowed)));
        Assert.True(forced.Ledger.AngularMomentum.EqualsWithin(exact.AngularMomentum, AngularMomentum.FromKilogramSquareMetersPerSecond(1e-15)));
        Assert.InRange(Math.Abs(forced.Ledger.RelativeResidual), 0, 1e-11);
        Assert.InRange(Math.Abs(forced.Ledger.QuaternionDrift), 0, 1e-11);
    }

    [Fact]
    public void A_constant_torque_about_the_spin_axis_spins_up_in_proportion_to_time()
    {
        Constant loads = new(new BodyLoads<Body> { BodyTorque = Vector<Torque, Body>.FromSi(0, 0, 0.6) });
        var motion = ForcedMotion<Body, Constant>.Of(BodyOf(10, 1, 1, 2), loads, default, Duration.Zero, Spinning(0, 0, 1));
        BodyState<Body> end = motion.AdvanceTo(Seconds(20));
        Assert.Equal(7.0, end.Rate.Z.RadiansPerSecond, 1e-11);

        // Angle = 20 + 0.3 · 400 / 2 = 80 rad; work = torque · angle.
        Assert.Equal(0.6 * 80.0, motion.Ledger.Work.Joules, 1e-9);
        Assert.Equal(0.5 * 2.0 * 49.0, motion.Ledger.KineticEnergy.Joules, 1e-9);
        Assert.True(end.Attitude.EqualsWithin(Rotation<Body, Inertial>.About(Direction<Body>.ZAxis, Angle.FromRadians(80)), Angle.FromRadians(1e-10)));
    }

    [Fact]
    public void A_transverse_torque_fixed_in_a_spinning_body_tilts_it_no_more_than_twice_the_mean_a_right_angle_from_it()
    {
        // Own derivation: with M across the spin w of a body with spin inertia C, the axis circles about a mean tilt of M/(C w²).
        const double Moment = 0.01;
        const double Spin = 5.0;
        const double C = 2.0;
        Constant loads = new(new BodyLoads<Body> { BodyTorque = Vector<Torque, Body>.FromSi(Moment, 0, 0) });
        var motion = ForcedMotion<Body, Constant>.Of(BodyOf(10, 1.2, 1.2, C), loads, default, Duration.Zero, Spinning(0, 0, Spin));
        double mean = Moment / (C * Spin * Spin);
        double largest = 0;
        for (int i = 1; i <= 400; i++)
        {
            BodyState<Body> state = motion.AdvanceTo(Seconds(i * 0.05));
            Vector<AngularMomentum, Inertial> h = motion.Ledger.AngularMomentum;
            largest = Math.Max(largest, Math.Sqrt((h.SiX * h.SiX) + (h.SiY * h.SiY)) / h.SiZ);

            // Closed form for a symmetric body and small rates, with n = (C - A) w / A: complex rate W' - i n W = M/A,
            // W = (M/A) (exp(i n t) - 1)/(i n).
            double n = (C - 1.2) * Spin / 1.2;
            double t = i * 0.05;
            Assert.Equal(Moment / 1.2 * Math.Sin(n * t) / n, state.Rate.X.RadiansPerSecond, 1e-12);
            Assert.Equal(Moment / 1.2 * (1 - Math.Cos(n * t)) / n, state.Rate.Y.RadiansPerSecond, 1e-12);
        }

        // The momentum's tilt is M/w · |exp(i w t) - 1| / (C w), so at most twice the mean: to first order in the tilt.
        Assert.Equal(2.0 * mean, largest, 2.0 * mean * 1e-3);
    }

    [Fact]
    public void A_force_fixed_in_space_makes_a_parabola_and_work()
    {
        Constant loads = new(new BodyLoads<Body> { SpaceForce = Vector<Force, Inertial>.FromSi(0, 0, -98.0665) });
        BodyState<Body> start = Spinning(0.1, 2, 0.3) with { Velocity = Vector<Speed, Inertial>.FromSi(3, 0, 10) };
        var motion = ForcedMotion<Body, Constant>.Of(BodyOf(10, 1, 2, 2.5), loads, default, Seconds(5), start);
        BodyState<Body> end = motion.AdvanceTo(Seconds(7));
        Assert.True(end.CentreOfMass.EqualsWithin(Position<Inertial>.Origin + Vector<Length, Inertial>.FromSi(6, 0, 20 - (0.5 * 9.80665 * 4)), Length.FromMeters(1e-11)));
        Assert.Equal(-98.0665 * end.CentreOfMass.Z.Meters, motion.Ledger.Work.Joules, 1e-9);
        Assert.Equal(10.0 * 3.0, motion.Ledger.LinearMomentum.X.KilogramMetersPerSecond, 1e-12);
    }

    [Fact]
    public void A_force_fixed_across_a_spinning_body_averages_out()
    {
        // dv/dt = (F/m)(cos wt, sin wt): v = F/(m w) (sin wt, 1 - cos wt).
        Constant loads = new(new BodyLoads<Body> { BodyForce = Vector<Force, Body>.FromSi(4, 0, 0) });
        var motion = ForcedMotion<Body, Constant>.Of(BodyOf(10, 1, 1, 2), loads, default, Duration.Zero, Spinning(0, 0, 3));
        BodyState<Body> end = motion.AdvanceTo(Seconds(11));
        Assert.Equal(0.4 / 3.0 * Math.Sin(33), end.Velocity.X.MetersPerSecond, 1e-11);
        Assert.Equal(0.4 / 3.0 * (1 - Math.Cos(33)), end.Velocity.Y.MetersPerSecond, 1e-11);
    }

    [Fact]
    public void A_slug_turns_a_spin_about_the_least_axis_into_one_about_the_greatest_and_keeps_the_momentum()
    {
        // The major-axis rule: the final state has the same momentum and the least energy, h²/(2 (I3 + J)).
        const double Slug = 0.3;
        ViscousSlug damper = ViscousSlug.Of(MassMomentOfInertia.FromKilogramSquareMeters(Slug), Seconds(0.5));
        var motion = ForcedMotion<Body, Constant>.Of(BodyOf(10, 1, 1.8, 2), default, damper, Duration.Zero, Spinning(3, 0.05, 0.02));
        Vector<AngularMomentum, Inertial> before = motion.Ledger.AngularMomentum;
        double energy = motion.Ledger.KineticEnergy.Joules;
        double dissipated = 0;
        for (int i = 1; i <= 50; i++)
        {
            motion.AdvanceTo(Seconds(i * 8.0));
            Assert.True(motion.Ledger.Dissipated.Joules >= dissipated);
            dissipated = motion.Ledger.Dissipated.Joules;
        }

        double h = before.Magnitude.KilogramSquareMetersPerSecond;
        Assert.Equal(before, motion.Ledger.AngularMomentum);
        Assert.Equal(h * h / (2 * (2 + Slug)), motion.Ledger.KineticEnergy.Joules, 1e-6 * energy);
        Assert.Equal(h / (2 + Slug), Math.Abs(motion.State.Rate.Z.RadiansPerSecond), 1e-3);
        Assert.Equal(energy - motion.Ledger.KineticEnergy.Joules, dissipated, 1e-9 * energy);
    }

    [Fact]
    public void Jet_damping_follows_the_power_law_of_a_linear_burn()
    {
        // Own derivation from I dw/dt = -(dI/dt) w - m' l² w with I falling by k a second: w = w0 (I/I0)^(m' l²/k - 1).
        // The body is a sphere in inertia so that a transverse rotation stays one.
        MassProperties<Body> before = BodyOf(100, 50, 50, 50);
        MassProperties<Body> after = BodyOf(60, 30, 30, 30);
        var burn = Burn<Body>.Between(before, after, Seconds(1), Seconds(10), Position<Body>.Of(Length.Zero, Length.Zero, Length.FromMeters(-1.5)));
        var motion = ForcedMotion<Body, Constant>.Of(burn, default, default, Duration.Zero, Spinning(0.4, 0, 0) with { Velocity = Vector<Speed, Inertial>.FromSi(1, 2, 3) });
        Assert.Equal(0.4, motion.AdvanceTo(Seconds(1)).Rate.X.RadiansPerSecond, 1e-12);
        double exponent = (4.0 * 2.25 / 2.0) - 1.0;
        Assert.Equal(0.4 * Math.Pow(40.0 / 50.0, exponent), motion.AdvanceTo(Seconds(6)).Rate.X.RadiansPerSecond, 1e-12);
        double end = 0.4 * Math.Pow(30.0 / 50.0, exponent);
        Assert.Equal(end, motion.AdvanceTo(Seconds(11)).Rate.X.RadiansPerSecond, 1e-12);
        Assert.Equal(end, motion.AdvanceTo(Seconds(20)).Rate.X.RadiansPerSecond, 1e-12);
        Assert.InRange(Math.Abs(motion.Ledger.RelativeResidual), 0, 1e-12);
        Assert.Equal(60.0, motion.Ledger.LinearMomentum.X.KilogramMetersPerSecond, 1e-11);
    }

    [Property(MaxTest = 20)]
    public void The_account_closes_for_any_loads_and_damper(byte a, byte b, byte c)
    {
        Constant loads = new(new BodyLoads<Body>
        {
            BodyForce = Vector<Force, Body>.FromSi(a / 50.0, -1, 0.3),
            SpaceForce = Vector<Force, Inertial>.FromSi(0.2, b / 100.0, -2),
            BodyTorque = Vector<Torque, Body>.FromSi(0.1, c / 500.0, -0.2),
            SpaceTorque = Vector<Torque, Inertial>.FromSi(-0.05, 0.1, a / 700.0),
        });
        ViscousSlug damper = ViscousSlug.Of(MassMomentOfInertia.FromKilogramSquareMeters(0.1 + (b / 300.0)), Seconds(0.2 + (c / 50.0)));
        var burn = Burn<Body>.Between(BodyOf(20, 3, 4, 5), BodyOf(12, 2, 2.5, 2), Seconds(2), Seconds(4), Position<Body>.Of(Length.Zero, Length.FromMeters(0.1), Length.FromMeters(-1)));
        var motion = ForcedMotion<Body, Constant>.Of(burn, loads, damper, Duration.Zero, Spinning(0.3, a / 200.0, 2));
        motion.AdvanceTo(Seconds(10));
        Assert.InRange(Math.Abs(motion.Ledger.RelativeResidual), 0, 1e-11);
        Assert.InRange(Math.Abs(motion.Ledger.QuaternionDrift), 0, 1e-11);
    }

    [Fact]
    public void Wrong_input_is_refused_by_name()
    {
        Assert.Throws<ArgumentException>("mass", () => ForcedMotion<Body, Constant>.Of(default(MassProperties<Body>), default, default, Duration.Zero, default));
        var motion = ForcedMotion<Body, Constant>.Of(BodyOf(1, 1, 1, 1), default, default, Seconds(2), default);
        Assert.Throws<ArgumentOutOfRangeException>("time", () => motion.AdvanceTo(Seconds(1)));
        Assert.Throws<ArgumentOutOfRangeException>("relaxation", () => ViscousSlug.Of(MassMomentOfInertia.FromKilogramSquareMeters(1), Duration.Zero));
        Assert.Throws<ArgumentOutOfRangeException>("inertia", () => ViscousSlug.Of(MassMomentOfInertia.Zero, Seconds(1)));
        Assert.Throws<ArgumentException>("after", () => Burn<Body>.Between(BodyOf(1, 1, 1, 1), BodyOf(2, 1, 1, 1), Duration.Zero, Seconds(1), default));
        Assert.Throws<ArgumentOutOfRangeException>("duration", () => Burn<Body>.Between(BodyOf(2, 1, 1, 1), BodyOf(1, 1, 1, 1), Duration.Zero, Duration.Zero, default));
    }
}
