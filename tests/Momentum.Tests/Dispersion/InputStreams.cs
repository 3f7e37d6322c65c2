using Momentum.Dispersion;
using Momentum.Frames;
using Momentum.Quantities;
using Momentum.Tests.Deployment;
using Momentum.Tethers.Deployment;
using UnitsNet;

namespace Momentum.Tests.Dispersion;

/// <summary>Each uncertain input draws from a stream of its own, whatever else is uncertain, and keeps it for ever.</summary>
public class InputStreams
{
    // On record: a number here never changes and is never given to another input. A new input adds a line.
    private static readonly (UncertainInput Input, int Stream)[] _onRecord =
    [
        (UncertainInput.SpinInertia, 0),
        (UncertainInput.InitialSpin, 1),
        (UncertainInput.HubRadius, 2),
        (UncertainInput.WeightMass, 3),
        (UncertainInput.CordLength, 4),
        (UncertainInput.CordLineDensity, 5),
        (UncertainInput.LetGoAngle, 6),
        (UncertainInput.SecondWeightDelay, 7),
        (UncertainInput.Nutation, 8),
        (UncertainInput.NutationDirection, 9),
    ];

    [Fact]
    public void Every_input_has_one_row_and_keeps_its_stream()
    {
        Assert.Equal(_onRecord, UncertainInputs.All.Select(row => (row.Input, row.Stream)).OrderBy(row => row.Stream));
        Assert.Equal(Enum.GetValues<UncertainInput>(), UncertainInputs.All.Select(row => row.Input).Order());
    }

    // The digits that this generator gave when the streams were fixed.
    [Theory]
    [InlineData(1UL, 0L, 0, 0, 0.65596819712357424)]
    [InlineData(1UL, 12L, 7, 1, 0.94010307540703431)]
    [InlineData(2UL, 3L, 40, 0, 0.30598649971315289)]
    public void Streams_give_the_numbers_on_record(ulong seed, long number, int stream, int item, double drawn) =>
        Assert.Equal(drawn, CounterRandom.Uniform(seed, number, stream, item));

    // Of a hundred thousand numbers of 53 bits two are alike by chance with a probability of 6e-7.
    [Fact]
    public void No_two_streams_or_numbers_of_a_stream_share_their_draws()
    {
        var seen = new HashSet<double>();
        for (int stream = 0; stream < 100; stream++)
        {
            for (int item = 0; item < 64; item++)
            {
                for (int number = 0; number < 16; number++)
                {
                    Assert.True(seen.Add(CounterRandom.Uniform(7, number, stream, item)), $"stream {stream}, number {item} of case {number} is drawn twice");
                }
            }
        }
    }

    [Fact]
    public void What_else_is_uncertain_does_not_change_the_draws_of_an_input()
    {
        CordDeployment nominal = LawsOfDeployment.Planar;
        DespinUncertainty everything = PlanarEnsembles.Everything with { Nutation = Scatter.Normal(Angle.FromDegrees(0.2)) };
        var alone = new DeploymentDispersion(nominal, new DespinUncertainty { WeightMass = everything.WeightMass, SpinInertia = everything.SpinInertia });
        var together = new DeploymentDispersion(nominal, everything);
        for (int number = 0; number < 50; number++)
        {
            CordDeployment one = alone.Case(number, seed: 3);
            CordDeployment other = together.Case(number, seed: 3);

            Assert.Equal(one.Hub, other.Hub);
            Assert.Equal(one.Cords.Select(c => c.WeightMass), other.Cords.Select(c => c.WeightMass));
            Assert.NotEqual(one.Cords.Select(c => c.Length), other.Cords.Select(c => c.Length));
            Assert.NotEqual(one.Rates.ComponentAlong(Direction<Body>.ZAxis), other.Rates.ComponentAlong(Direction<Body>.ZAxis));
        }
    }
}
