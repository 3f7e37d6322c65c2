using Momentum.Numerics;

namespace Momentum.Tests.Numerics;

/// <summary>The printed coefficients against the equations that a method of order 8 has to satisfy.</summary>
public class DormandPrince853Tests
{
    // Sums of up to 13 terms of size up to about 40, known to half a unit in the last place each.
    private const double Rounding = 5e-14;

    private static double[] Row(int row)
    {
        double[] dense = new double[DormandPrince853.ExtendedStageCount];
        for (int i = DormandPrince853.RowStart[row]; i < DormandPrince853.RowStart[row + 1]; i++)
        {
            dense[DormandPrince853.Stages[i]] = DormandPrince853.Weights[i];
        }

        return dense;
    }

    [Fact]
    public void Weights_of_every_stage_sum_to_its_node()
    {
        for (int stage = 0; stage < DormandPrince853.ExtendedStageCount; stage++)
        {
            Assert.Equal(DormandPrince853.Nodes[stage], Row(stage).Sum(), Rounding);
        }
    }

    [Fact]
    public void Stages_use_earlier_stages_only()
    {
        for (int stage = 0; stage < DormandPrince853.ExtendedStageCount; stage++)
        {
            Assert.All(Row(stage)[stage..], weight => Assert.Equal(0.0, weight));
        }
    }

    [Fact]
    public void Quadrature_conditions_hold_up_to_order_8()
    {
        double[] b = Row(DormandPrince853.StageCount);
        for (int power = 0; power < DormandPrince853.Order; power++)
        {
            double sum = b.Select((weight, i) => weight * Math.Pow(DormandPrince853.Nodes[i], power)).Sum();
            Assert.Equal(1.0 / (power + 1), sum, Rounding);
        }
    }

    [Fact]
    public void Conditions_with_two_levels_hold_up_to_order_8()
    {
        // sum b_i c_i^p sum a_ij c_j^q = 1 / ((q + 1)(p + q + 2)) for p + q + 2 <= 8.
        double[] b = Row(DormandPrince853.StageCount);
        for (int q = 1; q <= 6; q++)
        {
            for (int p = 0; p + q + 2 <= DormandPrince853.Order; p++)
            {
                double sum = 0.0;
                for (int i = 0; i < DormandPrince853.StageCount; i++)
                {
                    double inner = Row(i).Select((a, j) => a * Math.Pow(DormandPrince853.Nodes[j], q)).Sum();
                    sum += b[i] * Math.Pow(DormandPrince853.Nodes[i], p) * inner;
                }

                Assert.Equal(1.0 / ((q + 1) * (p + q + 2)), sum, Rounding);
            }
        }
    }

    [Theory]
    [InlineData(5, 5)]
    [InlineData(3, 3)]
    public void Error_weights_vanish_on_polynomials_below_the_order_of_the_embedded_solution(int embeddedOrder, int vanishing)
    {
        ReadOnlySpan<double> weights = embeddedOrder == 5 ? DormandPrince853.FifthOrderError : DormandPrince853.ThirdOrderError;
        ReadOnlySpan<byte> stages = embeddedOrder == 5 ? DormandPrince853.FifthOrderStages : DormandPrince853.ThirdOrderStages;
        for (int power = 0; power <= vanishing; power++)
        {
            double sum = 0.0;
            for (int i = 0; i < weights.Length; i++)
            {
                sum += weights[i] * Math.Pow(DormandPrince853.Nodes[stages[i]], power);
            }

            if (power < vanishing)
            {
                Assert.Equal(0.0, sum, Rounding);
            }
            else
            {
                Assert.True(Math.Abs(sum) > 1e-6, $"The estimate of order {embeddedOrder} would see nothing: {sum}.");
            }
        }
    }
}
