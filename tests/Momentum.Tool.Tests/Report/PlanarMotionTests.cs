namespace Momentum.Tool.Tests.Report;

/// <summary>The sample that the pictures are compared with is itself right.</summary>
public sealed class PlanarMotionTests
{
    [Theory]
    [InlineData(5.728416147, 0.763788820, 1.142379663, 0.270822422, 0)]
    [InlineData(4.0, 0.533333333, 2.655677656, 0.258404789, 1.401814184)]
    [InlineData(6.5, 0.866666667, 0.529100529, 0.274627956, -0.526922421)]
    public void Agrees_with_an_adaptive_integration_of_the_equations_of_motion(double length, double unwinding, double spinThen, double hinging, double spin)
    {
        // Own figures, from an integration of Lagrange's equations to 1e-9; the midpoint sum over 200 steps is good to 1e-5.
        var motion = new PlanarMotion(300, 6, 1.5, length, 5);
        var states = motion.ToRadial(100);

        Assert.Equal(unwinding, motion.UnwindingEnds, 1e-9);
        Assert.Equal(spinThen, states[100].Spin, 1e-9);
        Assert.Equal(unwinding + hinging, states[^1].Time, 1e-5);
        Assert.Equal(spin, states[^1].Spin, 1e-8);
    }
}
