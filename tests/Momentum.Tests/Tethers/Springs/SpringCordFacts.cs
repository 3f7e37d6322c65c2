using System.Collections.Concurrent;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests.Tethers.Springs;

/// <summary>Spring cords against what is known otherwise: the literature, rigid cords, the deployment in three dimensions.</summary>
public class SpringCordFacts
{
    // 200 kg·m², 1 m, two weights of 2 kg, 5 rad/s: the proportions of the textbook example among the published figures.
    private static readonly DespinHub _hub = Hub(200, 5);

    private static readonly Mass _weight = Mass.FromKilograms(2);

    private static readonly ConcurrentDictionary<(double Inertia, double Ratio, double Degrees), SpringCordDesign> _sized = new();

    public static TheoryData<double, double, double> Designs
    {
        get
        {
            // Hub inertia over that of the stowed weights, wanted final over initial spin, let-go angle in degrees.
            var data = new TheoryData<double, double, double>();
            foreach (double inertia in (ReadOnlySpan<double>)[20, 200])
            {
                foreach (double ratio in (ReadOnlySpan<double>)[0.05, 0.2, 0.3])
                {
                    data.Add(inertia, ratio, 0);
                    data.Add(inertia, ratio, 90);
                }
            }

            return data;
        }
    }

    // J. V. Fedor, Analytical theory of the stretch yo-yo for de-spin of satellites, NASA TN D-1676 (1963), summary, read: the
    // results "clearly indicate that the stretch yo-yo is less sensitive to satellite spin-up errors and uncertainty in the spin
    // moment of inertia than is the conventional rigid yo-yo". (Of the note only summary and contents were to be had; they list
    // tangential and radial release. Its equations and curves were not read.)
    [Theory]
    [MemberData(nameof(Designs))]
    public void A_sized_spring_cord_is_less_sensitive_to_spin_up_and_to_inertia_than_a_rigid_one(double inertia, double ratio, double angle)
    {
        SpringCordDesign design = Sized(inertia, ratio, angle);
        SpinSensitivity stretching = design.Sensitivity();
        SpinSensitivity rigid = design.WithoutStretch().Sensitivity();

        Assert.InRange(Math.Abs(stretching.ToInitialSpin), 0, 1e-7);
        Assert.Equal(ratio, rigid.ToInitialSpin, 1e-8);
        Assert.True(stretching.ToSpinInertia < rigid.ToSpinInertia, $"{stretching} against {rigid}");
    }

    // The wanted final spin, and the insensitivity itself, by deploying the same cords from other spins. What an error e leaves
    // is of second order: by the closed form for slow stretch, df/dw0 = (r - z)/(1 - z r) with the slopes of r and z at z = r,
    // the fraction 3 r e²/(2 (1 + 3 r)(1 - r)) of the initial spin (own derivation). The swing of the springs can add to it.
    [Theory]
    [MemberData(nameof(Designs))]
    public void The_final_spin_is_the_wanted_one_and_stays_so_when_the_initial_spin_errs(double inertia, double ratio, double angle)
    {
        SpringCordDesign design = Sized(inertia, ratio, angle);
        double initial = design.Hub.Spin.RadiansPerSecond;
        double Final(double factor) => design.On(new DespinHub(design.Hub.SpinInertia, design.Hub.Radius, design.Hub.Spin * factor))
            .Deploy().FinalSpin.RadiansPerSecond / initial;

        Assert.Equal(ratio, Final(1), 1e-8);

        // Central difference over 2e-4; a swing of the spring to this fineness bends it by less than 1e-5.
        Assert.Equal(0, (Final(1.0001) - Final(0.9999)) / 2e-4, 1e-5);
        if (ratio >= 0.1)
        {
            double left = 1.5 * ratio * 0.05 * 0.05 / ((1 + (3 * ratio)) * (1 - ratio));
            Assert.InRange(Math.Abs(Final(1.05) - ratio), 0, 2 * left);
            Assert.InRange(Math.Abs(Final(0.95) - ratio), 0, 2 * left);
        }
    }

    // Own independent run of the undamped motion, to three digits: springs of 1000 N/m together, unstretched 5.433 m,
    // tangential; and the closed form of rigid cords to the same final spin.
    [Theory]
    [InlineData(1.0, 0.9, 0.943, 0.900)]
    [InlineData(1.0, 1.1, 1.050, 1.100)]
    [InlineData(0.95, 1.0, 0.893, 0.879)]
    [InlineData(1.05, 1.0, 1.102, 1.114)]
    public void Half_the_best_stretch_halves_the_spin_up_error(double inertia, double spin, double stretching, double rigid)
    {
        SpringCordDesign design = _hub.CarryingOnSprings(
            _weight, Length.FromMeters(5.433), ForcePerLength.FromNewtonsPerMeter(500), LetGo.Tangent);
        DespinHub other = Hub(200 * inertia, 5 * spin);

        Assert.Equal(1.000, design.Deploy().FinalSpin.RadiansPerSecond, 5e-4);
        Assert.Equal(stretching, design.On(other).Deploy().FinalSpin.RadiansPerSecond, 5e-4);

        DespinDesign without = design.WithoutStretch();
        Assert.Equal(rigid, other.Carrying(_weight, without.CordLength, LetGo.Tangent).Deploy().FinalSpin.RadiansPerSecond, 5e-4);
    }

    // Closed form for slow stretch and a heavy hub (own derivation, see SizeSpringCord): m L² = I (1 - r)³, k = m w0²/r, stretch at
    // let-go r of the free length, sensitivity to inertia (1 - r)/2. The springs swing on through it by some (w0/ω)/(L/R) of
    // their stretch, ω² = k/m, so that it comes true as the hub grows heavy.
    [Theory]
    [InlineData(200, 0.06, 0.1)]
    [InlineData(2_000, 0.02, 0.03)]
    public void Sized_cords_come_to_the_closed_form_as_the_hub_grows_heavy(double inertia, double length, double stretch)
    {
        const double Ratio = 0.2;
        SpringCordDesign design = Sized(inertia, Ratio, 0);
        SpringCordState last = design.Deploy().AtLetGo;
        double mass = 2 * design.WeightMass.Kilograms;
        double radius = design.Hub.Radius.Meters;
        double spin = design.Hub.Spin.RadiansPerSecond;

        Assert.Equal(1, design.CordLength.Meters / (radius * Math.Sqrt(inertia * Math.Pow(1 - Ratio, 3))), length);
        Assert.Equal(1, 2 * design.SpringRate.NewtonsPerMeter * Ratio / (mass * spin * spin), stretch);
        Assert.Equal(1, last.Stretch / last.FreeLength / Ratio, stretch * 2);
        Assert.Equal((1 - Ratio) / 2, design.Sensitivity().ToSpinInertia, stretch);
    }

    // The same closed form for any other spring, z the stretch over the free length: df/dw0 = (r - z)/(1 - z r) and
    // dr/dlnI = (1 - r²)/2 · (1 - z)/(1 - z r), where z (1 + z)² = m w0² (1 + r)²/k. Heavy hub, some damping to still the swing.
    [Theory]
    [InlineData(8)]
    [InlineData(15)]
    [InlineData(40)]
    public void Sensitivities_of_any_spring_follow_the_closed_form(double spring)
    {
        const double Ratio = 0.2;
        const double Inertia = 20_000;
        double z = 0.1;
        for (int i = 0; i < 200; i++)
        {
            z = (1 + Ratio) * (1 + Ratio) / (spring * (1 + z) * (1 + z));
        }

        double length = Math.Sqrt(Inertia * (1 - Ratio) / (1 + Ratio) * (1 + z)) * (1 - z);
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(Inertia), Length.FromMeters(1), RotationalSpeed.FromRadiansPerSecond(1));
        SpringCordDesign design = hub.CarryingOnSprings(
            Mass.FromKilograms(0.5), Length.FromMeters(length), ForcePerLength.FromNewtonsPerMeter(spring / 2), LetGo.Tangent, 0.02);

        Assert.Equal(Ratio, design.Deploy().FinalSpin.RadiansPerSecond, 0.01);
        SpinSensitivity sensitivity = design.Sensitivity();
        Assert.Equal((Ratio - z) / (1 - (z * Ratio)), sensitivity.ToInitialSpin, 0.02);
        Assert.Equal((1 - (Ratio * Ratio)) / 2 * (1 - z) / (1 - (z * Ratio)), sensitivity.ToSpinInertia, 0.02);
    }

    // The same cords in three dimensions, by another formulation: in the plane of the centre of mass, equal and opposite.
    // Both integrate to about 1e-12 a step.
    [Theory]
    [InlineData(0, 0, 250)]
    [InlineData(0, 0.1, 250)]
    [InlineData(90, 0, 250)]
    [InlineData(90, 0.1, 250)]
    [InlineData(50, 0.02, 4000)]
    public void The_deployment_in_three_dimensions_agrees_in_the_plane(double degrees, double damping, double springRate)
    {
        Angle angle = Angle.FromDegrees(degrees);
        SpringCordDesign design = _hub.CarryingOnSprings(
            _weight, Length.FromMeters(5.1), ForcePerLength.FromNewtonsPerMeter(springRate), LetGo.AtCordAngle(angle), damping);
        SpringCordMotion planar = design.Deploy();
        DeploymentResult solid = InThreeDimensions(design, planar.LetGoTime.Seconds + 0.1).Deploy();

        Assert.Equal(planar.FinalSpin.RadiansPerSecond, solid.FinalSpin.RadiansPerSecond, 1e-9);
        Assert.Equal(planar.LetGoTime.Seconds, solid.Events.First(e => e.Kind == DeploymentEventKind.LetGo).Time.Seconds, 1e-9);
        Assert.Equal(planar.UnwindTime.Seconds, solid.Events.First(e => e.Kind == DeploymentEventKind.Unwound).Time.Seconds, 1e-9);
        Assert.Equal(planar.PeakTension.Tension.Newtons, solid.PeakTensions[0].Tension.Newtons, 1e-6);
        Assert.Equal(-planar.AtLetGo.DampedEnergy.Joules, solid.Ledger.CordDampingWork.Joules, 1e-7);
        foreach (double share in (ReadOnlySpan<double>)[0.2, 0.5, 0.8, 0.97])
        {
            Duration time = planar.LetGoTime * share;
            SpringCordState there = planar.At(time);
            DeploymentState here = solid.At(time);
            Assert.Equal(there.Spin.RadiansPerSecond, here.Spin.RadiansPerSecond, 1e-9);
            Assert.Equal(there.CordTension.Newtons, here.Cords[0].Tension.Newtons, 1e-6);
            Assert.Equal(there.FreeLength.Meters, here.Cords[0].FreeLength.Meters, 1e-9);
        }
    }

    // The same insensitivity in three dimensions, where the sizing is not from.
    [Fact]
    public void Cords_sized_in_the_plane_forgive_a_spin_up_error_in_three_dimensions()
    {
        SpringCordDesign design = _hub.SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Radial);
        double Final(double spin) => InThreeDimensions(design.On(Hub(200, spin)), 3).Deploy().FinalSpin.RadiansPerSecond;

        Assert.Equal(1, Final(5), 1e-8);

        // A tenth more or less spin: rigid cords leave a tenth more or less, these a fortieth at most.
        Assert.InRange(Final(5.5), 0.975, 1);
        Assert.InRange(Final(4.5), 0.975, 1);
    }

    // The error of the stretch itself goes with 1/k, that of the swing about it with 1/k^1.5.
    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(90)]
    public void Ever_stiffer_cords_come_to_the_closed_form_of_rigid_ones(double degrees)
    {
        LetGo letGo = LetGo.AtCordAngle(Angle.FromDegrees(degrees));
        DespinMotion rigid = _hub.Carrying(_weight, Length.FromMeters(5.8), letGo).Deploy();
        double Departure(double rate)
        {
            SpringCordMotion motion = _hub.CarryingOnSprings(
                _weight, Length.FromMeters(5.8), ForcePerLength.FromNewtonsPerMeter(rate), letGo).Deploy();
            Assert.Equal(rigid.PeakTension.Tension.Newtons, motion.PeakTension.Tension.Newtons, rigid.PeakTension.Tension.Newtons * 50 / Math.Sqrt(rate));
            return Math.Abs(motion.FinalSpin.RadiansPerSecond - rigid.FinalSpin.RadiansPerSecond);
        }

        double stiff = Departure(1e8);
        Assert.InRange(stiff, 0, 1e-4);
        Assert.InRange(Departure(1e6) / stiff, 50, 200);
    }

    [Fact]
    public void A_length_sized_for_the_weights_sizes_the_weights_again()
    {
        SpringCordDesign byWeight = _hub.SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Tangent);
        SpringCordDesign byLength = _hub.SizeSpringCord(byWeight.CordLength, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Tangent);

        // Slope and spin are met to 1e-7 and 1e-9.
        Assert.Equal(_weight.Kilograms, byLength.WeightMass.Kilograms, 1e-5);
        Assert.Equal(byWeight.SpringRate.NewtonsPerMeter, byLength.SpringRate.NewtonsPerMeter, 1e-3);
        Assert.InRange(Math.Abs(byLength.Sensitivity().ToInitialSpin), 0, 1e-7);
    }

    // Damping stills the swing and takes the energy that the swing had; the insensitivity is as good.
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.3)]
    [InlineData(1)]
    public void Cords_with_damping_can_be_sized_too(double damping)
    {
        SpringCordDesign design = _hub.SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Tangent, damping, 4);
        SpringCordMotion motion = design.Deploy();

        Assert.Equal(damping, design.DampingRatio);
        Assert.Equal(4, design.WeightCount);
        Assert.Equal(1, motion.FinalSpin.RadiansPerSecond, 1e-8);
        Assert.True(motion.AtLetGo.DampedEnergy > Energy.Zero);
        Assert.InRange(Math.Abs(design.Sensitivity().ToInitialSpin), 0, 1e-7);
    }

    [Fact]
    public void After_let_go_the_weights_fly_straight_on_and_nothing_pulls()
    {
        SpringCordMotion motion = _hub.SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Radial).Deploy();
        SpringCordState later = motion.At(motion.LetGoTime + Duration.FromSeconds(2));
        Position<Inertial> from = motion.AtLetGo.WeightPosition(0);

        Assert.Equal(CordPhase.Hinging, motion.LetGoPhase);
        Assert.Equal(CordPhase.LetGo, later.Phase);
        Assert.Equal(Force.Zero, later.CordTension);
        Assert.Null(later.CordRoot(0));
        Assert.NotNull(motion.AtLetGo.CordRoot(1));
        Assert.Equal(motion.HubTurn.Radians + 2, later.HubAngle.Radians, 1e-7);
        Vector<Length, Inertial> flown = later.WeightPosition(0).FromOrigin - from.FromOrigin;
        Assert.Equal(2 * motion.Departures[0].Speed.MetersPerSecond, Math.Sqrt((flown.X.Meters * flown.X.Meters) + (flown.Y.Meters * flown.Y.Meters)), 1e-9);
        Assert.Equal(90, motion.AtLetGo.CordAngle.Degrees, 1e-9);
    }

    [Fact]
    public void A_spin_rate_can_let_go_and_is_then_the_final_spin_whatever_happens()
    {
        SpringCordDesign design = _hub.CarryingOnSprings(
            _weight, Length.FromMeters(6), ForcePerLength.FromNewtonsPerMeter(600), LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(1.5)));

        Assert.Equal(1.5, design.Deploy().FinalSpin.RadiansPerSecond, 1e-12);
        Assert.Equal(default, design.Sensitivity());
    }

    // Own derivation beside SpinSensitivity.
    [Fact]
    public void Rigid_cords_pass_the_ratio_on_and_half_the_inertia()
    {
        SpinSensitivity sensitivity = _hub.SizeCordLength(_weight, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Tangent).Sensitivity();

        Assert.Equal(0.2, sensitivity.ToInitialSpin, 1e-13);
        Assert.Equal(0.48 * 200 / 204, sensitivity.ToSpinInertia, 1e-11);
        Assert.Equal(default, _hub.Carrying(_weight, Length.FromMeters(7), LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(1))).Sensitivity());
    }

    // The first-order insensitivity of complete de-spin needs no spring (common practice), and reversed spin cannot have it: a
    // faster hub would have to be stopped by less.
    [Theory]
    [InlineData(0, "complete de-spin")]
    [InlineData(-1, "same sense")]
    [InlineData(0.004, "a thousandth")]
    [InlineData(5, "not below")]
    public void A_final_spin_that_no_spring_cord_forgives_is_refused(double final, string says)
    {
        var refused = Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(final), LetGo.Tangent));

        Assert.Contains(says, refused.Message);
    }

    [Fact]
    public void Sizing_where_there_is_no_such_design_is_refused_with_the_remedy()
    {
        // Weights ten times heavier than the hub stop it before their springs can tell a fast one from a slow one.
        var refused = Assert.Throws<ComputationRefusedException>(() => _hub.SizeSpringCord(
            Mass.FromKilograms(1000), RotationalSpeed.FromRadiansPerSecond(4.5), LetGo.Radial));

        Assert.Contains("lighter weights", refused.Message);
        Assert.Throws<ComputationRefusedException>(() => _hub.SizeSpringCord(
            _weight, RotationalSpeed.FromRadiansPerSecond(1), LetGo.AtSpin(RotationalSpeed.FromRadiansPerSecond(1))));
    }

    [Theory]
    [InlineData(1e-4)]
    [InlineData(1e-25)]
    public void Weights_that_need_cords_beyond_reason_are_refused_and_not_searched_for_ever(double kilograms)
    {
        var refused = Assert.Throws<ComputationRefusedException>(
            () => _hub.SizeSpringCord(Mass.FromKilograms(kilograms), RotationalSpeed.FromRadiansPerSecond(1), LetGo.Radial));

        Assert.Contains("heavier weights", refused.Message);
    }

    [Fact]
    public void Cords_too_stiff_to_follow_are_refused_with_the_remedy()
    {
        var refused = Assert.Throws<ComputationRefusedException>(() => _hub.CarryingOnSprings(
            _weight, Length.FromMeters(6), ForcePerLength.FromNewtonsPerMeter(1e16), LetGo.Tangent).Deploy());

        Assert.Contains("without stretch", refused.Message);
    }

    // A short cord let go at the other tangent turns back soon after: still the let-go is the first passage, and the spin that
    // of the closed form. The spring of 1e7 N/m gives by a ten-thousandth of the cord.
    [Fact]
    public void A_short_cord_is_seen_to_pass_the_other_tangent()
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(0.2), Length.FromMeters(1), RotationalSpeed.FromRadiansPerSecond(1));
        LetGo last = LetGo.AtCordAngle(Angle.FromDegrees(180));
        DespinMotion rigid = hub.Carrying(Mass.FromKilograms(1), Length.FromMeters(0.01), last).Deploy();
        SpringCordMotion motion = hub.CarryingOnSprings(
            Mass.FromKilograms(1), Length.FromMeters(0.01), ForcePerLength.FromNewtonsPerMeter(1e7), last, 0.05).Deploy();

        Assert.Equal(rigid.FinalSpin.RadiansPerSecond, motion.FinalSpin.RadiansPerSecond, 1e-5);
        Assert.Equal(rigid.LetGoTime.Seconds, motion.LetGoTime.Seconds, 1e-3 * rigid.LetGoTime.Seconds);
    }

    // The integrator's memory is taken when the run is made.
    [Fact]
    public void A_run_allocates_nothing()
    {
        var run = new SpringCordRun(watching: false);
        var proportions = new SpringCordProportions(50, 5.1, 5, 0.02);
        SpringCordRun.Outcome outcome = default;

        Assert.Equal(0, Allocation.Of(() => outcome = run.Run(proportions, new LetGoRule(LetGoKind.CordAngle, 1, 0))));
        Assert.Equal(SpringCordRun.Outcome.LetGo, outcome);
    }

    [Fact]
    public void Cords_that_slacken_are_refused_with_the_remedy()
    {
        // A very soft spring throws the weight back.
        var refused = Assert.Throws<ComputationRefusedException>(() => _hub.CarryingOnSprings(
            _weight, Length.FromMeters(30), ForcePerLength.FromNewtonsPerMeter(250), LetGo.Radial).Deploy());

        Assert.Contains("slacken", refused.Message);
        Assert.Contains("three-dimensional", refused.Message);
    }

    [Fact]
    public void Bad_arguments_are_refused_by_name()
    {
        ForcePerLength rate = ForcePerLength.FromNewtonsPerMeter(300);
        Length length = Length.FromMeters(5);
        Assert.Throws<ArgumentOutOfRangeException>("springRate", () => _hub.CarryingOnSprings(_weight, length, ForcePerLength.Zero, LetGo.Tangent));
        Assert.Throws<ArgumentOutOfRangeException>("springRate", () => _hub.CarryingOnSprings(_weight, length, -rate, LetGo.Tangent));
        Assert.Throws<ArgumentOutOfRangeException>("dampingRatio", () => _hub.CarryingOnSprings(_weight, length, rate, LetGo.Tangent, -0.1));
        Assert.Throws<ArgumentOutOfRangeException>("dampingRatio", () => _hub.SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Tangent, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>("weights", () => _hub.CarryingOnSprings(_weight, length, rate, LetGo.Tangent, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>("weightMass", () => _hub.SizeSpringCord(Mass.Zero, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Tangent));
        Assert.Throws<ArgumentOutOfRangeException>("cordLength", () => _hub.SizeSpringCord(Length.Zero, RotationalSpeed.FromRadiansPerSecond(1), LetGo.Tangent));
        Assert.Throws<ArgumentNullException>("letGo", () => _hub.SizeSpringCord(_weight, RotationalSpeed.FromRadiansPerSecond(1), null!));
        SpringCordMotion motion = _hub.CarryingOnSprings(_weight, length, rate, LetGo.Tangent).Deploy();
        Assert.Throws<ArgumentOutOfRangeException>("time", () => motion.At(Duration.FromSeconds(-1)));
        Assert.Throws<ArgumentOutOfRangeException>("samples", () => motion.History(1));
        Assert.Throws<ArgumentOutOfRangeException>("weight", () => motion.AtLetGo.WeightPosition(2));
    }

    private static SpringCordDesign Sized(double inertia, double ratio, double degrees) => _sized.GetOrAdd((inertia, ratio, degrees), _ => new DespinHub(
        MassMomentOfInertia.FromKilogramSquareMeters(inertia * 0.1), Length.FromMeters(0.5), RotationalSpeed.FromRadiansPerSecond(7))
        .SizeSpringCord(Mass.FromKilograms(0.2), RotationalSpeed.FromRadiansPerSecond(7 * ratio), LetGo.AtCordAngle(Angle.FromDegrees(degrees))));

    private static DespinHub Hub(double inertia, double spin) => new(
        MassMomentOfInertia.FromKilogramSquareMeters(inertia), Length.FromMeters(1), RotationalSpeed.FromRadiansPerSecond(spin));

    private static CordDeployment InThreeDimensions(SpringCordDesign design, double until)
    {
        Cord Cord(double at) => new()
        {
            WeightMass = design.WeightMass,
            Length = design.CordLength,
            HubRadius = design.Hub.Radius,
            StartAngle = Angle.FromDegrees(at),
            Stiffness = design.Stiffness,
            DampingRatio = design.DampingRatio,
            LetGo = design.LetGo,
        };
        return new CordDeployment
        {
            Hub = MassProperties<Body>.Of(
                Mass.FromKilograms(900),
                Position<Body>.Origin,
                InertiaTensor<Body>.Of(
                    MassMomentOfInertia.FromKilogramSquareMeters(150),
                    MassMomentOfInertia.FromKilogramSquareMeters(170),
                    design.Hub.SpinInertia,
                    MassMomentOfInertia.Zero,
                    MassMomentOfInertia.Zero,
                    MassMomentOfInertia.Zero,
                    ProductSign.TensorElement)),
            Cords = [Cord(0), Cord(180)],
            Rates = Vector<RotationalSpeed, Body>.FromSi(0, 0, design.Hub.Spin.RadiansPerSecond),
            Until = Duration.FromSeconds(until),
        };
    }

    [Theory]
    [InlineData(25e-9)]
    [InlineData(1e-5)]
    [InlineData(1e-3)]
    public void Spring_cords_too_short_to_unwind_are_refused_at_once(double length)
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(7.5));
        Bounded.Run(() => Assert.Contains("hub radii", Assert.Throws<ComputationRefusedException>(
            () => hub.SizeSpringCord(Length.FromMeters(length), RotationalSpeed.FromRadiansPerSecond(1.5), LetGo.Tangent)).Message, StringComparison.Ordinal));
    }
}
