using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Inertia;
using Momentum.Quantities;
using Momentum.Tests.Deployment;
using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Dispersion;

/// <summary>Ensembles of deployments in three dimensions against the planar ones, the single run, and what can be said on paper.</summary>
public class DeploymentEnsembles
{
    // The stage of the planar tests: 18.4 kg·m², 430 mm, 72 rpm, 2 × 310 g.
    private static readonly DespinHub _hub = PlanarEnsembles.Hub;

    private static readonly DespinUncertainty _everything = PlanarEnsembles.Everything with { Nutation = Scatter.Normal(Angle.FromDegrees(0.2)) };

    // What steps of 1e-6 may leave, of the initial spin; ten times what is seen.
    private const double SpinError = 1e-6;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void In_the_plane_every_case_is_the_planar_case_with_the_same_draws(bool tangent)
    {
        DespinDesign design = _hub.SizeCordLength(Mass.FromGrams(310), RotationalSpeed.Zero, tangent ? LetGo.Tangent : LetGo.Radial);
        DespinUncertainty level = _everything with { Nutation = default };
        var planar = new DespinDispersion(design, level);
        var whole = new DeploymentDispersion(Planar(design), level);

        for (int number = 0; number < 60; number++)
        {
            DespinEnsemble expected = planar.Run(1, seed: 5, firstCase: number);
            DeploymentEnsemble found = whole.Run(1, seed: 5, firstCase: number);

            Assert.Equal(expected.FinalSpin.SiMean, found.FinalSpin.SiMean, SpinError * 7.5);

            Assert.InRange(found.TransverseRate.SiMean, 0, 1e-12);

            // The planar figure ends with the first let-go. Late of it only one cord pulls, harder or not.
            double peak = expected.PeakTension.SiMean;
            Assert.InRange(found.PeakTension.SiMean, peak * (1 - 1e-4), double.PositiveInfinity);
        }

        DespinUncertainty together = level with { SecondWeightDelay = default };
        DespinEnsemble planarTension = new DespinDispersion(design, together).Run(100);
        DeploymentEnsemble wholeTension = new DeploymentDispersion(Planar(design), together).Run(100);
        foreach (double share in (ReadOnlySpan<double>)[0, 0.25, 0.5, 0.75, 1])
        {
            Assert.Equal(
                1, wholeTension.PeakTension.Quantile(share).Newtons / planarTension.PeakTension.Quantile(share).Newtons, 1e-4);
        }
    }

    [Fact]
    public void Cases_come_out_in_the_order_of_their_numbers_with_the_same_bits_on_one_thread_and_on_many()
    {
        DeploymentDispersion dispersion = new(Real(c => c), _everything);
        var cases = new DeploymentCases(dispersion.Deployment, number => dispersion.Case(number, 3));

        DeployedCase[] many = [.. cases.Run(5, 40)];
        DeployedCase[] one = [.. cases.Run(5, 40, threads: 1)];
        DeployedCase alone = cases.Run(cases.Draw(17), 17);

        Assert.Equal(many, one);
        Assert.Equal(Enumerable.Range(5, 40).Select(n => (long)n), many.Select(c => c.Number));
        Assert.Equal(many[12], alone);
    }

    [Fact]
    public void Cases_that_were_given_out_stand_when_the_run_is_stopped()
    {
        DeploymentDispersion dispersion = new(Real(c => c), _everything);
        var cases = new DeploymentCases(dispersion.Deployment, number => dispersion.Case(number, 3));
        using var stop = new CancellationTokenSource();
        List<DeployedCase> done = [];

        Assert.ThrowsAny<OperationCanceledException>(() =>
        {
            foreach (DeployedCase one in cases.Run(0, 100_000, cancellation: stop.Token))
            {
                done.Add(one);
                stop.Cancel();
            }
        });

        Assert.NotEmpty(done);
        Assert.Equal(done[0], cases.Run(cases.Draw(0)));
    }

    [Fact]
    public void A_breaking_load_is_held_against_the_tension_of_its_own_cord()
    {
        CordDeployment nominal = Planar(_hub.SizeCordLength(Mass.FromGrams(310), RotationalSpeed.Zero, LetGo.Radial));
        Cord strong = nominal.Cords[0] with { BreakingLoad = Force.FromKilonewtons(3) };
        Cord weak = nominal.Cords[1] with { BreakingLoad = Force.FromKilonewtons(1) };
        var cases = new DeploymentCases(nominal, _ => nominal);

        DeployedCase found = cases.Run(nominal with { Cords = [strong, weak] });

        Assert.Equal(1000 / found.PeakTension.Newtons, found.BreakingLoadRatio!.Value, 1e-6 * found.BreakingLoadRatio.Value);
        Assert.Null(cases.Run(nominal).BreakingLoadRatio);
    }

    [Fact]
    public void A_deck_that_is_drawn_elsewhere_is_touched_elsewhere()
    {
        CordDeployment nominal = Real(c => c).Wobbling(Angle.FromDegrees(8), Angle.Zero);
        Length plane = nominal.Cords[0].PlaneHeight;
        Length edge = nominal.Cords[0].HubRadius + Length.FromMeters(0.3);
        CordDeployment near = nominal with { Deck = new DeckEdge(edge, plane + Length.FromMillimeters(1)) };
        CordDeployment far = nominal with { Deck = new DeckEdge(edge, plane + Length.FromMeters(5)) };
        var cases = new DeploymentCases(far, _ => far);

        Assert.True(cases.Run(near).TouchedDeck);
        Assert.False(cases.Run(far).TouchedDeck);
    }

    [Fact]
    public void Pieces_that_were_set_up_apart_merge_and_those_that_overlap_or_differ_are_refused_with_the_reason()
    {
        DeploymentEnsemble one = new DeploymentDispersion(Real(c => c), _everything).Run(6, seed: 7);
        DeploymentEnsemble other = new DeploymentDispersion(Real(c => c), _everything).Run(6, seed: 7, firstCase: 6);

        Assert.Equal(12, one.Merge(other).Cases);
        Assert.Contains("cases 0 to 5", Assert.Throws<ArgumentException>(() => one.Merge(one)).Message, StringComparison.Ordinal);
        Assert.Contains(
            "the cords differ",
            Assert.Throws<ArgumentException>(() => one.Merge(new DeploymentDispersion(Real(c => c with { Length = 1.001 * c.Length }), _everything).Run(1, firstCase: 20))).Message,
            StringComparison.Ordinal);
        Assert.Contains(
            "what is uncertain differs",
            Assert.Throws<ArgumentException>(() => one.Merge(new DeploymentDispersion(Real(c => c), _everything with { Nutation = default }).Run(1, firstCase: 20))).Message,
            StringComparison.Ordinal);
    }

    public static TheoryData<string, CordDeployment> Kinds => new()
    {
        { "rigid", Real(c => c) },
        { "elastic", Real(c => c with { Stiffness = Force.FromKilonewtons(90), DampingRatio = 0.02 }) },
        { "heavy", Real(c => c with { LineDensity = LinearDensity.FromGramsPerMeter(5), Segments = 3 }) },
        { "both", Real(c => c with { LineDensity = LinearDensity.FromGramsPerMeter(5), Segments = 2, Stiffness = Force.FromKilonewtons(90), DampingRatio = 0.02 }) },
    };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_case_of_an_ensemble_is_its_deployment_run_alone_with_fine_steps(string kind, CordDeployment deployment)
    {
        Assert.NotEmpty(kind);
        var dispersion = new DeploymentDispersion(deployment, _everything);
        for (int number = 0; number < 4; number++)
        {
            DeploymentEnsemble found = dispersion.Run(1, firstCase: number);
            DeploymentResult alone = dispersion.Case(number).Deploy();
            Duration gone = alone.Events.Last(e => e.Kind == DeploymentEventKind.LetGo).Time;

            Assert.Equal(alone.At(gone).Spin.RadiansPerSecond, found.FinalSpin.SiMean, SpinError * 7.5);
            Assert.Equal(alone.After.LargestSpin.RadiansPerSecond, found.LargestSpin.SiMean, SpinError * 7.5);
            Assert.Equal(alone.After.LargestTransverseRate.RadiansPerSecond, found.TransverseRate.SiMean, SpinError * 7.5);

            // Angles of a momentum that is nearly gone: a hundredth of the first.
            Assert.Equal(alone.After.LargestNutation.Radians, found.Nutation.SiMean, 100 * SpinError);
            Assert.Equal(alone.After.MomentumTilt.Radians, found.MomentumTilt.SiMean, 100 * SpinError);

            // The tension of a cord that vibrates is looked at some twenty times a period, with parabolas between the looks.
            Assert.Equal(1, found.PeakTension.SiMean / alone.PeakTensions.Max(p => p.Tension.Newtons), 1e-3);
        }
    }

    [Fact]
    public void One_run_gives_the_bits_of_its_cases_run_one_by_one_and_of_its_pieces_merged_in_any_order()
    {
        // Alone, each case has a mechanism of its own and no thread beside it.
        var dispersion = new DeploymentDispersion(Real(c => c with { Stiffness = Force.FromKilonewtons(90), DampingRatio = 0.02 }), _everything);
        DeploymentEnsemble whole = dispersion.Run(40, seed: 7);
        DeploymentEnsemble pieces = dispersion.Run(17, seed: 7, firstCase: 23).Merge(dispersion.Run(23, seed: 7));
        DeploymentEnsemble single = Enumerable.Range(0, 40).Reverse()
            .Select(number => dispersion.Run(1, seed: 7, firstCase: number)).Aggregate((all, one) => all.Merge(one));

        foreach (DeploymentEnsemble other in (ReadOnlySpan<DeploymentEnsemble>)[pieces, single])
        {
            Assert.Equal(whole.Cases, other.Cases);
            Assert.Equal(whole.FinalSpin.SiMean, other.FinalSpin.SiMean);
            Assert.Equal(whole.LargestSpin.SiDeviation, other.LargestSpin.SiDeviation);
            Assert.Equal(whole.TransverseRate.Quantile(0.3), other.TransverseRate.Quantile(0.3));
            Assert.Equal(whole.Nutation.SiMean, other.Nutation.SiMean);
            Assert.Equal(whole.PeakTension.Histogram(7), other.PeakTension.Histogram(7));
            Assert.Equal(whole.MomentumTilt.SiDeviation, other.MomentumTilt.SiDeviation);
        }

        Assert.NotEqual(whole.FinalSpin.SiMean, dispersion.Run(40, seed: 8).FinalSpin.SiMean);
        Assert.Throws<ArgumentException>(() => whole.Merge(new DeploymentDispersion(Real(c => c), _everything).Run(1)));
    }

    [Fact]
    public void Wobble_starts_on_every_side_with_the_same_chance_and_the_stated_size_and_either_cord_may_be_the_late_one()
    {
        const int Cases = 2000;
        var dispersion = new DeploymentDispersion(
            Real(c => c), new DespinUncertainty { SecondWeightDelay = Scatter.Normal(Duration.FromMilliseconds(2)) });
        double x = 0;
        double y = 0;
        int first = 0;
        for (int number = 0; number < Cases; number++)
        {
            CordDeployment drawn = dispersion.Case(number);
            Vector<AngularMomentum, Body> momentum = drawn.Hub.Inertia * drawn.Rates;
            double across = Math.Sqrt(Math.Pow(momentum.SiX, 2) + Math.Pow(momentum.SiY, 2));
            x += momentum.SiX / across;
            y += momentum.SiY / across;
            first += drawn.Cords[0].LetGo == LetGo.Radial ? 0 : 1;
            Assert.NotEqual(drawn.Cords[0].LetGo, drawn.Cords[1].LetGo);

            // The stated half-angle is that of hub and weights together; those add a per cent to the moments.
            Assert.Equal(0.01, Math.Atan2(across, momentum.SiZ), 3e-4);
        }

        // Four standard errors of the mean of a cosine, 1/sqrt(2 n), and of a fair coin.
        Assert.InRange(Math.Sqrt((x * x) + (y * y)) / Cases, 0, 4 / Math.Sqrt(2 * Cases));
        Assert.InRange((double)first / Cases, 0.5 - (2 / Math.Sqrt(Cases)), 0.5 + (2 / Math.Sqrt(Cases)));
    }

    // A weight of next to nothing takes next to nothing away: nutation, rates and momentum stay what they were.
    [Fact]
    public void Weights_of_a_milligram_leave_a_symmetric_hub_its_wobble()
    {
        CordDeployment light = (LawsOfDeployment.With(c => c with { WeightMass = Mass.FromMilligrams(1) }) with
        {
            Hub = MassProperties<Body>.Of(
                Mass.FromKilograms(182),
                Position<Body>.Of(Length.Zero, Length.Zero, Length.FromMillimeters(427)),
                InertiaTensor<Body>.Diagonal(Inertia(31.5), Inertia(31.5), Inertia(18.4))),
        }).Wobbling(Angle.FromDegrees(2), Angle.Zero);
        DeploymentEnsemble found = new DeploymentDispersion(light, new DespinUncertainty()).Run(20);

        // 1e-6 kg at 2.33 m against 18.4 kg·m²: 3e-7, times the few that a lever of the geometry makes of it.
        Assert.Equal(2, found.Nutation.Minimum.Degrees, 1e-5);
        Assert.Equal(2, found.Nutation.Maximum.Degrees, 1e-5);
        Assert.Equal(7.5, found.FinalSpin.SiMean, 1e-5);
        Assert.Equal(7.5 * 18.4 / 31.5 * Math.Tan(Math.PI / 90), found.TransverseRate.SiMean, 1e-5);
        Assert.InRange(found.MomentumTilt.Maximum.Degrees, 0, 1e-5);
    }

    [Fact]
    public void Twice_a_small_wobble_leaves_twice_the_transverse_rate_and_a_stage_that_is_stopped_has_nothing_but_nutation()
    {
        DespinDesign design = _hub.SizeCordLength(Mass.FromGrams(310), RotationalSpeed.Zero, LetGo.Radial);
        DeploymentEnsemble Of(double degrees) => new DeploymentDispersion(
            Planar(design).Wobbling(Angle.FromDegrees(degrees), Angle.Zero), new DespinUncertainty()).Run(40);

        DeploymentEnsemble small = Of(0.02);
        DeploymentEnsemble twice = Of(0.04);
        foreach (double share in (ReadOnlySpan<double>)[0.1, 0.5, 0.9])
        {
            Assert.Equal(2, twice.TransverseRate.Quantile(share) / small.TransverseRate.Quantile(share), 1e-3);
        }

        // No spin is left but what the wobble makes of it, in second order: the momentum lies across the axis.
        Assert.True(small.Nutation.Minimum.Degrees > 80);
        Assert.Equal(0, small.FinalSpin.SiMean, 1e-6);
    }

    [Fact]
    public void Every_way_to_fail_is_counted_and_fails_the_requirement()
    {
        CordDeployment late = LawsOfDeployment.With(c => c with { LetGo = LetGo.AtCordAngle(Angle.FromDegrees(170)) });
        DeploymentEnsemble wrapped = new DeploymentDispersion(
            late, new DespinUncertainty { LetGoAngle = Scatter.Normal(Angle.FromDegrees(10)) }).Run(400);

        // Normal beyond one sigma: 15.87 %, with a standard error of 1.8 %.
        Assert.InRange(wrapped.WrappedBack, 400 * 0.09, 400 * 0.23);
        Assert.Equal(400, wrapped.Cases);
        Assert.Equal(wrapped.WrappedBack, wrapped.Failed);
        Probability within = wrapped.ProbabilityThatSpinIsWithin(RotationalSpeed.FromRadiansPerSecond(100));
        Assert.Equal(1 - (wrapped.WrappedBack / 400.0), within.Estimate, 1e-12);
        Assert.Equal(within, wrapped.ProbabilityThatNutationIsBelow(Angle.FromDegrees(91)));
        Assert.Equal(within, wrapped.ProbabilityThatTransverseRateIsBelow(RotationalSpeed.FromRadiansPerSecond(100)));
        Assert.Equal(within, wrapped.ProbabilityThatPeakTensionIsBelow(Force.FromKilonewtons(10)));

        // Moments 12, 12 and 23.9: half a sigma more about the axis and no body has them. 30.9 %, standard error 2.3 %.
        CordDeployment flat = LawsOfDeployment.Planar with
        {
            Hub = MassProperties<Body>.Of(
                Mass.FromKilograms(182), Position<Body>.Origin, InertiaTensor<Body>.Diagonal(Inertia(12), Inertia(12), Inertia(23.9))),
        };
        DeploymentEnsemble wide = new DeploymentDispersion(flat, new DespinUncertainty { SpinInertia = Scatter.Normal(Inertia(0.2)) }).Run(400);
        Assert.InRange(wide.NotPhysical, 400 * 0.21, 400 * 0.41);

        // Ends before half of the cases have come to the radius.
        DeploymentResult nominal = LawsOfDeployment.Planar.Deploy();
        Duration gone = nominal.Events.First(e => e.Kind == DeploymentEventKind.LetGo).Time;
        DeploymentEnsemble cut = new DeploymentDispersion(
            LawsOfDeployment.Planar with { Until = gone },
            new DespinUncertainty { InitialSpin = Scatter.Normal(RotationalSpeed.FromRadiansPerSecond(0.1)) }).Run(400);
        Assert.InRange(cut.NotLetGo, 400 * 0.4, 400 * 0.6);

        Assert.Contains("still on at the end", Assert.Throws<ComputationRefusedException>(
            () => new DeploymentDispersion(LawsOfDeployment.With(c => c with { ReleasedAt = null }), new DespinUncertainty()).Run(3)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Bad_arguments_are_refused_by_name()
    {
        Assert.Equal("uncertainty", Assert.Throws<ArgumentException>(() => new DeploymentDispersion(
            LawsOfDeployment.With(c => c with { LetGo = LetGo.AtSpin(RotationalSpeed.Zero) }), _everything)).ParamName);
        Assert.Equal("Cords[0].WeightMass", Assert.ThrowsAny<ArgumentException>(() => new DeploymentDispersion(
            LawsOfDeployment.With(c => c with { WeightMass = Mass.Zero }), _everything)).ParamName);
        var dispersion = new DeploymentDispersion(LawsOfDeployment.Planar, new DespinUncertainty());
        Assert.Equal("cases", Assert.Throws<ArgumentOutOfRangeException>(() => dispersion.Run(0)).ParamName);
        Assert.Equal("firstCase", Assert.Throws<ArgumentOutOfRangeException>(() => dispersion.Run(1, firstCase: -1)).ParamName);
        Assert.Equal("number", Assert.Throws<ArgumentOutOfRangeException>(() => dispersion.Case(-1)).ParamName);
        DeploymentEnsemble ensemble = dispersion.Run(1);
        Assert.Equal("limit", Assert.Throws<ArgumentOutOfRangeException>(() => ensemble.ProbabilityThatNutationIsBelow(Angle.Zero)).ParamName);
        Assert.Equal("confidence", Assert.Throws<ArgumentOutOfRangeException>(() => ensemble.ProbabilityThatSpinIsWithin(_hub.Spin, 0)).ParamName);
    }

    /// <summary>The planar design in space: balanced, level, nothing wobbles.</summary>
    private static CordDeployment Planar(DespinDesign design) => new()
    {
        Hub = MassProperties<Body>.Of(
            Mass.FromKilograms(182),
            Position<Body>.Of(Length.Zero, Length.Zero, Length.FromMillimeters(427)),
            InertiaTensor<Body>.Diagonal(Inertia(31.5), Inertia(32.1), Inertia(18.4))),
        Cords = [.. Enumerable.Range(0, 2).Select(i => new Cord
        {
            WeightMass = design.WeightMass,
            Length = design.CordLength,
            HubRadius = design.Hub.Radius,
            PlaneHeight = Length.FromMillimeters(427),
            StartAngle = Angle.FromDegrees(180 * i),
            LetGo = design.LetGo,
        })],
        Rates = Vector<RotationalSpeed, Body>.Along(Direction<Body>.ZAxis, design.Hub.Spin),
        Until = design.Deploy().LetGoTime * 3,
    };

    /// <summary>The invented stage with unbalance, drums 15 mm above its centre of mass, and a wobble of 0.01 rad.</summary>
    private static CordDeployment Real(Func<Cord, Cord> change) => (Invented.Deployment with
    {
        Cords = [change(Invented.Cord(0)), change(Invented.Cord(180))],
    }).Wobbling(Angle.FromRadians(0.01), Angle.Zero);

    private static MassMomentOfInertia Inertia(double value) => MassMomentOfInertia.FromKilogramSquareMeters(value);
}
