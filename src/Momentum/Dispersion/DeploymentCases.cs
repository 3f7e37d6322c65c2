using System.Collections.Concurrent;
using Momentum.Tethers.Deployment;

namespace Momentum.Dispersion;

/// <summary>
/// Deployments drawn one for each number and computed on as many threads as there are, given out in the order of their numbers.
/// </summary>
/// <remarks>
/// A case is a function of its number alone: any case again by its number, any piece of a long run by itself, and the same
/// bits on any number of threads. Nothing is kept but the cases under way, so that the memory does not grow with their number.
/// Safe to share between threads if the draw is.
/// </remarks>
public sealed class DeploymentCases
{
    private readonly CordDeployment _like;
    private readonly Func<long, CordDeployment> _draw;
    private readonly ConcurrentBag<DeploymentCase> _idle = [];

    /// <summary>Joins a nominal deployment and what draws the others.</summary>
    /// <param name="nominal">The deployment that the cases are like: it sets their steps and surroundings' tolerances.</param>
    /// <param name="draw">
    /// The deployment of a number, from zero; called from many threads at once. One that throws an
    /// <see cref="ArgumentException"/> has drawn what is not physical.
    /// </param>
    /// <exception cref="ArgumentException">A value of the nominal deployment is not allowed; the message names it.</exception>
    public DeploymentCases(CordDeployment nominal, Func<long, CordDeployment> draw)
    {
        ArgumentNullException.ThrowIfNull(nominal);
        ArgumentNullException.ThrowIfNull(draw);
        _like = nominal;
        _draw = draw;
        _idle.Add(new DeploymentCase(nominal));
    }

    /// <summary>The deployment of one case, to look at it alone.</summary>
    /// <param name="number">Number of the case, from zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    /// <exception cref="ArgumentException">What was drawn is not physical; the message names it.</exception>
    public CordDeployment Draw(long number)
    {
        CounterRandom.RequireCase(number, nameof(number));
        return _draw(number);
    }

    /// <summary>One case, up to the last let-go and from there, in closed form, over all time.</summary>
    /// <param name="deployment">The deployment.</param>
    /// <param name="number">The number that the result is given.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public DeployedCase Run(CordDeployment deployment, long number = 0, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(deployment);
        return Compute(number, () => deployment, cancellation);
    }

    /// <summary>Cases in the order of their numbers, each up to the last let-go and from there, in closed form, over all time.</summary>
    /// <param name="first">Number of the first.</param>
    /// <param name="count">How many.</param>
    /// <param name="threads">On how many threads at most; zero for as many as the machine has, one where there are none to be had.</param>
    /// <param name="cancellation">Stops it; the cases given out before stand.</param>
    /// <returns>The cases, computed as they are asked for.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public IEnumerable<DeployedCase> Run(long first, long count, int threads = 0, CancellationToken cancellation = default) =>
        NumberedCases.Run(first, count, number => Numbered(number, cancellation), threads, cancellation);

    private DeployedCase Numbered(long number, CancellationToken cancellation) => Compute(number, () => _draw(number), cancellation);

    private DeployedCase Compute(long number, Func<CordDeployment> draw, CancellationToken cancellation)
    {
        DeploymentCase one = _idle.TryTake(out DeploymentCase? idle) ? idle : new DeploymentCase(_like);
        try
        {
            return one.Run(number, draw(), cancellation);
        }
        catch (ArgumentException refusal)
        {
            return new DeployedCase { Number = number, Outcome = DeploymentOutcome.NotPhysical, Reason = refusal.Message };
        }
        finally
        {
            _idle.Add(one);
        }
    }
}
