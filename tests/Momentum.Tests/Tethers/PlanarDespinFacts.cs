using Momentum.Frames;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>Facts of the planar de-spin that follow on paper, each derived beside its test (own derivations).</summary>
public class PlanarDespinFacts
{
    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(72 * Math.PI / 30));

    private static readonly Mass _weight = Mass.FromGrams(310);

    private static RotationalSpeed Share(double ratio) => _hub.Spin * ratio;

    [Theory]
    [InlineData(0.0)]
    [InlineData(35.0)]
    [InlineData(90.0)]
    [InlineData(130.0)]
    public void Cord_length_for_complete_despin_does_not_depend_on_initial_spin(double angle)
    {
        LetGo letGo = LetGo.AtCordAngle(Angle.FromDegrees(angle));
        var fast = new DespinHub(_hub.SpinInertia, _hub.Radius, _hub.Spin * 40);

        Length slowly = _hub.SizeCordLength(_weight, RotationalSpeed.Zero, letGo).CordLength;

        Assert.Equal(slowly.Meters, fast.SizeCordLength(_weight, RotationalSpeed.Zero, letGo).CordLength.Meters);

        // I + m R² = m (L + R sin a)².
        double mass = 2 * _weight.Kilograms;
        double reach = Math.Sqrt((18.4 / mass) + (0.43 * 0.43));
        Assert.Equal(reach - (0.43 * Math.Sin(angle * Math.PI / 180)), slowly.Meters, 1e-14);
    }

    // On cords of hundreds of hub radii the hub is all but at rest while the cords hinge, so that they swing on at the initial
    // spin: a quarter turn takes (π/2)/w0, to the order of the ratio of radius to cord, below 1/200 here. The hub's own turn
    // is then a sum of rounding, which must come to an end.
    [Theory]
    [InlineData(0.8)]
    [InlineData(0.5)]
    [InlineData(0.2)]
    public void Very_light_weights_hinge_for_a_quarter_turn_at_the_initial_spin(double grams)
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(12.8), Length.FromMillimeters(380), RotationalSpeed.FromRevolutionsPerMinute(60));

        DespinMotion motion = hub.SizeCordLength(Mass.FromGrams(grams), RotationalSpeed.Zero, LetGo.Radial).Deploy();

        double hinging = (motion.LetGoTime - motion.UnwindTime).Seconds * hub.Spin.RadiansPerSecond;
        Assert.Equal(Math.PI / 2, hinging, 0.02);
    }

    // F proportional to f/(c + f²)² is largest at f² = c/3, where (c - f²)/(c + f²) = 1/2; F = (3 sqrt(3)/4) I w0²/(R sqrt(c)).
    [Fact]
    public void Tension_while_unwinding_peaks_where_the_spin_has_fallen_to_half()
    {
        DespinMotion motion = _hub.SizeCordLength(_weight, RotationalSpeed.Zero, LetGo.Tangent).Deploy();
        PeakTension peak = motion.PeakTension;

        Assert.Equal(CordPhase.Unwinding, peak.Phase);
        Assert.Equal(0.5, motion.At(peak.Time).Spin / _hub.Spin, 1e-14);
        double c = 1 + (18.4 / (0.62 * 0.43 * 0.43));
        double w = _hub.Spin.RadiansPerSecond;
        Assert.Equal(3 * Math.Sqrt(3) / 4 * 18.4 * w * w / (0.43 * Math.Sqrt(c)) / 2, peak.Tension.Newtons, 1e-11);
    }

    // A short cord let go at radial pulls hardest while swinging: its share of the centripetal pull outgrows the unwinding's.
    [Fact]
    public void Peak_tension_is_found_in_the_swing_when_it_falls_there()
    {
        DespinMotion motion = _hub.Carrying(_weight, Length.FromMeters(1), LetGo.Radial).Deploy();

        Assert.Equal(CordPhase.Hinging, motion.PeakTension.Phase);
        Assert.True(motion.PeakTension.Tension > motion.At(motion.UnwindTime).CordTension);
        Assert.True(motion.PeakTension.Time > motion.UnwindTime);
    }

    // r = (K - f²)/(K + f²) with K = 1 + C/(m R²), f = L/R: dr/dlnK = (1 - r²)/2 and dr/dlnL = -(1 - r²).
    [Theory]
    [InlineData(0.4)]
    [InlineData(0.0)]
    [InlineData(-0.3)]
    public void Sensitivities_at_the_tangent_are_those_of_the_closed_form(double ratio)
    {
        DespinDesign design = _hub.SizeCordLength(_weight, Share(ratio), LetGo.Tangent);
        const double Step = 1e-5;
        double k = 1 + (18.4 / (0.62 * 0.43 * 0.43));

        double Final(double kFactor, double lengthFactor) => new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(((k * kFactor) - 1) * 0.62 * 0.43 * 0.43), _hub.Radius, _hub.Spin)
            .Carrying(_weight, design.CordLength * lengthFactor, LetGo.Tangent).Deploy().FinalSpin / _hub.Spin;

        // Central differences of this step err by about 1e-10.
        Assert.Equal((1 - (ratio * ratio)) / 2, (Final(1 + Step, 1) - Final(1 - Step, 1)) / (2 * Step), 1e-9);
        Assert.Equal(-(1 - (ratio * ratio)), (Final(1, 1 + Step) - Final(1, 1 - Step)) / (2 * Step), 1e-9);
    }

    // The moment of the pull about the axis is F R cos a: zero at radial. So a little early or late changes a radial let-go's
    // result only in second order, upwards either way, while it changes a tangential one's in first order.
    [Fact]
    public void Radial_let_go_forgives_an_angle_error_and_tangential_does_not()
    {
        DespinDesign radial = _hub.SizeCordLength(_weight, RotationalSpeed.Zero, LetGo.Radial);
        double After(Length cord, double degrees) =>
            _hub.Carrying(_weight, cord, LetGo.AtCordAngle(Angle.FromDegrees(degrees))).Deploy().FinalSpin.RevolutionsPerMinute;

        double early = After(radial.CordLength, 86);
        double late = After(radial.CordLength, 94);
        Assert.Equal(early, late, 1e-11);

        DespinDesign tangent = _hub.SizeCordLength(_weight, RotationalSpeed.Zero, LetGo.Tangent);
        double atTangent = After(tangent.CordLength, 4);
        Assert.True(early > 0);
        Assert.True(atTangent < 0);
        Assert.True(-atTangent > 10 * early, $"tangent {atTangent:R} rpm, radial {early:R} rpm");
    }

    // Common practice: late release spins the body the other way. True of a design that has no spin left at the tangent.
    [Fact]
    public void A_cord_that_stays_on_after_complete_despin_reverses_the_spin()
    {
        DespinDesign tangent = _hub.SizeCordLength(_weight, RotationalSpeed.Zero, LetGo.Tangent);

        Assert.True(_hub.Carrying(_weight, tangent.CordLength, LetGo.Radial).Deploy().FinalSpin < RotationalSpeed.Zero);
    }

    [Theory]
    [InlineData(0.9)]
    [InlineData(0.3)]
    [InlineData(0.05)]
    [InlineData(-0.05)]
    public void Let_go_at_a_spin_rate_leaves_that_rate(double ratio)
    {
        DespinDesign tangent = _hub.SizeCordLength(_weight, RotationalSpeed.Zero, LetGo.Tangent);
        DespinMotion motion = _hub.Carrying(_weight, tangent.CordLength, LetGo.AtSpin(Share(ratio)), LinearDensity.FromGramsPerMeter(1)).Deploy();

        Assert.Equal(ratio, motion.FinalSpin / _hub.Spin, 1e-14);
        Assert.Equal(ratio > 0.04 ? CordPhase.Unwinding : CordPhase.Hinging, motion.LetGoPhase);
    }

    [Fact]
    public void A_let_go_rate_that_is_never_reached_is_refused_with_the_lowest_rate_that_is()
    {
        var refused = Assert.Throws<ComputationRefusedException>(
            () => _hub.Carrying(_weight, Length.FromMeters(2), LetGo.AtSpin(RotationalSpeed.Zero)).Deploy());

        Assert.Contains("never reached", refused.Message);
        Assert.Contains("rpm", refused.Message);
    }

    [Fact]
    public void A_let_go_rate_above_the_initial_spin_is_refused() =>
        Assert.Contains("not below", Assert.Throws<ComputationRefusedException>(
            () => _hub.Carrying(_weight, Length.FromMeters(2), LetGo.AtSpin(_hub.Spin)).Deploy()).Message);

    [Fact]
    public void Sizing_for_let_go_at_a_rate_is_refused_as_ambiguous() =>
        Assert.Contains("whatever cord", Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeCordLength(_weight, Share(0.1), LetGo.AtSpin(Share(0.1)))).Message);

    [Fact]
    public void A_final_spin_above_the_initial_one_is_refused() =>
        Assert.Contains("take spin away", Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeWeightMass(Length.FromMeters(2), Share(1.1), LetGo.Tangent)).Message);

    // At the tangent (A - B)/(A + B) > -1 for any length: energy would have to grow.
    [Theory]
    [InlineData(-1.0, 0.0)]
    [InlineData(-1.5, 90.0)]
    public void More_reversed_spin_than_energy_allows_is_refused(double ratio, double angle) =>
        Assert.Contains("No cord length", Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeCordLength(_weight, Share(ratio), LetGo.AtCordAngle(Angle.FromDegrees(angle)))).Message);

    // A cord with mass brings the spin down further only at lengths that nobody can wind: the refusal says how far they were tried.
    [Fact]
    public void More_reversed_spin_than_any_cord_with_mass_leaves_is_refused_with_the_lowest() =>
        Assert.Matches("cords of up to [0-9.]+ m come down to -[0-9.]+ %", Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeCordLength(_weight, Share(-3), LetGo.Radial, LinearDensity.FromGramsPerMeter(20))).Message);

    // Weights without limit: A/B -> R²/L², so a cord below one hub radius cannot stop the hub at the tangent.
    [Fact]
    public void Cords_too_short_for_any_weight_are_refused() =>
        Assert.Contains("too short", Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeWeightMass(_hub.Radius * 0.9, RotationalSpeed.Zero, LetGo.Tangent)).Message);

    [Fact]
    public void Cords_that_stop_the_hub_without_weights_are_refused() =>
        Assert.Contains("cords alone", Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeWeightMass(Length.FromMeters(9), Share(0.5), LetGo.Tangent, LinearDensity.FromGramsPerMeter(200))).Message);

    [Theory]
    [InlineData(0.0)]
    [InlineData(90.0)]
    public void Trade_curve_holds_the_final_spin_and_heavier_weights_take_shorter_cords(double angle)
    {
        Mass[] masses = [.. Enumerable.Range(1, 20).Select(i => Mass.FromGrams(50 * i))];
        IReadOnlyList<DespinDesign> curve = _hub.TradeCurve(
            masses, Share(0.02), LetGo.AtCordAngle(Angle.FromDegrees(angle)), LinearDensity.FromGramsPerMeter(7.4));

        Assert.All(curve, design => Assert.Equal(0.02, design.Deploy().FinalSpin / _hub.Spin, 1e-12));
        Assert.All(curve.Zip(curve.Skip(1)), pair => Assert.True(pair.Second.CordLength < pair.First.CordLength));
    }

    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(60.0, 3.0)]
    [InlineData(90.0, 7.4)]
    public void Weight_mass_sized_from_the_sized_cord_is_the_weight_mass(double angle, double gramsPerMetre)
    {
        LetGo letGo = LetGo.AtCordAngle(Angle.FromDegrees(angle));
        var density = LinearDensity.FromGramsPerMeter(gramsPerMetre);
        Length cord = _hub.SizeCordLength(_weight, Share(-0.1), letGo, density).CordLength;

        Assert.Equal(_weight.Kilograms, _hub.SizeWeightMass(cord, Share(-0.1), letGo, density).WeightMass.Kilograms, 1e-13);
    }

    // First order in the cord's mass: m -> m + mu l/3 where the cord swings, m + mu L where it is carried.
    [Fact]
    public void A_cord_with_mass_acts_as_a_third_of_it_at_the_weight()
    {
        var cord = Length.FromMeters(5);
        const double Density = 1e-7;
        double bare = _hub.Carrying(_weight, cord, LetGo.Tangent).Deploy().FinalSpin / _hub.Spin;
        double with1 = _hub.Carrying(_weight, cord, LetGo.Tangent, LinearDensity.FromKilogramsPerMeter(Density)).Deploy().FinalSpin / _hub.Spin;

        // dr = 2 (B dA - A dB)/(A + B)², dA = mu L R², dB = mu L³/3.
        double a = 18.4 + (0.62 * 0.43 * 0.43);
        double b = 0.62 * 25;
        double expected = 2 * ((b * 2 * Density * 5 * 0.43 * 0.43) - (a * 2 * Density * 125 / 3)) / ((a + b) * (a + b));
        Assert.Equal(1, (with1 - bare) / expected, 1e-5);
    }

    [Fact]
    public void Released_weights_fly_straight_and_keep_their_angular_momentum()
    {
        DespinMotion motion = _hub.SizeCordLength(_weight, Share(0.1), LetGo.AtCordAngle(Angle.FromDegrees(50))).Deploy();
        DespinState last = motion.At(motion.LetGoTime);
        DespinState later = motion.At(motion.LetGoTime + Duration.FromSeconds(2));

        Assert.Equal(CordPhase.LetGo, later.Phase);
        Assert.Null(later.CordRoot(0));
        Assert.Equal(Force.Zero, later.CordTension);
        for (int weight = 0; weight < 2; weight++)
        {
            Position<Inertial> from = last.WeightPosition(weight);
            Position<Inertial> to = later.WeightPosition(weight);
            Assert.Equal(2 * motion.Departures[0].Speed.MetersPerSecond, (to - from).Magnitude.Meters, 1e-12);
            double sense = weight == 0 ? 1 : -1;
            Assert.Equal(sense * 2 * motion.Departures[0].Velocity.X.MetersPerSecond, (to - from).X.Meters, 1e-12);
            Assert.Equal(sense * 2 * motion.Departures[0].Velocity.Y.MetersPerSecond, (to - from).Y.Meters, 1e-12);
        }

        double spun = later.Spin.RadiansPerSecond * 2;
        Assert.Equal(last.HubAngle.Radians + spun, later.HubAngle.Radians, 1e-12);
    }

    // The velocity that the release reports is the derivative of the positions that the history reports.
    [Fact]
    public void Release_velocity_is_the_rate_of_the_weights_position()
    {
        DespinMotion motion = _hub.SizeCordLength(_weight, Share(0.1), LetGo.Radial, LinearDensity.FromGramsPerMeter(7.4)).Deploy();
        double end = motion.LetGoTime.Seconds;
        const double Step = 1e-5;
        Position<Inertial> before = motion.At(Duration.FromSeconds(end - Step)).WeightPosition(0);
        Position<Inertial> after = motion.At(Duration.FromSeconds(end)).WeightPosition(0);

        // A one-sided difference: off by half the acceleration times the step.
        Assert.Equal(motion.Departures[0].Velocity.X.MetersPerSecond, (after - before).X.Meters / Step, 0.01);
        Assert.Equal(motion.Departures[0].Velocity.Y.MetersPerSecond, (after - before).Y.Meters / Step, 0.01);
    }

    [Fact]
    public void Unequal_steps_and_even_steps_give_the_same_states()
    {
        DespinMotion motion = _hub.SizeCordLength(_weight, RotationalSpeed.Zero, LetGo.Radial).Deploy();
        IReadOnlyList<DespinState> even = motion.History(11);
        IReadOnlyList<DespinState> given = motion.History(even.Select(state => state.Time));

        Assert.Equal(11, even.Count);
        Assert.Equal(Duration.Zero, even[0].Time);
        Assert.Equal(motion.LetGoTime.Seconds * 1.25, even[^1].Time.Seconds, 1e-12);
        Assert.All(even.Zip(given), pair => Assert.Equal(pair.First.Spin, pair.Second.Spin));
    }

    [Fact]
    public void Let_go_rules_are_equal_whatever_the_unit_they_were_given_in()
    {
        Assert.Equal(LetGo.Radial, LetGo.AtCordAngle(Angle.FromDegrees(90)));
        Assert.Equal(LetGo.Tangent, LetGo.AtCordAngle(Angle.FromRevolutions(0)));
        Assert.NotEqual(LetGo.Tangent, LetGo.Radial);
        Assert.Equal("radial", LetGo.AtCordAngle(Angle.FromDegrees(90)).ToString());
        Assert.Equal("cord angle 45 deg", LetGo.AtCordAngle(Angle.FromDegrees(45)).ToString());
    }

    [Fact]
    public void Bad_arguments_are_refused_by_name()
    {
        void Refused(string name, Action act)
        {
            var error = Assert.Throws<ArgumentOutOfRangeException>(act);
            Assert.Equal(name, error.ParamName);
            Assert.NotNull(error.ActualValue);
        }

        MassMomentOfInertia inertia = _hub.SpinInertia;
        Refused("spinInertia", () => _ = new DespinHub(-inertia, _hub.Radius, _hub.Spin));
        Refused("radius", () => _ = new DespinHub(inertia, Length.Zero, _hub.Spin));
        Refused("spin", () => _ = new DespinHub(inertia, _hub.Radius, RotationalSpeed.Zero));
        Refused("spin", () => _ = new DespinHub(inertia, _hub.Radius, -_hub.Spin));
        Refused("weightMass", () => _hub.Carrying(Mass.Zero, Length.FromMeters(1), LetGo.Tangent));
        Refused("weightMass", () => _hub.SizeCordLength(-_weight, RotationalSpeed.Zero, LetGo.Tangent));
        Refused("cordLength", () => _hub.Carrying(_weight, -Length.FromMeters(1), LetGo.Tangent));
        Refused("cordLength", () => _hub.SizeWeightMass(Length.Zero, RotationalSpeed.Zero, LetGo.Tangent));
        Refused("cordLineDensity", () => _hub.Carrying(_weight, Length.FromMeters(1), LetGo.Tangent, LinearDensity.FromKilogramsPerMeter(-1)));
        Refused("weights", () => _hub.Carrying(_weight, Length.FromMeters(1), LetGo.Tangent, weights: 1));
        Refused("angle", () => LetGo.AtCordAngle(Angle.FromDegrees(181)));
        DespinMotion motion = _hub.Carrying(_weight, Length.FromMeters(1), LetGo.Tangent).Deploy();
        Refused("time", () => motion.At(Duration.FromSeconds(-1)));
        Refused("samples", () => motion.History(1));
        Refused("weight", () => motion.At(Duration.Zero).WeightPosition(2));
        Assert.Throws<ArgumentNullException>(() => _hub.Carrying(_weight, Length.FromMeters(1), null!));
    }

    [Theory]
    [InlineData(9.55e-14, 2.16e-7, 1.22e-19, 0.0126, 7.11e10, false)]
    [InlineData(3.56e-15, 3.58e-9, 2.57, 12_070, 1.72e23, false)]
    [InlineData(17.79, 1.89, 0.0079, 0.9, 2.96e19, true)]
    public void A_cord_so_long_that_what_unwinds_of_it_is_lost_in_its_length_is_refused(
        double inertia, double radius, double spin, double weight, double length, bool tangent)
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(inertia), Length.FromMeters(radius), RotationalSpeed.FromRadiansPerSecond(spin));
        DespinDesign design = hub.Carrying(
            Mass.FromKilograms(weight), Length.FromMeters(length), tangent ? LetGo.Tangent : LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(0.3 * spin)));
        Assert.Contains("unwound", Assert.Throws<ComputationRefusedException>(() => design.Deploy()).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1e2)]
    [InlineData(1e3)]
    [InlineData(1e4)]
    public void A_cord_with_mass_of_many_hub_radii_is_timed_at_once(double hubRadii)
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(10), Length.FromMeters(0.5), RotationalSpeed.FromRadiansPerSecond(7));
        DespinMotion motion = hub.Carrying(
            Mass.FromKilograms(1), Length.FromMeters(0.5 * hubRadii), LetGo.Radial, LinearDensity.FromKilogramsPerMeter(1e-3)).Deploy();
        Assert.InRange(new CordClock(motion.Design.Cords, Math.PI / 2).Panels, 1, 8);

        // It unwinds at the initial spin, and the hub, reversed by the cord, turns back with it.
        Assert.Equal(hubRadii / 7, motion.UnwindTime.Seconds, 1e-9 * hubRadii);
        Assert.InRange(motion.HubTurn.Radians, -hubRadii - 10, -0.9 * hubRadii + 100);
    }

    [Fact]
    public void A_hub_without_inertia_to_speak_of_hardly_pulls_and_its_tension_is_no_rounding()
    {
        // By Newton's law for the hub: tension times radius times the cosine of the cord angle is inertia times deceleration.
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(1e-16), Length.FromMeters(0.5), RotationalSpeed.FromRadiansPerSecond(7));
        DespinMotion motion = hub.Carrying(Mass.FromKilograms(1), Length.FromMeters(0.7), LetGo.AtCordAngle(Angle.FromDegrees(40))).Deploy();
        Assert.InRange(motion.PeakTension.Tension.Newtons, motion.AtLetGo.CordTension.Newtons, 1e-12);
        Assert.InRange(motion.AtLetGo.CordTension.Newtons, 1e-18, 1e-12);
        double end = motion.LetGoTime.Seconds;
        double step = 1e-4 * end;
        double slowing = (motion.At(Duration.FromSeconds(end - (2 * step))).Spin - motion.AtLetGo.Spin).RadiansPerSecond / (2 * step);
        double angle = motion.At(Duration.FromSeconds(end - step)).CordAngle.Radians;
        double tension = motion.At(Duration.FromSeconds(end - step)).CordTension.Newtons;
        Assert.Equal(1e-16 * slowing / (2 * 0.5 * Math.Cos(angle)), tension, 1e-6 * tension);
    }
}
