using Momentum.Tethers;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Deployment;

/// <summary>The split of the residual spin by cause.</summary>
public class ResidualSpinTests
{
    [Fact]
    public void An_ideal_deployment_has_nothing_to_explain()
    {
        ResidualSpin spin = LawsOfDeployment.Planar.ExplainFinalSpin();

        Assert.Empty(spin.Shares);
        Assert.Equal(spin.Final.RadiansPerSecond, spin.Ideal.RadiansPerSecond);
        Assert.Equal(0, spin.Together.RadiansPerSecond);
    }

    [Fact]
    public void One_cause_alone_has_the_whole_difference()
    {
        ResidualSpin spin = LawsOfDeployment.With(c => c with { DrumFriction = 0.05 }).ExplainFinalSpin();
        SpinShare share = Assert.Single(spin.Shares);

        Assert.Equal(SpinCause.DrumFriction, share.Cause);
        Assert.Equal((spin.Final - spin.Ideal).RadiansPerSecond, share.Share.RadiansPerSecond, 1e-14);
        Assert.Equal(0, spin.Together.RadiansPerSecond, 1e-14);
    }

    [Fact]
    public void Small_causes_add_up_and_each_is_named()
    {
        CordDeployment real = Invented.Deployment with
        {
            Cords =
            [
                Invented.Cord(0) with { DrumFriction = 0.005, Stiffness = Force.FromKilonewtons(400), DampingRatio = 0.05 },
                Invented.Cord(180) with { DrumFriction = 0.005, Stiffness = Force.FromKilonewtons(400), DampingRatio = 0.05, WeightMass = Mass.FromGrams(622), ReleasedAt = Duration.FromMilliseconds(1) },
            ],
        };
        ResidualSpin spin = real.ExplainFinalSpin();

        Assert.Equal(
            [
                SpinCause.Wobble, SpinCause.Imbalance, SpinCause.CordPlaneOffset, SpinCause.CordStretch,
                SpinCause.DrumFriction, SpinCause.UnequalCords, SpinCause.LateRelease,
            ],
            spin.Shares.Select(s => s.Cause));

        // Together is of second order: products of shares that are themselves a few per cent of the spin at most.
        double largest = spin.Shares.Max(s => Math.Abs(s.Share.RadiansPerSecond));
        Assert.InRange(Math.Abs(spin.Together.RadiansPerSecond), 0, 0.1 * largest);
        Assert.Equal(
            spin.Final.RadiansPerSecond,
            spin.Ideal.RadiansPerSecond + spin.Shares.Sum(s => s.Share.RadiansPerSecond) + spin.Together.RadiansPerSecond,
            1e-12);
    }

    [Fact]
    public void A_cord_that_lets_go_late_is_a_cause_of_its_own()
    {
        CordDeployment late = LawsOfDeployment.Planar with
        {
            Cords = [Invented.Cord(0), Invented.Cord(180) with { LetGo = LetGo.Radial.Delayed(Duration.FromMilliseconds(5)) }],
        };

        Assert.Equal(SpinCause.LateLetGo, Assert.Single(late.ExplainFinalSpin().Shares).Cause);
    }

    [Fact]
    public void A_stuck_weight_is_to_blame_for_nearly_all_that_is_left()
    {
        CordDeployment stuck = LawsOfDeployment.Planar with { Cords = [Invented.Cord(0), Invented.Cord(180) with { ReleasedAt = null }] };
        ResidualSpin spin = stuck.ExplainFinalSpin();

        Assert.Equal(SpinCause.StuckCords, Assert.Single(spin.Shares).Cause);
        Assert.True(spin.Shares[0].Share.RadiansPerSecond > 1);
    }
}
