using FsCheck.Xunit;

namespace Momentum.Tests.Inertia;

public sealed class TensorFactorsTests
{
    [Property]
    public void Solving_undoes_the_product_with_the_tensor(byte first, byte second, byte third, sbyte x, sbyte y, sbyte z)
    {
        // Moments of up to a thousand to one along axes that are turned to (2, 1, 2)/3 and square to it.
        Vec[] axes = [new(2.0 / 3.0, 1.0 / 3.0, 2.0 / 3.0), new(1.0 / 3.0, 2.0 / 3.0, -2.0 / 3.0), new(-2.0 / 3.0, 2.0 / 3.0, 1.0 / 3.0)];
        double[] moments = [.. new[] { first, second, third }.Select(b => Math.Pow(10.0, b / 85.0))];
        Tensor tensor = new(0, 0, 0, 0, 0, 0);
        for (int i = 0; i < 3; i++)
        {
            Vec a = axes[i];
            tensor += new Tensor(a.X * a.X, a.Y * a.Y, a.Z * a.Z, a.X * a.Y, a.X * a.Z, a.Y * a.Z) * moments[i];
        }

        Vec given = new(x, y, z);
        TensorFactors factors = new(tensor);
        Vec back = factors.Solve(tensor * given) - given;

        // Rounding times the ratio of the moments, with a handful of operations.
        Assert.InRange(back.Length, 0.0, 1e-12 * (1.0 + given.Length));
        Assert.Equal(moments[0] * moments[1] * moments[2], factors.DeterminantOver(1.0), moments[0] * moments[1] * moments[2] * 1e-12);
    }
}
