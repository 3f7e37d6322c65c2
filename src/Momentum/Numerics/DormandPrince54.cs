using System.Numerics;

namespace Momentum.Numerics;

/// <summary>
/// The explicit Runge–Kutta method of order 5 of Dormand and Prince, with the embedded solution of order 4 and the dense
/// output of order 4 by Shampine: half the stages of <see cref="DormandPrince853"/>, for loose tolerances. All values are
/// equal, <c>default</c> too.
/// </summary>
/// <remarks>
/// J. R. Dormand, P. J. Prince, A family of embedded Runge–Kutta formulae, Journal of Computational and Applied Mathematics 6
/// (1980) 19–26; dense output: L. F. Shampine, Some practical Runge–Kutta formulas, Mathematics of Computation 46 (1986)
/// 135–150, in the form of E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, 2nd edition, section
/// II.6, known under the name DOPRI5. The fractions were read in SciPy's table of the method (scipy.integrate, file rk.py, BSD
/// licence), whose dense output is the same polynomial. The tests check them against the order conditions.
/// </remarks>
public readonly record struct DormandPrince54 : IRungeKuttaMethod, IEqualityOperators<DormandPrince54, DormandPrince54, bool>
{
    private static readonly double[] _nodes = [0.0, 1.0 / 5.0, 3.0 / 10.0, 4.0 / 5.0, 8.0 / 9.0, 1.0, 1.0];

    private static readonly double[] _weights =
    [
        1.0 / 5.0,
        3.0 / 40.0, 9.0 / 40.0,
        44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0,
        19372.0 / 6561.0, -25360.0 / 2187.0, 64448.0 / 6561.0, -212.0 / 729.0,
        9017.0 / 3168.0, -355.0 / 33.0, 46732.0 / 5247.0, 49.0 / 176.0, -5103.0 / 18656.0,
        35.0 / 384.0, 500.0 / 1113.0, 125.0 / 192.0, -2187.0 / 6784.0, 11.0 / 84.0,
    ];

    private static readonly double[] _error =
    [
        71.0 / 57600.0, -71.0 / 16695.0, 71.0 / 1920.0, -17253.0 / 339200.0, 22.0 / 525.0, -1.0 / 40.0,
    ];

    private static readonly double[] _dense =
    [
        -12715105075.0 / 11282082432.0, 87487479700.0 / 32700410799.0, -10690763975.0 / 1880347072.0,
        701980252875.0 / 199316789632.0, -1453857185.0 / 822651844.0, 69997945.0 / 29380423.0,
    ];

    /// <inheritdoc/>
    public static int Order => 5;

    /// <inheritdoc/>
    public static int DenseOrder => 4;

    /// <inheritdoc/>
    public static int ErrorPower => 5;

    /// <inheritdoc/>
    public static int StageCount => 6;

    /// <inheritdoc/>
    public static int ExtendedStageCount => 7;

    /// <inheritdoc/>
    public static ReadOnlySpan<double> Nodes => _nodes;

    /// <inheritdoc/>
    public static ReadOnlySpan<byte> RowStart => [0, 0, 1, 3, 6, 10, 15, 20];

    /// <inheritdoc/>
    public static ReadOnlySpan<byte> Stages => [0, 0, 1, 0, 1, 2, 0, 1, 2, 3, 0, 1, 2, 3, 4, 0, 2, 3, 4, 5];

    /// <inheritdoc/>
    public static ReadOnlySpan<double> Weights => _weights;

    /// <inheritdoc/>
    public static ReadOnlySpan<byte> ErrorStages => [0, 2, 3, 4, 5, 6];

    /// <inheritdoc/>
    public static ReadOnlySpan<double> ErrorWeights => _error;

    /// <inheritdoc/>
    public static ReadOnlySpan<byte> SecondErrorStages => [];

    /// <inheritdoc/>
    public static ReadOnlySpan<double> SecondErrorWeights => [];

    /// <summary>The root mean square of the estimate over the tolerance.</summary>
    /// <inheritdoc/>
    public static double ErrorMeasure(double length, int components, double sum, double secondSum) => length * Math.Sqrt(sum / components);

    /// <inheritdoc/>
    public static ReadOnlySpan<byte> DenseRowStart => [0, 6];

    /// <inheritdoc/>
    public static ReadOnlySpan<byte> DenseStages => [0, 2, 3, 4, 5, 6];

    /// <inheritdoc/>
    public static ReadOnlySpan<double> DenseWeights => _dense;
}
