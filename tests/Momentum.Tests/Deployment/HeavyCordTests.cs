using System.Globalization;
using Momentum.Tethers.Deployment;
using Xunit.Abstractions;

namespace Momentum.Tests.Deployment;

/// <summary>Cords with mass, in pieces, in designs such as someone might build: each is computed, and its ledger closes.</summary>
public class HeavyCordTests(ITestOutputHelper output)
{
    // What every result promises.
    private const double Promised = 1e-11;

    [Fact]
    public void Plausible_heavy_cords_are_computed()
    {
        const int Designs = 60;
        List<string> refused = [];
        double worst = 0;
        for (int number = 0; number < Designs; number++)
        {
            try
            {
                worst = Math.Max(worst, PlausibleHeavyCords.Design(number).Deploy().Ledger.Closure);
            }
            catch (ComputationRefusedException refusal)
            {
                refused.Add(string.Create(CultureInfo.InvariantCulture, $"design {number}: {refusal.Message}"));
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{refused.Count} of {Designs} refused; largest closure {worst:E1}"));
        Assert.Empty(refused);
        Assert.InRange(worst, double.Epsilon, Promised);
    }

    // A lump that has just left the drum swings on the cord between drum and next lump, and comes near the drum again. Once that
    // was taken for a piece that fell back.
    [Theory]
    [InlineData(27)]
    [InlineData(32)]
    public void A_lump_that_swings_back_towards_the_drum_goes_on(int number)
    {
        DeploymentResult result = PlausibleHeavyCords.Design(number).Deploy();

        Assert.Equal(
            result.Deployment.Cords.Sum(c => c.Segments - 1), result.Events.Count(e => e.Kind == DeploymentEventKind.CordPiecePeeled));
        Assert.Equal(result.Deployment.Cords.Count, result.Departures.Count);
    }

    // The jolt of another cord's piece throws a lump that has just left the drum back onto it, where it comes to rest and leaves again.
    [Theory]
    [InlineData(467)]
    [InlineData(550)]
    public void A_lump_thrown_back_onto_the_drum_leaves_it_again(int number)
    {
        DeploymentResult result = PlausibleHeavyCords.Design(number).Deploy();
        DeploymentEvent landed = result.Events.First(e => e.Kind == DeploymentEventKind.CordPieceLands);

        // Nothing is won by it, but for what the tension does over the last part in 1e12 of the radius.
        double whole = result.Ledger.EnergyAtStart.Total.Joules;
        Assert.InRange(landed.EnergyLost.Joules, -1e-11 * whole, 1e-6 * whole);
        Assert.Equal(result.Deployment.Cords.Sum(c => c.Segments - 1), result.Events.Count(e => e.Kind == DeploymentEventKind.CordPiecePeeled));
        Assert.Equal(result.Deployment.Cords.Count, result.Departures.Count);
    }

    // Light lumps leave the drum under cords that pull far out of its plane: hundreds of times faster across than along. A start
    // measured by the latter alone lost momentum, a part in 1e10 and less.
    [Theory]
    [InlineData(71)]
    [InlineData(259)]
    public void A_lump_pulled_out_of_the_drums_plane_as_it_starts_keeps_the_momentum(int number) =>
        Assert.InRange(PlausibleHeavyCords.Design(number).Deploy().Ledger.Closure, double.Epsilon, 0.1 * Promised);

    // The integrated displacement of a hinged piece drifts off its length, a part in 1e12 and less; that once made a direction
    // that ran ahead of the velocity, and an energy that drifted.
    [Theory]
    [InlineData(195)]
    [InlineData(225)]
    public void Pieces_on_hinges_keep_the_energy(int number) =>
        Assert.InRange(PlausibleHeavyCords.Design(number).Deploy().Ledger.EnergyClosure, 0, 0.1 * Promised);
}
