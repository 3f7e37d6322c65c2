using Momentum.Tethers.Deployment;
using Momentum.Tethers.Deployment.Mechanics;

namespace Momentum.Dispersion;

/// <summary>
/// A deployment of cords in three dimensions with what is uncertain about it: ensembles of the whole motion, wobble and all.
/// </summary>
/// <remarks>
/// <para>What scatters is what <see cref="DespinUncertainty"/> says, alike for all cords, with the same draws as those of a
/// <see cref="DespinDispersion"/> with the same seed; besides it the direction of the wobble at the start, which nobody
/// knows: all round the spin axis with equal chance. The size of the wobble is that of the deployment's start. Of the
/// inertia, the moment about the spin axis scatters; the moments and products across it stay, and a draw that no body can
/// have is counted as not physical. The delay of the last weight falls on one cord, each with equal chance.</para>
/// <para>Every draw is a function of seed, case number and input, so that the same call gives the same bits on any number of
/// threads. Immutable, so safe to share between threads.</para>
/// <para>A cord with mass costs with its <see cref="Cord.Segments"/>: four take about three times as long as two, ten times
/// as long as one. Their error of the spin shifts all cases alike and falls to a quarter when they are doubled, so that two
/// are often enough for the scatter, and the nominal deployment with more tells the shift.</para>
/// <para>Weights fly at tens of metres a second and cords carry hundreds of newtons. A probability found here supports a
/// design review; it replaces neither a range's safety rules nor the work of licensed people on ordnance and rigs.</para>
/// </remarks>
public sealed class DeploymentDispersion
{
    private readonly DrawnInput[] _inputs;
    private readonly int _numbers;
    private readonly double _nutation;

    /// <summary>Joins a deployment and what is uncertain about it.</summary>
    /// <param name="deployment">
    /// The nominal deployment. Its <see cref="CordDeployment.Until"/> must leave a slow case time to let go; its
    /// <see cref="CordDeployment.Tolerance"/> is not used.
    /// </param>
    /// <param name="uncertainty">What scatters about it; the hub's mass is taken from the deployment.</param>
    /// <exception cref="ArgumentException">
    /// A value of the deployment is not allowed, or the let-go angle scatters and a cord does not let go at an angle.
    /// </exception>
    public DeploymentDispersion(CordDeployment deployment, DespinUncertainty uncertainty)
    {
        ArgumentNullException.ThrowIfNull(deployment);
        ArgumentNullException.ThrowIfNull(uncertainty);
        Deployment = deployment;
        Uncertainty = uncertainty;
        _inputs = DrawnInput.Of(uncertainty, deployment.Cords.Count);
        _numbers = _inputs.Sum(i => i.Numbers);
        HubConstants hub = deployment.CheckedHub();
        Vec rates = deployment.Rates.Si;
        double spin = rates.Dot(hub.Axis);
        CordConstants[] cords = deployment.CheckedCords(spin);
        deployment.CheckedSurroundings(spin);
        deployment.CheckedEnd();
        _nutation = new Mechanism(hub, cords).Riding.Nutation(rates);
        foreach (DrawnInput input in _inputs)
        {
            if (input.Row.WhyNotInSpace(deployment) is { } why)
            {
                throw new ArgumentException($"{input.Row.Input} scatters, and {why}", nameof(uncertainty));
            }
        }
    }

    /// <summary>The nominal deployment.</summary>
    public CordDeployment Deployment { get; }

    /// <summary>What scatters about it.</summary>
    public DespinUncertainty Uncertainty { get; }

    /// <summary>
    /// The deployment of one case, to look at it alone: <see cref="CordDeployment.Deploy"/> computes it with all its events.
    /// A cord whose let-go angle is drawn past the other tangent never lets go.
    /// </summary>
    /// <param name="number">Number of the case, from zero.</param>
    /// <param name="seed">As for <see cref="Run"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of range.</exception>
    /// <exception cref="ArgumentException">A value that was drawn is not physical; the message names it.</exception>
    public CordDeployment Case(long number, ulong seed = 1)
    {
        CounterRandom.RequireCase(number, nameof(number));
        var draw = new DeploymentDraw(Deployment, _nutation);
        Span<double> room = stackalloc double[_numbers];
        foreach (DrawnInput input in _inputs)
        {
            input.Row.InSpace(draw, input.Draw(seed, number, room));
        }

        return draw.Deployment();
    }

    /// <summary>Runs an ensemble, each case up to the last let-go and from there, in closed form, over all time.</summary>
    /// <param name="cases">How many cases, 1 to 10 million; a case takes from half a millisecond to some, see the remarks.</param>
    /// <param name="seed">Chooses the draws; any number.</param>
    /// <param name="firstCase">Number of the first case, so that a long run can be made in pieces and merged.</param>
    /// <param name="cancellation">Ends the computation early.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of cases or of the first case is out of range.</exception>
    /// <exception cref="ComputationRefusedException">In no case are all weights let go.</exception>
    /// <exception cref="OperationCanceledException">The computation was cancelled.</exception>
    public DeploymentEnsemble Run(int cases = 2000, ulong seed = 1, long firstCase = 0, CancellationToken cancellation = default)
    {
        if (cases is < 1 or > 10_000_000)
        {
            throw new ArgumentOutOfRangeException(nameof(cases), cases, "An ensemble of deployments has 1 to 10,000,000 cases.");
        }

        CounterRandom.RequireCase(firstCase, nameof(firstCase));
        IEnumerable<DeployedCase> deployed = new DeploymentCases(Deployment, number => Case(number, seed)).Run(firstCase, cases, cancellation: cancellation);
        return DeploymentEnsemble.Of(deployed, new DeploymentEnsemble.Draws(Deployment, Uncertainty), [new(seed, firstCase, cases)]);
    }
}
