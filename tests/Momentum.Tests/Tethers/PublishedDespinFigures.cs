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
        Assert.Equal(DespinPhase.Unwinding, motion.PeakTension.Phase);
        Assert.Equal(35.7071, motion.Release.Speed.MetersPerSecond, 5e-5);
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

    // An answer given in a public forum for 150 kg·m², two weights of 1 kg, R = 1 m, cords of 61 m and 6 rad/s is
    // 0.118 rad/s: momentum shared as if the weights rode on a rigid arm. The kinematics of unwinding leave the body
    // spinning backwards at nearly its old rate (own derivation).
    [Fact]
    public void Very_long_cords_reverse_the_spin_rather_than_stop_it()
    {
        DespinMotion motion = Hub(150, 1, 6).Carrying(Mass.FromKilograms(1), Length.FromMeters(61), LetGo.Tangent).Deploy();

        Assert.Equal(-5.760, motion.FinalSpin.RadiansPerSecond, 5e-4);
    }
}
