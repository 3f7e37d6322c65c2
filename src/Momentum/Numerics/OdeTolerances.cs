namespace Momentum.Numerics;

/// <summary>
/// Bounds on the estimated error of one step: component i may err by absolute(i) + relative · |y(i)|, in the root mean
/// square over the components. The error of the whole solution is the sum of what the steps leave, carried on by the
/// system: test it by tightening the tolerances. Immutable; compared by reference.
/// </summary>
public sealed class OdeTolerances
{
    private readonly double[] _absolute;

    private OdeTolerances(double relative, double[] absolute)
    {
        Relative = relative;
        _absolute = absolute;
    }

    /// <summary>Relative tolerance, without unit.</summary>
    public double Relative { get; }

    /// <summary>Absolute tolerances, each in the unit of its component: one for all components, or one for each.</summary>
    public ReadOnlySpan<double> Absolute
    {
        get { return _absolute; }
    }

    /// <summary>The same absolute tolerance for all components.</summary>
    /// <param name="relative">Relative tolerance: 0, or from 1e-15 to 0.1.</param>
    /// <param name="absolute">Absolute tolerance, positive and finite.</param>
    /// <returns>The tolerances.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A tolerance is outside its range.</exception>
    public static OdeTolerances Of(double relative, double absolute)
    {
        return PerComponent(relative, [absolute]);
    }

    /// <summary>An absolute tolerance for each component: for a state that mixes quantities of different size.</summary>
    /// <param name="relative">Relative tolerance: 0, or from 1e-15 to 0.1.</param>
    /// <param name="absolute">Absolute tolerances, positive and finite, one for each component of the state.</param>
    /// <returns>The tolerances.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A tolerance is outside its range.</exception>
    /// <exception cref="ArgumentException">No absolute tolerance is given.</exception>
    public static OdeTolerances PerComponent(double relative, ReadOnlySpan<double> absolute)
    {
        // Below 1e-15 the estimate would measure rounding only, and no step could pass.
        if (!(relative == 0.0 || (relative >= 1e-15 && relative <= 0.1)))
        {
            throw new ArgumentOutOfRangeException(nameof(relative), relative, "A relative tolerance is 0, or from 1e-15 to 0.1.");
        }

        if (absolute.IsEmpty)
        {
            throw new ArgumentException("Give an absolute tolerance for each component of the state.", nameof(absolute));
        }

        foreach (double value in absolute)
        {
            if (!(value > 0.0 && double.IsFinite(value)))
            {
                throw new ArgumentOutOfRangeException(nameof(absolute), value, "An absolute tolerance is positive and finite.");
            }
        }

        return new OdeTolerances(relative, absolute.ToArray());
    }
}
