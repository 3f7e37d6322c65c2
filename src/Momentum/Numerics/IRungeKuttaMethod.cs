namespace Momentum.Numerics;

/// <summary>
/// An explicit Runge–Kutta method with an error estimate and a dense output: everything that the integrator knows about its
/// method, as data. Implement it as a struct without fields: the integrator is generic over it, so that nothing of it is
/// looked up while it steps.
/// </summary>
/// <remarks>
/// <para>
/// Stages are counted from 0. Stage 0 is the derivative at the start of the step, the stages up to <see cref="StageCount"/>
/// make the step, stage <see cref="StageCount"/> is the derivative at its end, and the stages after it serve the dense output only.
/// </para>
/// <para>
/// Tables are sparse. Row r of the Runge–Kutta matrix is <c>Weights[RowStart[r]..RowStart[r + 1]]</c>; the stages that these
/// weights multiply stand in <see cref="Stages"/> at the same places. Row <see cref="StageCount"/> is the step itself.
/// </para>
/// <para>
/// The dense output is y₀ + x(c₀ + x̄(c₁ + x(c₂ + x̄(c₃ + x(c₄ + …))))), with x the fraction of the step and x̄ = 1 − x. The
/// first three coefficients follow from the states and derivatives at the ends: without further ones it is the cubic Hermite
/// polynomial. The others are the step times sums of stages with the rows of <see cref="DenseWeights"/>. Every polynomial
/// dense output that meets states and derivatives at both ends can be written so.
/// </para>
/// </remarks>
public interface IRungeKuttaMethod
{
    /// <summary>Order of the solution that is carried on.</summary>
    static abstract int Order { get; }

    /// <summary>Order of the dense output.</summary>
    static abstract int DenseOrder { get; }

    /// <summary>With which power of the step <see cref="ErrorMeasure"/> falls, 2 to 32: the step control works with its root.</summary>
    static abstract int ErrorPower { get; }

    /// <summary>Number of stages that make one step; the stage after them is the derivative at the end of the step.</summary>
    static abstract int StageCount { get; }

    /// <summary>Number of all stages, at most 255: those of the step, the derivative at its end, and those for the dense output only.</summary>
    static abstract int ExtendedStageCount { get; }

    /// <summary>Times of all stages, in fractions of the step.</summary>
    static abstract ReadOnlySpan<double> Nodes { get; }

    /// <summary>Where each row of <see cref="Weights"/> begins, and where the last ends: <see cref="ExtendedStageCount"/> + 1 numbers.</summary>
    static abstract ReadOnlySpan<byte> RowStart { get; }

    /// <summary>Stage that each of <see cref="Weights"/> multiplies.</summary>
    static abstract ReadOnlySpan<byte> Stages { get; }

    /// <summary>Runge–Kutta matrix, row by row without its zeros.</summary>
    static abstract ReadOnlySpan<double> Weights { get; }

    /// <summary>Stage that each of <see cref="ErrorWeights"/> multiplies, up to <see cref="StageCount"/>.</summary>
    static abstract ReadOnlySpan<byte> ErrorStages { get; }

    /// <summary>Difference of the solution and an embedded one of lower order, over the step.</summary>
    static abstract ReadOnlySpan<double> ErrorWeights { get; }

    /// <summary>Stage that each of <see cref="SecondErrorWeights"/> multiplies, up to <see cref="StageCount"/>.</summary>
    static abstract ReadOnlySpan<byte> SecondErrorStages { get; }

    /// <summary>Difference of the solution and a second embedded one, over the step; empty if the method has none.</summary>
    static abstract ReadOnlySpan<double> SecondErrorWeights { get; }

    /// <summary>
    /// The measure of a step's error, 1 at the tolerance. The estimates come as sums over all components of the squares of
    /// estimate over tolerance.
    /// </summary>
    /// <param name="length">Length of the step, positive.</param>
    /// <param name="components">Number of components.</param>
    /// <param name="sum">Sum for <see cref="ErrorWeights"/>.</param>
    /// <param name="secondSum">Sum for <see cref="SecondErrorWeights"/>; 0 if the method has none.</param>
    /// <returns>The measure; NaN if a sum is.</returns>
    static abstract double ErrorMeasure(double length, int components, double sum, double secondSum);

    /// <summary>Where each row of <see cref="DenseWeights"/> begins, and where the last ends; just 0 if there is none.</summary>
    static abstract ReadOnlySpan<byte> DenseRowStart { get; }

    /// <summary>Stage that each of <see cref="DenseWeights"/> multiplies.</summary>
    static abstract ReadOnlySpan<byte> DenseStages { get; }

    /// <summary>Weights of the coefficients of the dense output from the fourth on, row by row.</summary>
    static abstract ReadOnlySpan<double> DenseWeights { get; }
}
