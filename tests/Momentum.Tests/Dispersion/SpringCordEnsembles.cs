using Momentum.Dispersion;
using Momentum.Tethers;
using Momentum.Tethers.Springs;
using UnitsNet;

namespace Momentum.Tests.Dispersion;

/// <summary>Ensembles on spring cords are the motion of spring cords, case by case.</summary>
public class SpringCordEnsembles
{
    // A case is integrated to 1e-10, a motion to 1e-13.
    private const double Accuracy = 1e-8;

    private static readonly DespinHub _hub = PlanarEnsembles.Hub;

    private static readonly SpringCordDesign _design = _hub.SizeSpringCord(
        Mass.FromGrams(310), RotationalSpeed.FromRevolutionsPerMinute(20), LetGo.Tangent, dampingRatio: 0.02);

    [Fact]
    public void A_sigma_of_spin_or_inertia_does_what_the_cords_do_on_such_a_hub()
    {
        var uncertainty = new DespinUncertainty
        {
            SpinInertia = Scatter.Normal(_hub.SpinInertia * 0.02),
            InitialSpin = Scatter.Normal(_hub.Spin * 0.03),
        };
        IReadOnlyList<SensitivityBar> bars = new DespinDispersion(_design, uncertainty).Sensitivity();
        RotationalSpeed nominal = _design.Deploy().FinalSpin;

        // Inertia is forgiven by a share only, so its bar is the longer one in spite of its smaller scatter.
        Assert.Equal([UncertainInput.SpinInertia, UncertainInput.InitialSpin], bars.Select(bar => bar.Input));
        AssertClose(Final(new DespinHub(_hub.SpinInertia * 1.02, _hub.Radius, _hub.Spin)) - nominal, bars[0].AtPlusOneSigma);
        AssertClose(Final(new DespinHub(_hub.SpinInertia * 0.98, _hub.Radius, _hub.Spin)) - nominal, bars[0].AtMinusOneSigma);
        AssertClose(Final(new DespinHub(_hub.SpinInertia, _hub.Radius, _hub.Spin * 1.03)) - nominal, bars[1].AtPlusOneSigma);
        AssertClose(Final(new DespinHub(_hub.SpinInertia, _hub.Radius, _hub.Spin * 0.97)) - nominal, bars[1].AtMinusOneSigma);

        static RotationalSpeed Final(DespinHub hub) => _design.On(hub).Deploy().FinalSpin;
    }

    [Fact]
    public void A_spread_of_the_initial_spin_leaves_far_less_than_on_cords_without_stretch()
    {
        var uncertainty = new DespinUncertainty { InitialSpin = Scatter.Normal(_hub.Spin * 0.02) };
        DespinEnsemble springs = new DespinDispersion(_design, uncertainty).Run(2000);
        DespinEnsemble rigid = new DespinDispersion(_design.WithoutStretch(), uncertainty).Run(2000);

        // Nothing is left to first order; to second order some half of (2 %)², against 2 % of r.
        Assert.True(springs.FinalSpin.StandardDeviation < 0.1 * rigid.FinalSpin.StandardDeviation);
        Assert.Equal(0, springs.Failed);
    }

    [Fact]
    public void An_error_of_mass_radius_or_length_is_that_of_cords_of_the_same_stiffness()
    {
        Length longer = _design.CordLength * 1.01;
        var uncertainty = new DespinUncertainty { CordLength = Scatter.Normal(_design.CordLength * 0.01) };
        SensitivityBar bar = Assert.Single(new DespinDispersion(_design, uncertainty).Sensitivity());
        SpringCordMotion motion = _hub.CarryingOnSprings(
            _design.WeightMass, longer, ForcePerLength.FromNewtonsPerMeter(_design.Stiffness.Newtons / longer.Meters), LetGo.Tangent, 0.02).Deploy();

        AssertClose(motion.FinalSpin - _design.Deploy().FinalSpin, bar.AtPlusOneSigma);
    }

    [Fact]
    public void Early_of_the_tangent_lets_go_while_the_cords_still_unwind()
    {
        const double Early = 0.2;
        var uncertainty = new DespinUncertainty { LetGoAngle = Scatter.Normal(Angle.FromRadians(Early)) };
        SensitivityBar bar = Assert.Single(new DespinDispersion(_design, uncertainty).Sensitivity());

        // Where so much of the cord is still wound, found on the motion by halving.
        SpringCordMotion motion = _design.Deploy();
        (double low, double high) = (0, motion.LetGoTime.Seconds);
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            SpringCordState state = motion.At(Duration.FromSeconds(middle));
            bool short_ = (state.FreeLength - state.Stretch).Meters < _design.CordLength.Meters - (Early * _hub.Radius.Meters);
            (low, high) = short_ ? (middle, high) : (low, middle);
        }

        AssertClose(motion.At(Duration.FromSeconds(low)).Spin - motion.FinalSpin, bar.AtMinusOneSigma);
    }

    [Fact]
    public void The_peak_tension_of_an_exact_design_is_that_of_its_motion()
    {
        Sample<Force> tension = new DespinDispersion(_design, new DespinUncertainty()).Run(3).PeakTension;

        Assert.Equal(_design.Deploy().PeakTension.Tension.Newtons, tension.Maximum.Newtons, 1e-6);
        Assert.Equal(tension.Minimum, tension.Maximum);
    }

    [Fact]
    public void Pieces_merge_to_the_same_bits()
    {
        var dispersion = new DespinDispersion(_design, new DespinUncertainty { SpinInertia = Scatter.Normal(_hub.SpinInertia * 0.01) });
        DespinEnsemble merged = dispersion.Run(700, firstCase: 600).Merge(dispersion.Run(600));

        Assert.Equal(dispersion.Run(1300).FinalSpin.SiMean, merged.FinalSpin.SiMean);
        Assert.Equal(dispersion.Run(1300).PeakTension.SiDeviation, merged.PeakTension.SiDeviation);
    }

    [Fact]
    public void Cases_whose_cords_do_not_come_to_let_go_are_counted()
    {
        // Sized with half of the spin left, radially, the cords stretch so much that a faster hub never sees them let go.
        SpringCordDesign brink = _hub.SizeSpringCord(Mass.FromGrams(310), RotationalSpeed.FromRevolutionsPerMinute(40), LetGo.Radial);
        DespinEnsemble ensemble = new DespinDispersion(brink, new DespinUncertainty { InitialSpin = Scatter.Normal(_hub.Spin * 0.3) }).Run(500);

        Assert.True(ensemble.CordsFailed > 0);
        Assert.Equal(500, ensemble.FinalSpin.Count + ensemble.Failed);
    }

    [Fact]
    public void What_spring_cords_do_not_model_is_refused()
    {
        foreach ((DespinUncertainty uncertainty, string names) in new[]
        {
            (new DespinUncertainty { SecondWeightDelay = Scatter.Normal(Duration.FromMilliseconds(1)), HubMass = Mass.FromKilograms(100) }, "SecondWeightDelay"),
            (new DespinUncertainty { CordLineDensity = Scatter.Normal(LinearDensity.FromGramsPerMeter(1)) }, "CordLineDensity"),
        })
        {
            Assert.StartsWith(names, Assert.Throws<ArgumentException>("uncertainty", () => new DespinDispersion(_design, uncertainty)).Message, StringComparison.Ordinal);
        }

        SpringCordDesign atRate = _hub.CarryingOnSprings(
            _design.WeightMass, _design.CordLength, _design.SpringRate, LetGo.AtSpin(RotationalSpeed.FromRevolutionsPerMinute(30)));
        Assert.Throws<ArgumentException>("uncertainty", () => new DespinDispersion(atRate, new DespinUncertainty { LetGoAngle = Scatter.Normal(Angle.FromDegrees(1)) }));
        Assert.Equal(30, new DespinDispersion(atRate, new DespinUncertainty()).Run(1).FinalSpin.Mean.RevolutionsPerMinute, 1e-6);
    }

    [Fact]
    public void A_case_allocates_nothing()
    {
        var one = DespinCase.Of(_design, null);
        PlanarDraw draw = PlanarDraw.Of(_design) with { LetGoMiss = 0.1 };
        Assert.Equal(0, Allocation.Of(() => one.Run(draw, out _, out _)));
    }

    private static void AssertClose(RotationalSpeed expected, RotationalSpeed actual) =>
        Assert.Equal(expected.RadiansPerSecond, actual.RadiansPerSecond, Accuracy);
}
