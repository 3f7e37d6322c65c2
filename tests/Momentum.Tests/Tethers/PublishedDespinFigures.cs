using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tests.Tethers;

/// <summary>
/// The planar de-spin against figures from outside. Tolerances are half a unit of the last digit given, or a little more
/// where that digit was itself rounded from a rounded input.
/// </summary>
public class PublishedDespinFigures
{
    private static DespinHub Hub(double inertia, double radius, double spin) => new(
        MassMomentOfInertia.FromKilogramSquareMeters(inertia), Length.FromMeters(radius), RotationalSpeed.FromRadiansPerSecond(spin));

    private static RotationalSpeed Rate(double value) => RotationalSpeed.FromRadiansPerSecond(value);

    // H. D. Curtis, Orbital Mechanics for Engineering Students, yo-yo problem of the chapter on attitude dynamics. The
    // statement was read; its printed answers agree with these from memory, not read. Digits: own independent computation.
    [Theory]
    [InlineData(1, 5.9020, 0.78693)]
    [InlineData(0, 7.2284, 0.96379)]
    public void Two_three_kilogram_weights_on_a_300_kilogram_square_metre_body(double final, double length, double time)
    {
        DespinDesign design = Hub(300, 1.5, 5).SizeCordLength(Mass.FromKilograms(3), Rate(final), LetGo.Tangent);

        Assert.Equal(length, design.CordLength.Meters, 5e-5);
        Assert.Equal(time, design.Deploy().LetGoTime.Seconds, 5e-6);
    }

    // The worked example of the same chapter: C = 200 kg·m², two weights of 2 kg, R = 1 m, 5 rad/s, from memory, not
    // read; digits from an own independent integration.
    [Fact]
    public void Worked_example_of_complete_despin()
    {
        DespinDesign design = Hub(200, 1, 5).SizeCordLength(Mass.FromKilograms(2), RotationalSpeed.Zero, LetGo.Tangent);
        DespinMotion motion = design.Deploy();

        Assert.Equal(7.14143, design.CordLength.Meters, 5e-6);
        Assert.Equal(1.428286, motion.LetGoTime.Seconds, 5e-7);
        Assert.Equal(motion.LetGoTime.Seconds, motion.UnwindTime.Seconds);
        Assert.Equal(454.754, motion.PeakTension.Tension.Newtons, 5e-4);
        Assert.Equal(0.824621, motion.PeakTension.Time.Seconds, 5e-7);
        Assert.Equal(CordPhase.Unwinding, motion.PeakTension.Phase);
        Assert.Equal(35.7071, motion.Departures[0].Speed.MetersPerSecond, 5e-5);
        Assert.Equal(4.07630, motion.HubTurn.Radians, 5e-6);
        Assert.Equal(0, motion.FinalSpin.RadiansPerSecond, 1e-14);
    }

    [Fact]
    public void Worked_example_let_go_radial()
    {
        DespinDesign design = Hub(200, 1, 5).SizeCordLength(Mass.FromKilograms(2), RotationalSpeed.Zero, LetGo.Radial);

        Assert.Equal(6.14143, design.CordLength.Meters, 5e-6);
        Assert.Equal(0, design.Deploy().FinalSpin.RadiansPerSecond, 1e-13);
    }

    // Own derivation, verified by an independent numerical integration to 1e-9: 300 kg·m², 1.5 m, 6 kg in all, 5 rad/s.
    [Theory]
    [InlineData(5.728416147, 0.763788820, 1.142379663, 0.270822422, 0)]
    [InlineData(4.0, 0.533333333, 2.655677656, 0.258404789, 1.401814184)]
    [InlineData(6.5, 0.866666667, 0.529100529, 0.274627956, -0.526922421)]
    public void Unwinding_then_hinging_to_radial(double length, double unwinding, double spinThen, double hinging, double final)
    {
        DespinMotion motion = Hub(300, 1.5, 5).Carrying(Mass.FromKilograms(3), Length.FromMeters(length), LetGo.Radial).Deploy();

        Assert.Equal(unwinding, motion.UnwindTime.Seconds, 1e-9);
        Assert.Equal(spinThen, motion.At(motion.UnwindTime).Spin.RadiansPerSecond, 2e-9);
        Assert.Equal(hinging, motion.LetGoTime.Seconds - motion.UnwindTime.Seconds, 1e-9);
        Assert.Equal(final, motion.FinalSpin.RadiansPerSecond, 2e-9);
    }

    // The same book, another problem, statement read: C = 60 kg·m², R = 1 m, two weights of 7 kg, tangential, complete
    // de-spin. sqrt(R² + C/m) = sqrt(37/7) m (own derivation).
    [Fact]
    public void Two_seven_kilogram_weights_on_a_60_kilogram_square_metre_body() => Assert.Equal(
        Math.Sqrt(37.0 / 7),
        Hub(60, 1, 2).SizeCordLength(Mass.FromKilograms(7), RotationalSpeed.Zero, LetGo.Tangent).CordLength.Meters,
        1e-14);

    // A laboratory rig of a university course (ASEN 2003): 0.0063 ± 0.0001 kg·m², 0.076 m, two weights of 54 g. One group's
    // code states "Derived radial length: 6.904 to 7.048 in" (public student code of 2021, read).
    [Theory]
    [InlineData(0.0062, 6.904)]
    [InlineData(0.0064, 7.048)]
    public void Radial_cord_of_a_laboratory_rig(double inertia, double inches) => Assert.Equal(
        inches,
        Hub(inertia, 0.076, 13.6).SizeCordLength(Mass.FromGrams(54), RotationalSpeed.Zero, LetGo.Radial).CordLength.Inches,
        5e-4);

    // The rig of an earlier year: 165 lb·in², 0.10795 m, two weights of 0.1247379 kg, cords of 13.6 in let go radially
    // (BenHagenau/ASEN2003, "Lab 5: yoyo despinner", 2017, read). Half a tenth of an inch is the precision of the cord.
    [Fact]
    public void Radial_cord_of_an_earlier_laboratory_rig()
    {
        var hub = new DespinHub(
            MassMomentOfInertia.FromPoundSquareInches(165), Length.FromMeters(0.10795), RotationalSpeed.FromRevolutionsPerMinute(100));

        Assert.Equal(
            13.6, hub.SizeCordLength(Mass.FromKilograms(0.1247379), RotationalSpeed.Zero, LetGo.Radial).CordLength.Inches, 0.05);
    }

    // Measured, not computed: spin of that course's rig while its cords unwind, 0.0063 kg·m², 0.0762 m, two weights of 54 g
    // (i-Abdullah/ASEN2003-Lab-5-Yo-Yo-Despinner, file YoYo_despin of 20 March 2019 and constants of lab5.m, read; every second
    // sample from 0.22 s to 0.36 s). Before release it shows 126.0 rpm. The moment of release is not recorded: it is
    // taken from the sample at 0.30 s. The bearing takes about 4 rpm a second off the rig, the inertia is known to 1.6 %,
    // which is up to 0.8 % of the initial spin, and the reading scatters by half an rpm: 2 % of the initial spin in all.
    [Fact]
    public void Spin_measured_on_a_laboratory_rig_while_unwinding()
    {
        (double Time, double Rpm)[] measured =
        [
            (0.22, 121.634), (0.24, 116.680), (0.26, 110.110), (0.28, 101.174),
            (0.30, 90.407), (0.32, 78.176), (0.34, 65.625), (0.36, 51.855),
        ];
        var hub = new DespinHub(
            MassMomentOfInertia.FromKilogramSquareMeters(0.0063), Length.FromMeters(0.0762), RotationalSpeed.FromRevolutionsPerMinute(126.0));
        DespinMotion motion = hub.SizeCordLength(Mass.FromGrams(54), RotationalSpeed.Zero, LetGo.Tangent).Deploy();
        double sample = hub.Carrying(Mass.FromGrams(54), Length.FromMeters(1), LetGo.AtSpin(RotationalSpeed.FromRevolutionsPerMinute(90.407)))
            .Deploy().LetGoTime.Seconds;

        Assert.All(measured, point => Assert.Equal(
            point.Rpm,
            motion.At(Duration.FromSeconds(point.Time - 0.30 + sample)).Spin.RevolutionsPerMinute,
            0.02 * 126));
    }

    // An answer given in a public forum for 150 kg·m², two weights of 1 kg, R = 1 m, cords of 61 m let go at 80° to the
    // surface and 6 rad/s is 0.118 rad/s (read): momentum shared as if the weights rode on a rigid arm. The kinematics of
    // unwinding leave the body spinning backwards at nearly its old rate (own derivation, and integration).
    [Theory]
    [InlineData(0, -5.760)]
    [InlineData(80, -5.806)]
    public void Very_long_cords_reverse_the_spin_rather_than_stop_it(double degrees, double final)
    {
        DespinDesign design = Hub(150, 1, 6).Carrying(
            Mass.FromKilograms(1), Length.FromMeters(61), LetGo.AtCordAngle(Angle.FromDegrees(degrees)));

        Assert.Equal(final, design.Deploy().FinalSpin.RadiansPerSecond, 5e-4);
        Assert.Equal(final, design.Integrate().FinalSpin.RadiansPerSecond, 5e-4);
    }
}
