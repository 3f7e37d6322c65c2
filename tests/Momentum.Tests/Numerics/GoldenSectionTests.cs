using FsCheck.Xunit;
using Momentum.Numerics;

namespace Momentum.Tests.Numerics;

public sealed class GoldenSectionTests
{
    [Property]
    public void The_peak_of_a_parabola_is_found_to_the_square_root_of_rounding(byte place)
    {
        double peak = place / 255.0;
        (double found, double value) = GoldenSection.Highest(peak, static (p, x) => 3.0 - ((x - p) * (x - p)), 0.0, 1.0, 60);
        Assert.Equal(peak, found, 5e-8);
        Assert.Equal(3.0, value, 1e-15);
    }

    [Fact]
    public void A_jump_holds_the_search()
    {
        (double place, double value) = GoldenSection.Highest(0.4, static (jump, x) => x < jump ? x : x - 1.0, 0.0, 1.0, 60);
        Assert.Equal(0.4, place, 1e-12);
        Assert.Equal(0.4, value, 1e-12);
    }

    [Fact]
    public void Looks_that_are_no_numbers_count_as_low()
    {
        (double place, _) = GoldenSection.Highest(0, static (_, x) => x > 0.7 ? double.NaN : x * (1.0 - x), 0.0, 1.0, 60);
        Assert.InRange(place, 0.4, 0.7);
    }

    [Fact]
    public void Nothing_is_allocated()
    {
        double sum = 0.0;
        Assert.Equal(0, Allocation.Of(() => sum += GoldenSection.Highest(0.3, static (p, x) => -Math.Abs(x - p), 0.0, 1.0, 40).Place));
    }
}
