using MathNet.Numerics.Distributions;
using Momentum.Dispersion;
using Momentum.Tethers;
using UnitsNet;

namespace Momentum.Tests.Dispersion;

/// <summary>Ensembles of planar de-spins against what can be said of them on paper (own derivations, beside each test).</summary>
public class PlanarEnsembles
{
    /// <summary>The stage of the tests.</summary>
    internal static DespinHub Hub => _hub;

    /// <summary>What is uncertain about it.</summary>
    internal static DespinUncertainty Everything => _everything;

    private static readonly DespinHub _hub = new(
        MassMomentOfInertia.FromKilogramSquareMeters(18.4), Length.FromMillimeters(430), RotationalSpeed.FromRadiansPerSecond(72 * Math.PI / 30));

    private static readonly DespinDesign _tangential = _hub.SizeCordLength(Mass.FromGrams(310), RotationalSpeed.Zero, LetGo.Tangent);

    private static readonly DespinDesign _radial = _hub.SizeCordLength(Mass.FromGrams(310), RotationalSpeed.Zero, LetGo.Radial);

    private static readonly DespinUncertainty _everything = new()
    {
        SpinInertia = Scatter.Normal(_hub.SpinInertia * 0.01),
        InitialSpin = Scatter.Normal(_hub.Spin * 0.02),
        HubRadius = Scatter.Uniform(Length.FromMillimeters(0.5)),
        WeightMass = Scatter.Normal(Mass.FromGrams(1)),
        CordLength = Scatter.Normal(Length.FromMillimeters(4)),
        LetGoAngle = Scatter.Normal(Angle.FromDegrees(3)),
        SecondWeightDelay = Scatter.Normal(Duration.FromMilliseconds(2)),
        HubMass = Mass.FromKilograms(182),
    };

    [Fact]
    public void A_run_in_pieces_merges_to_the_same_bits_in_any_order()
    {
        var dispersion = new DespinDispersion(_radial, _everything);
        DespinEnsemble whole = dispersion.Run(3000, seed: 7);
        DespinEnsemble merged = dispersion.Run(1300, seed: 7, firstCase: 1700).Merge(dispersion.Run(1700, seed: 7));

        Assert.Equal(whole.Cases, merged.Cases);
        Assert.Equal(whole.FinalSpin.SiMean, merged.FinalSpin.SiMean);
        Assert.Equal(whole.FinalSpin.SiDeviation, merged.FinalSpin.SiDeviation);
        Assert.Equal(whole.FinalSpin.Quantile(0.99865), merged.FinalSpin.Quantile(0.99865));
        Assert.Equal(whole.PeakTension.Histogram(17), merged.PeakTension.Histogram(17));
    }

    [Fact]
    public void The_same_call_gives_the_same_bits_and_another_seed_does_not()
    {
        var dispersion = new DespinDispersion(_tangential, _everything);

        Assert.Equal(dispersion.Run(2000).FinalSpin.SiMean, dispersion.Run(2000).FinalSpin.SiMean);
        Assert.NotEqual(dispersion.Run(2000).FinalSpin.SiMean, dispersion.Run(2000, seed: 2).FinalSpin.SiMean);
    }

    // At zero spin and the tangent, dr/dlnK = 1/2 with K = 1 + I/(m R²), and dr/dlnL = -1: a slope, so to second order in 1 %.
    [Fact]
    public void Sensitivity_bars_at_the_tangent_are_the_closed_form_slopes()
    {
        IReadOnlyList<SensitivityBar> bars = new DespinDispersion(_tangential, new DespinUncertainty
        {
            SpinInertia = Scatter.Normal(_hub.SpinInertia * 0.001),
            CordLength = Scatter.Uniform(_tangential.CordLength * 0.001 * Math.Sqrt(3)),
            InitialSpin = Scatter.Normal(_hub.Spin * 0.02),
        }).Sensitivity();

        double w = _hub.Spin.RadiansPerSecond;
        double share = 18.4 / (18.4 + (0.62 * 0.43 * 0.43));
        Assert.Equal([UncertainInput.CordLength, UncertainInput.SpinInertia, UncertainInput.InitialSpin], bars.Select(bar => bar.Input));
        Assert.Equal(-0.001 * w, bars[0].AtPlusOneSigma.RadiansPerSecond, 2e-6 * w);
        Assert.Equal(0.001 * w, bars[0].AtMinusOneSigma.RadiansPerSecond, 2e-6 * w);
        Assert.Equal(0.0005 * share * w, bars[1].AtPlusOneSigma.RadiansPerSecond, 1e-6 * w);
        Assert.Equal(0.001 * w, bars[0].StandardDeviation.RadiansPerSecond, 5e-6 * w);

        // Complete de-spin does not depend on the initial spin (common practice; own derivation).
        Assert.Equal(0, bars[2].StandardDeviation.RadiansPerSecond, 1e-14 * w);
        Assert.Equal(1, bars.Sum(bar => bar.VarianceShare), 1e-12);
        Assert.Equal(4 / (4 + (share * share)), bars[0].VarianceShare, 0.005);
    }

    [Fact]
    public void Small_independent_scatters_add_in_squares()
    {
        var dispersion = new DespinDispersion(_tangential, _everything with
        {
            LetGoAngle = default,
            SecondWeightDelay = default,
        });
        double alone = Math.Sqrt(dispersion.Sensitivity().Sum(bar => Math.Pow(bar.StandardDeviation.RadiansPerSecond, 2)));

        // The standard error of a standard deviation is 1/sqrt(2 n), 0.5 % here; four of it, and the levels' own 0.2 %.
        Assert.Equal(1, dispersion.Run(20_000).FinalSpin.SiDeviation / alone, 0.022);
    }

    // Final spin is k d² for a small angle error d, so that with d normal it is k sigma² times chi square of one degree of
    // freedom: never negative, mean k sigma², standard deviation sqrt(2) times that, median 0.4549 times it.
    [Fact]
    public void Angle_error_about_radial_only_ever_leaves_spin_of_the_old_sense()
    {
        Sample<RotationalSpeed> spin = new DespinDispersion(
            _radial, new DespinUncertainty { LetGoAngle = Scatter.Normal(Angle.FromDegrees(1)) }).Run(40_000).FinalSpin;

        Assert.True(spin.Minimum.RadiansPerSecond > -1e-12);
        Assert.Equal(Math.Sqrt(2), spin.SiDeviation / spin.SiMean, 0.04);
        Assert.Equal(0.4549, spin.Quantile(0.5).RadiansPerSecond / spin.SiMean, 0.015);
    }

    [Fact]
    public void Sensitivity_sees_an_effect_whose_slope_is_zero()
    {
        SensitivityBar bar = Assert.Single(new DespinDispersion(
            _radial, new DespinUncertainty { LetGoAngle = Scatter.Normal(Angle.FromDegrees(4)) }).Sensitivity());

        Assert.Equal(bar.AtPlusOneSigma.RadiansPerSecond, bar.AtMinusOneSigma.RadiansPerSecond, 1e-12);
        Assert.True(bar.StandardDeviation > RotationalSpeed.Zero);
    }

    // A tangential let-go early by d still unwinds by d: final spin is that of the closed form with L shorter by R d.
    [Fact]
    public void Early_of_the_tangent_is_a_cord_not_fully_unwound()
    {
        SensitivityBar bar = Assert.Single(new DespinDispersion(
            _tangential, new DespinUncertainty { LetGoAngle = Scatter.Normal(Angle.FromDegrees(5)) }).Sensitivity());

        double a = 18.4 + (0.62 * 0.43 * 0.43);
        double length = _tangential.CordLength.Meters - (0.43 * 5 * Math.PI / 180);
        double b = 0.62 * length * length;
        Assert.Equal(_hub.Spin.RadiansPerSecond * (a - b) / (a + b), bar.AtMinusOneSigma.RadiansPerSecond, 1e-12);
    }

    // The bars for a delay and the single late case are computed by the same rule: sigma late changes the spin so much.
    [Fact]
    public void A_late_weight_in_an_ensemble_is_the_late_weight_of_the_single_case()
    {
        SensitivityBar bar = Assert.Single(new DespinDispersion(
            _tangential,
            new DespinUncertainty
            {
                SecondWeightDelay = Scatter.Normal(Duration.FromMilliseconds(8)),
                HubMass = Mass.FromKilograms(182),
            }).Sensitivity());
        LateDeparture late = _tangential.Deploy().WithOneWeightLate(Duration.FromMilliseconds(8), Mass.FromKilograms(182));

        Assert.Equal(late.FinalSpin.RadiansPerSecond, bar.AtPlusOneSigma.RadiansPerSecond, 1e-10);
        Assert.Equal(bar.AtPlusOneSigma, bar.AtMinusOneSigma);
    }

    [Fact]
    public void Quantiles_of_a_nearly_linear_case_are_those_of_the_normal_distribution()
    {
        Sample<RotationalSpeed> spin = new DespinDispersion(
            _tangential, new DespinUncertainty { CordLength = Scatter.Normal(_tangential.CordLength * 1e-4) }).Run(50_000).FinalSpin;

        // The standard error of the 0.99865 quantile is sqrt(p (1 - p)/n)/density = 0.037 sigma; four of it.
        Assert.Equal(3, (spin.Quantile(0.99865).RadiansPerSecond - spin.SiMean) / spin.SiDeviation, 0.15);
        Assert.Equal(-3, (spin.Quantile(0.00135).RadiansPerSecond - spin.SiMean) / spin.SiDeviation, 0.15);
        Assert.Equal(0, (spin.Quantile(0.5).RadiansPerSecond - spin.SiMean) / spin.SiDeviation, 0.025);

        // Within two sigma: 95.45 %.
        Probability within = new DespinDispersion(
            _tangential, new DespinUncertainty { CordLength = Scatter.Normal(_tangential.CordLength * 1e-4) }).Run(50_000)
            .ProbabilityThatFinalSpinIsWithin(_hub.Spin * 2e-4, 0.9999);
        Assert.InRange(0.9545, within.Lower, within.Upper);
    }

    [Fact]
    public void Histogram_counts_every_value_once()
    {
        Sample<Force> tension = new DespinDispersion(_tangential, _everything).Run(5000).PeakTension;
        IReadOnlyList<HistogramBin<Force>> bins = tension.Histogram(40);

        Assert.Equal(5000, bins.Sum(bin => bin.Count));
        Assert.Equal(tension.Minimum, bins[0].From);
        Assert.Equal(tension.Maximum, bins[^1].To);
        Assert.All(bins.Zip(bins.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
    }

    [Fact]
    public void No_scatter_gives_the_nominal_case_every_time()
    {
        DespinEnsemble ensemble = new DespinDispersion(_tangential, new DespinUncertainty()).Run(10);
        DespinMotion nominal = _tangential.Deploy();

        Assert.Equal(0, ensemble.FinalSpin.SiDeviation);
        Assert.Equal(nominal.FinalSpin.RadiansPerSecond, ensemble.FinalSpin.SiMean, 1e-15);
        Assert.Equal(nominal.PeakTension.Tension.Newtons, ensemble.PeakTension.SiMean, 1e-11);
        Assert.Equal(10, Assert.Single(ensemble.FinalSpin.Histogram(5)).Count);
        Assert.Empty(new DespinDispersion(_tangential, new DespinUncertainty()).Sensitivity());
    }

    [Fact]
    public void Cases_that_wrap_back_or_never_let_go_or_are_not_physical_are_counted_and_fail_the_requirement()
    {
        DespinDesign late = _hub.Carrying(Mass.FromGrams(310), _radial.CordLength, LetGo.AtCordAngle(Angle.FromDegrees(170)));
        DespinEnsemble wrapped = new DespinDispersion(late, new DespinUncertainty { LetGoAngle = Scatter.Normal(Angle.FromDegrees(10)) }).Run(2000);

        // Normal beyond one sigma: 15.87 %, with a standard error of 0.8 %.
        Assert.InRange(wrapped.WrappedBack, 2000 * 0.125, 2000 * 0.192);
        Assert.Equal(2000, wrapped.Cases);
        Assert.Equal(1 - (wrapped.WrappedBack / 2000.0), wrapped.ProbabilityThatFinalSpinIsWithin(_hub.Spin).Estimate, 1e-12);

        DespinDesign atRate = _hub.Carrying(Mass.FromGrams(310), _radial.CordLength, LetGo.AtSpin(_hub.Spin * 1e-4));
        DespinEnsemble stuck = new DespinDispersion(atRate, new DespinUncertainty { SpinInertia = Scatter.Normal(_hub.SpinInertia * 0.05) }).Run(1000);
        Assert.InRange(stuck.RateNotReached, 400, 600);

        DespinDesign heavy = _hub.Carrying(Mass.FromGrams(310), _radial.CordLength, LetGo.Radial, LinearDensity.FromGramsPerMeter(1));
        DespinEnsemble wide = new DespinDispersion(
            heavy, new DespinUncertainty { CordLineDensity = Scatter.Uniform(LinearDensity.FromGramsPerMeter(2)) }).Run(1000);
        Assert.InRange(wide.NotPhysical, 190, 310);
    }

    [Fact]
    public void An_ensemble_without_a_single_result_is_refused()
    {
        DespinDesign never = _hub.Carrying(Mass.FromGrams(310), Length.FromMeters(1), LetGo.AtSpin(RotationalSpeed.Zero));

        Assert.Contains("never met", Assert.Throws<ComputationRefusedException>(
            () => new DespinDispersion(never, new DespinUncertainty()).Run(10)).Message);
    }

    // By its definition: at either end of the interval, a count as extreme has probability (1 - confidence)/2.
    [Theory]
    [InlineData(10, 100)]
    [InlineData(19_940, 20_000)]
    [InlineData(1, 20_000)]
    public void Confidence_interval_leaves_half_the_rest_on_each_side(int successes, int cases)
    {
        Probability probability = Probability.Of(successes, cases, 0.95);

        Assert.Equal(0.025, 1 - Binomial.CDF(probability.Lower, cases, successes - 1), 1e-8);
        Assert.Equal(0.025, Binomial.CDF(probability.Upper, cases, successes), 1e-8);
    }

    // "Rule of three": nothing seen in n cases bounds the rate by 3/n at 95 % one-sided (common practice), that is at 90 % two-sided.
    [Fact]
    public void Nothing_seen_bounds_the_rate_by_three_over_the_number_of_cases()
    {
        Assert.Equal(3.0 / 10_000, Probability.Of(0, 10_000, 0.9).Upper, 1e-6);
        Assert.Equal(1 - (3.0 / 10_000), Probability.Of(10_000, 10_000, 0.9).Lower, 1e-6);
        Assert.Equal(0, Probability.Of(0, 10_000, 0.9).Lower);
    }

    [Fact]
    public void A_case_allocates_nothing()
    {
        var one = DespinCase.Of(_tangential, 182);
        PlanarDraw draw = PlanarDraw.Of(_tangential) with { LateBy = 0.002, LetGoMiss = 0.1 };
        Assert.Equal(0, Allocation.Of(() => one.Run(draw, out _, out _)));
    }

    [Fact]
    public void Bad_arguments_are_refused_by_name()
    {
        Assert.Equal("uncertainty", Assert.Throws<ArgumentException>(() => new DespinDispersion(
            _radial, new DespinUncertainty { SecondWeightDelay = Scatter.Normal(Duration.FromMilliseconds(1)) })).ParamName);
        Assert.Equal("sigma", Assert.Throws<ArgumentOutOfRangeException>(() => Scatter.Normal(Length.FromMeters(-1))).ParamName);
        Assert.Equal("limit", Assert.Throws<ArgumentOutOfRangeException>(() => Scatter.Uniform(Mass.FromKilograms(-1))).ParamName);
        var dispersion = new DespinDispersion(_radial, _everything);
        Assert.Equal("cases", Assert.Throws<ArgumentOutOfRangeException>(() => dispersion.Run(0)).ParamName);
        Assert.Equal("firstCase", Assert.Throws<ArgumentOutOfRangeException>(() => dispersion.Run(1, firstCase: -1)).ParamName);
        DespinEnsemble ensemble = dispersion.Run(10);
        Assert.Equal("limit", Assert.Throws<ArgumentOutOfRangeException>(() => ensemble.ProbabilityThatFinalSpinIsWithin(RotationalSpeed.Zero)).ParamName);
        Assert.Equal("confidence", Assert.Throws<ArgumentOutOfRangeException>(() => ensemble.ProbabilityThatFinalSpinIsWithin(_hub.Spin, 1)).ParamName);
        Assert.Equal("share", Assert.Throws<ArgumentOutOfRangeException>(() => ensemble.FinalSpin.Quantile(1.5)).ParamName);
        Assert.Equal("bins", Assert.Throws<ArgumentOutOfRangeException>(() => ensemble.FinalSpin.Histogram(0)).ParamName);
        Assert.Throws<ArgumentException>(() => ensemble.Merge(new DespinDispersion(_tangential, _everything).Run(10)));
    }
}
