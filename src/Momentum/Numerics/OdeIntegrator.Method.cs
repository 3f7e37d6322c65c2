namespace Momentum.Numerics;

// What follows from the method, and whether its tables fit together.
public sealed partial class OdeIntegrator<TSystem, TEvents, TMethod>
{
    // Coefficients of the dense output that follow from the ends of the step.
    private const int HermiteRows = 3;

    // Weights of a row of a sound method sum to its node but for rounding of decimals.
    private const double RowSumRounding = 1e-12;

    // The method is a constant of the compiled code, and so are these.
    private static readonly bool _endEntersError = TMethod.ErrorStages.Contains((byte)TMethod.StageCount) || TMethod.SecondErrorStages.Contains((byte)TMethod.StageCount);
    private static readonly bool _hasSecondError = !TMethod.SecondErrorWeights.IsEmpty;

    // 1/k in 64ths.
    private static int RootExponent => ((2 * 64) + TMethod.ErrorPower) / (2 * TMethod.ErrorPower);

    // Rows of the workspace: the stages, two states, the state at a stage, the error estimates, the dense output.
    private static int EndDerivativeRow => TMethod.StageCount;

    private static int FirstStateRow => TMethod.ExtendedStageCount;

    private static int StageStateRow => FirstStateRow + 2;

    private static int ErrorRow => FirstStateRow + 3;

    private static int SecondErrorRow => FirstStateRow + 4;

    private static int DenseRow => FirstStateRow + 5;

    private static int DenseRows => HermiteRows + TMethod.DenseRowStart.Length - 1;

    private static int RowCount => DenseRow + DenseRows;

    private static void RequireSoundMethod()
    {
        int all = TMethod.ExtendedStageCount;
        Require(TMethod.StageCount >= 1 && all > TMethod.StageCount && all <= byte.MaxValue, "its numbers of stages");
        Require(TMethod.ErrorPower is >= 2 and <= 32, "the power of its error measure");
        Require(TMethod.Nodes.Length == all && TMethod.Nodes[0] == 0.0 && TMethod.Nodes[TMethod.StageCount] == 1.0, "its nodes");
        Require(TMethod.RowStart.Length == all + 1 && Fit(TMethod.RowStart, TMethod.Weights, TMethod.Stages, all), "the rows of its weights");
        for (int row = 0; row < all; row++)
        {
            double sum = 0.0;
            for (int i = TMethod.RowStart[row]; i < TMethod.RowStart[row + 1]; i++)
            {
                Require(TMethod.Stages[i] < row, "a stage that uses a later one");
                sum += TMethod.Weights[i];
            }

            Require(Math.Abs(sum - TMethod.Nodes[row]) <= RowSumRounding * all, "weights of a stage that do not sum to its node");
        }

        Require(!TMethod.ErrorWeights.IsEmpty && Fit([0, (byte)TMethod.ErrorWeights.Length], TMethod.ErrorWeights, TMethod.ErrorStages, TMethod.StageCount + 1), "its error weights");
        Require(Fit([0, (byte)TMethod.SecondErrorWeights.Length], TMethod.SecondErrorWeights, TMethod.SecondErrorStages, TMethod.StageCount + 1), "its second error weights");
        Require(!TMethod.DenseRowStart.IsEmpty && Fit(TMethod.DenseRowStart, TMethod.DenseWeights, TMethod.DenseStages, all), "the rows of its dense output");
    }

    /// <summary>Whether rows begin at 0, follow each other and end with the table, and every weight multiplies one of the stages.</summary>
    private static bool Fit(ReadOnlySpan<byte> rowStart, ReadOnlySpan<double> weights, ReadOnlySpan<byte> stages, int stageCount)
    {
        bool fits = rowStart[0] == 0 && rowStart[^1] == weights.Length && stages.Length == weights.Length;
        for (int row = 1; row < rowStart.Length; row++)
        {
            fits &= rowStart[row] >= rowStart[row - 1];
        }

        foreach (byte stage in stages)
        {
            fits &= stage < stageCount;
        }

        return fits;
    }

    private static void Require(bool holds, string what)
    {
        if (!holds)
        {
            throw new NotSupportedException($"The tables of the method {typeof(TMethod).Name} do not fit together: {what}. See {nameof(IRungeKuttaMethod)} for their form.");
        }
    }
}
