using FsCheck.Xunit;
using Momentum.Frames;
using Momentum.Quantities;

namespace Momentum.Tests.Quantities;

[Properties(Arbitrary = [typeof(Components)])]
public sealed class DirectionTests
{
    [Property]
    public bool A_direction_is_of_unit_length_whatever_it_was_made_from(Components c)
    {
        if (c == new Components(0, 0, 0))
        {
            return true;
        }

        Direction<Body> d = Direction<Body>.Of(c.X, c.Y, c.Z);
        return Math.Abs((d.X * d.X) + (d.Y * d.Y) + (d.Z * d.Z) - 1) < 1e-15 && (-d).AngleTo(d).Degrees == 180;
    }

    [Theory]
    [InlineData(1e-9)]
    [InlineData(1e-3)]
    [InlineData(1.0)]
    [InlineData(3.14159)]
    public void Small_and_near_straight_angles_keep_their_digits(double radians)
    {
        Direction<Body> turned = Direction<Body>.Of(Math.Cos(radians), Math.Sin(radians), 0);
        Assert.Equal(radians, Direction<Body>.XAxis.AngleTo(turned).Radians, 4e-16);
    }

    [Fact]
    public void Zero_components_have_no_direction() => Assert.Throws<ArgumentException>(() => Direction<Body>.Of(0, 0, 0));
}
