using System.Globalization;
using Xunit.Abstractions;

namespace Momentum.Tests.Designs;

/// <summary>
/// Random designs: whatever is accepted comes out finite, with a ledger that closes, and in a bounded time, or is refused.
/// A few in the gate; as many as are asked for by <c>tests/explore designs N</c>, which tells the slowest too.
/// </summary>
public class DesignTests(ITestOutputHelper output)
{
    private const int PlanarInTheGate = 2000;
    private const int SpaceInTheGate = 60;
    private const int PlanarForOneInSpace = 20;

    private static readonly string? _asked = Environment.GetEnvironmentVariable("MOMENTUM_DESIGNS");

    private static int Planar => _asked is null ? PlanarInTheGate : int.Parse(_asked, CultureInfo.InvariantCulture);

    private static int Seed => int.Parse(Environment.GetEnvironmentVariable("MOMENTUM_DESIGNS_SEED") ?? "1", CultureInfo.InvariantCulture);

    [Fact]
    public void Planar_designs_at_random_are_computed_or_refused() => Explore(Planar, PlanarDesigns.Count);

    [Fact]
    public void Deployments_at_random_are_computed_or_refused() =>
        Explore(_asked is null ? SpaceInTheGate : Planar / PlanarForOneInSpace, SpaceDesigns.Count);

    private void Explore(int designs, Action<Tally, int, int> count)
    {
        Tally tally = new(timed: _asked is not null);
        Parallel.For(0, designs, new ParallelOptions { MaxDegreeOfParallelism = 2 }, number => count(tally, Seed, number));
        output.WriteLine($"{designs} designs of seed {Seed}");
        output.WriteLine(tally.Table());
        Assert.Empty(tally.Wrong.Take(5));
    }
}
