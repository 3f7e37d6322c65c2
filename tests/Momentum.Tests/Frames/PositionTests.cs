using Momentum.Frames;
using Momentum.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace Momentum.Tests.Frames;

public sealed class PositionTests
{
    // UnitsNet overflows the stack on such a unit, which ends the process.
    [Fact]
    public void A_unit_that_is_none_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Position<Body>.Of(1, 2, 3, default));

    [Fact]
    public void Points_differ_by_a_displacement_and_move_by_one()
    {
        Position<Body> a = Position<Body>.Of(0, 0, 610, LengthUnit.Millimeter);
        Position<Body> b = Position<Body>.Of(Length.FromMeters(1), Length.Zero, Length.FromMeters(0.61));
        Assert.True((b - a).EqualsWithin(Vector<Length, Body>.FromSi(1, 0, 0), Length.FromMeters(1e-16)));
        Assert.True((a + (b - a)).EqualsWithin(b, Length.FromMeters(1e-16)));
        Assert.Equal(a, b - (b - a));
        Assert.Equal(Position<Body>.Origin, default);
        Assert.Equal("(0, 0, 0.61) m [Body]", a.ToString());
    }

    [Fact]
    public void A_coordinate_that_is_not_finite_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Position<Body>.Of(0, double.NaN, 0, LengthUnit.Meter));
}
